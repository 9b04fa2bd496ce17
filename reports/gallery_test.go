package reports

import (
	"os"
	"path/filepath"
	"testing"

	"handbreadth/domain/energy"
	"handbreadth/domain/hand"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// TestGallery writes the papers to the folder in HANDBREADTH_GALLERY, to be
// looked at.
func TestGallery(t *testing.T) {
	folder := os.Getenv("HANDBREADTH_GALLERY")
	if folder == "" {
		t.Skip("HANDBREADTH_GALLERY names no folder")
	}
	keep := func(name string, pdf []byte, err error) {
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if err := os.WriteFile(filepath.Join(folder, name+".pdf"), pdf, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	opt := options(t)
	opt.NextStep = "Add one fist of vegetables to lunch on work days."
	pdf, err := Handout(planOf(t, woman()), opt)
	keep("woman", pdf, err)

	opt = options(t)
	opt.Paper, opt.ClientFirstName, opt.Style.System = Letter, "Bartholomew", unit.USCustomary
	pdf, err = Handout(planOf(t, man()), opt)
	keep("man", pdf, err)

	opt = options(t)
	opt.WithoutNumbers = true
	pdf, err = Handout(planOf(t, woman()), opt)
	keep("plain", pdf, err)

	opt = longest(t)
	opt.Paper, opt.Style = Letter, unit.Style{System: unit.UKCustomary, EnergyIn: unit.InKilojoules, DecimalComma: true}
	pdf, err = Handout(planOf(t, man()), opt)
	keep("longest", pdf, err)

	in := woman()
	in.MealsPerDay = 1
	pdf, err = Handout(planOf(t, in), Options{})
	keep("bare", pdf, err)

	in = woman() // the client that the demo opens with
	in.Weight, in.Goal = 77.8, energy.Goal{Kind: energy.Lose, Weight: 72, By: in.Date.AddDays(154)}
	in.CarbFatBalance = 50
	in.Screening = screen.Answers{}.AllNo()
	opt = Options{ClientFirstName: "Wren", PlanVersion: 2, NextStep: "Breakfast with a palm of protein on workdays.", Brand: Brand{
		Practice: "The Paper Lantern Practice", Practitioner: "Juniper Hale", Registration: "Invented register, no. 000 000",
		Contact: []string{"1 Make-Believe Lane, Sampleton", "hello@paperlantern.example"},
		Footer:  "Demo data: every person and place here is made up.",
	}}
	pdf, err = Handout(planOf(t, in), opt)
	keep("demo", pdf, err)

	in = woman()
	in.Hand.Size = hand.Size{PalmBreadth: 7.4, PalmLength: 9.9, HandLength: 16.6}
	in.Hand.Ranges = true
	opt = options(t)
	opt.Pages = Pages()
	pdf, err = Handout(planOf(t, in), opt)
	keep("life_small", pdf, err)

	opt.Paper, opt.WithoutNumbers = Letter, true
	pdf, err = Handout(planOf(t, in), opt)
	keep("life_plain", pdf, err)

	big := man()
	big.Hand.Size = hand.Size{PalmBreadth: 9.6, PalmLength: 12.6, HandLength: 21.2}
	opt = options(t)
	opt.Paper, opt.Style.System, opt.Pages = Letter, unit.USCustomary, Pages()
	pdf, err = Handout(planOf(t, big), opt)
	keep("life_big", pdf, err)

	in = byDate()
	pdf, err = Handout(planOf(t, in), options(t))
	keep("by_date", pdf, err)

	opt = options(t)
	opt.Paper, opt.Style = Letter, unit.Style{System: unit.UKCustomary}
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: 58, Energy: 2150}
	pdf, err = Handout(planOf(t, lifted(in)), opt)
	keep("short", pdf, err)

	in = woman()
	in.Goal = energy.Goal{Kind: energy.Maintain}
	pdf, err = Handout(planOf(t, in), options(t))
	keep("maintain", pdf, err)

	in = woman()
	in.Screening = in.Screening.With(screen.ThyroidUntreated, screen.Yes).With(screen.Gallstones, screen.Yes)
	in.Scored = screen.Scored{
		Scores:     screen.Scores{screen.SCOFF: {Points: 1, Asked: true}, screen.MUST: {Points: 2, Asked: true}},
		RecentLoss: screen.Told[unit.Percent]{Value: 6.5, Asked: true}, LowElectrolytes: screen.No,
	}
	pdf, err = Referral(planOf(t, in), options(t))
	keep("referral", pdf, err)
}
