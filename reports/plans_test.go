package reports

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// woman is an invented client: 41 years, to lose weight, three meals.
func woman() domain.Intake {
	in := domain.NewIntake()
	in.Date = unit.Date{Year: 2026, Month: 3, Day: 2}
	in.Client = domain.Client{Name: "Ottilie Farnbrook", Born: unit.Date{Year: 1984, Month: 6, Day: 11}, EquationSex: energy.Female}
	in.Height, in.Weight = 168, 78.4
	in.Activity = energy.Activity{Category: energy.LowActive}
	in.Goal = energy.Goal{Kind: energy.Lose, Weight: 70}
	in.Avoid = []food.Allergen{food.Peanuts}
	in.Screening = screen.Answers{screen.BloodPressure: screen.Yes, screen.ThyroidTreated: screen.Yes}.AllNo()
	return in
}

// man is an invented client: 34 years, to gain weight, six meals.
func man() domain.Intake {
	in := domain.NewIntake()
	in.Date = unit.Date{Year: 2026, Month: 3, Day: 2}
	in.Client = domain.Client{Name: "Bartholomew Quillfeather", Born: unit.Date{Year: 1991, Month: 9, Day: 30}, EquationSex: energy.Male}
	in.Height, in.Weight = 191, 84
	in.Activity = energy.Activity{Category: energy.VeryActive}
	in.Goal = energy.Goal{Kind: energy.Gain, Weight: 90}
	in.MealsPerDay = 6
	in.Screening = screen.Answers{}.AllNo()
	return in
}

func planOf(t testing.TB, in domain.Intake) domain.Plan {
	t.Helper()
	p, err := domain.NewPlan(in)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func brand(t testing.TB) Brand {
	return Brand{
		Practice: "Harrow Lane Nutrition", Practitioner: "Imogen Thistlewood, dietitian", Registration: "Register of Invented Dietitians 004211",
		Contact: []string{"3 Harrow Lane, Little Wendover", "01632 960 118", "desk@harrowlane.example"},
		Footer:  "Open Monday to Thursday, 9 to 5", Logo: testLogo(t), Colour: "#1E5B4F",
	}
}

// testLogo is a small picture with a transparent ground.
func testLogo(t testing.TB) []byte {
	t.Helper()
	picture := image.NewNRGBA(image.Rect(0, 0, 300, 300))
	for y := range 300 {
		for x := range 300 {
			dx, dy := x-150, y-150
			if d := dx*dx + dy*dy; d < 145*145 && (d > 118*118 || (dx+dy)%40 > 24) {
				picture.Set(x, y, color.NRGBA{R: 0x1E, G: 0x5B, B: 0x4F, A: 255})
			}
		}
	}
	var out bytes.Buffer
	if err := png.Encode(&out, picture); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func options(t testing.TB) Options {
	return Options{Brand: brand(t), ClientFirstName: "Ottilie", PlanVersion: 1}
}

// written makes a paper and keeps it in a folder of the test.
func written(t testing.TB, pdf []byte, err error) string {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "paper.pdf")
	if err := os.WriteFile(path, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}
