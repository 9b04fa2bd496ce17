package reports

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

func TestHandoutIsASoundPDF(t *testing.T) {
	for _, paper := range []Paper{A4, Letter} {
		opt := options(t)
		opt.Paper = paper
		pdf, err := Handout(planOf(t, woman()), opt)
		path := written(t, pdf, err)
		if out := run(t, "qpdf", "--check", path); strings.Contains(out, "WARNING") {
			t.Errorf("qpdf warns:\n%s", out)
		}
		checkFonts(t, path)
		about := run(t, "pdfinfo", path)
		size := map[Paper]string{A4: "595.28 x 841.89", Letter: "612 x 792"}[paper]
		mustHold(t, about, size, "Title:           Your plan\n")
		for _, private := range []string{"Ottilie", "Farnbrook", "Thistlewood", "Harrow"} {
			if strings.Contains(about, private) {
				t.Errorf("the metadata name %q:\n%s", private, about)
			}
		}
	}
}

// checkFonts reads the table of pdffonts: name, type, encoding, emb, sub, uni,
// object number and generation.
func checkFonts(t *testing.T, path string) {
	t.Helper()
	lines := strings.Split(strings.TrimSpace(run(t, "pdffonts", path)), "\n")
	if len(lines) < 5 {
		t.Fatalf("fewer than three fonts:\n%s", strings.Join(lines, "\n"))
	}
	for _, line := range lines[2:] {
		fields := strings.Fields(line)
		if embedded, mapped := fields[len(fields)-5], fields[len(fields)-3]; embedded != "yes" || mapped != "yes" {
			t.Errorf("a font is not embedded or its text cannot be selected: %s", line)
		}
	}
}

func TestHandoutTellsThePlan(t *testing.T) {
	plan := planOf(t, woman())
	opt := options(t)
	opt.NextStep, opt.NextVisit = "Walk to the market on Saturdays.", "30 March 2026"
	pdf, err := Handout(plan, opt)
	text := textOf(t, written(t, pdf, err))
	checkTells(t, plan, opt, text)
	mustHold(t, text,
		"Your plan at a glance", "Why these numbers", "Foods to build meals from",
		"Harrow Lane Nutrition", "Imogen Thistlewood", "004211", "3 Harrow Lane", "desk@harrowlane.example",
		"Open Monday to Thursday", "For Ottilie, 2 March 2026", "plan 1", "Page 1 of ",
		"Walk to the market on Saturdays.", "30 March 2026",
		"Mifflin", "This plan does not take the place of medical care.",
		"your thyroid tablet", "Chicken breast", "Foods with peanuts are left out.",
	)
	if strings.Contains(text, "Peanut butter") {
		t.Error("an avoided food stands on the list")
	}
}

// checkTells checks that a handout has the figures and every meal's measures.
func checkTells(t testing.TB, plan domain.Plan, opt Options, text string) {
	t.Helper()
	targets := plan.Targets
	mustHold(t, text, "Meal 1", "Whole day")
	if !opt.WithoutNumbers {
		value, name := opt.Style.EnergyValue(targets.Energy.Value)
		mustHold(t, text, strings.ReplaceAll(opt.Style.Number(value, 0), "\u00a0", " ")+" "+name)
		for _, g := range []unit.Gram{targets.Protein.Value, targets.Fat.Value, targets.Carbohydrate.Value, targets.Fibre.Value} {
			mustHold(t, text, opt.Style.Grams(g))
		}
	}
	for _, meal := range targets.Allotment.Meals {
		var row []string
		for _, k := range hand.Kinds() {
			if n := meal.Measures.Of(k); n > 0 {
				row = append(row, k.Counted(n))
			} else {
				row = append(row, "–")
			}
		}
		mustHold(t, text, meal.Name+" "+strings.Join(row, " "))
	}
}

func TestWithoutNumbersHasNone(t *testing.T) {
	in := woman()
	in.Goal = energy.Goal{Kind: energy.Lose, Energy: 1250} // fast, low and below resting: findings full of figures
	plan := planOf(t, lifted(in))
	if !plan.Issuable() {
		t.Fatal("the plan of this test must be issuable")
	}
	opt := options(t)
	opt.WithoutNumbers = true
	pdf, err := Handout(plan, opt)
	text := textOf(t, written(t, pdf, err))
	checkTells(t, plan, opt, text)
	checkNoNumbers(t, text)
	mustHold(t, text, "Why these measures", "Chicken breast")
}

// quantities are weights, energies, masses, volumes and shares.
var quantities = regexp.MustCompile(`(?i)\d\s*(kcal|kj|kg|g|lb|st|oz|ml|cups?|tbsp|%)\b|kcal|\bkJ\b|\bBMI\b|calor|\bgrams?\b|%`)

func checkNoNumbers(t testing.TB, text string) {
	t.Helper()
	if found := quantities.FindAllString(text, -1); len(found) > 0 {
		t.Errorf("the paper without numbers has %q:\n%s", found, text)
	}
}

// lifted gives a reason for every hold of an intake.
func lifted(in domain.Intake) domain.Intake {
	plan, err := domain.NewPlan(in)
	if err != nil {
		return in
	}
	in.Reasons = screen.Reasons{}
	for _, f := range plan.Findings {
		if f.Level == derive.Hold {
			in.Reasons[f.Code] = screen.Reason{Text: "agreed with the doctor", By: "I. Thistlewood", Date: in.Date}
		}
	}
	return in
}

func TestHandoutRefuses(t *testing.T) {
	in := woman()
	in.Screening = in.Screening.With(screen.ThyroidUntreated, screen.Yes)
	_, err := Handout(planOf(t, in), options(t))
	var not *NotIssuableError
	if !errors.As(err, &not) || !not.Referred || len(not.Findings) != 1 {
		t.Errorf("referred: got %v", err)
	}
	in = woman()
	in.Screening = in.Screening.With(screen.Lithium, screen.Yes)
	_, err = Handout(planOf(t, in), options(t))
	if !errors.As(err, &not) || not.Referred || !strings.Contains(err.Error(), "lithium") {
		t.Errorf("held: got %v", err)
	}
	if _, err := Handout(planOf(t, lifted(in)), options(t)); err != nil {
		t.Errorf("with its reason: %v", err)
	}
}

func TestHandoutNamesEveryProblemOfItsOptions(t *testing.T) {
	opt := options(t)
	opt.Brand.Colour, opt.Brand.Logo = "leaf", []byte("no picture")
	opt.Brand.Practice = strings.Repeat("long ", 60)
	opt.NextStep = strings.Repeat("step ", 200)
	opt.Paper, opt.Pages = Paper(7), []Page{"cover"}
	_, err := Handout(planOf(t, woman()), opt)
	var problems unit.Problems
	if !errors.As(err, &problems) {
		t.Fatalf("got %v, want problems", err)
	}
	var fields []string
	for _, p := range problems {
		fields = append(fields, p.Field)
	}
	want := "brand.colour brand.logo brand.practice next_step paper pages"
	if got := strings.Join(fields, " "); got != want {
		t.Errorf("problems of %s, want %s", got, want)
	}
}

func TestHandoutHasTheChosenPages(t *testing.T) {
	marks := map[Page]string{PageGlance: "Whole day", PageWhy: "Moving about", PageFoods: "Chicken breast", PageLifeSize: "actual size"}
	for _, page := range Pages() {
		opt := options(t)
		opt.Pages = []Page{page}
		pdf, err := Handout(planOf(t, woman()), opt)
		path := written(t, pdf, err)
		text := textOf(t, path)
		for other, mark := range marks {
			if strings.Contains(text, mark) != (other == page) {
				t.Errorf("%s: %q is wrongly there or missing", page, mark)
			}
		}
		mustHold(t, flow(t, path), "If you feel unwell, call your doctor", "your blood pressure medicine")
	}
}

// A finding that may stand on a handout is told in the client's words.
func TestEveryFindingHasPlainWords(t *testing.T) {
	for _, q := range screen.Questions() {
		in := woman()
		in.Goal = energy.Goal{Kind: energy.Maintain}
		in.Screening = screen.Answers{q.Code: screen.Yes}.AllNo()
		plan := planOf(t, lifted(in))
		if !plan.Issuable() {
			continue
		}
		for _, f := range plan.Findings {
			if _, ok := careWords[f.Code]; !ok {
				t.Errorf("no plain words for %s", f.Code)
			}
		}
	}
	for _, code := range screen.HoldCodes() {
		if careWords[code] == "" {
			t.Errorf("%s can be lifted, and there are no plain words for it", code)
		}
	}
	for code, words := range careWords {
		if strings.ContainsAny(words, "0123456789%") {
			t.Errorf("%s: the words hold a number", code)
		}
	}
}

func TestReferralNote(t *testing.T) {
	in := woman()
	in.Screening = in.Screening.With(screen.ThyroidUntreated, screen.Yes)
	plan := planOf(t, in)
	pdf, err := Referral(plan, options(t))
	path := written(t, pdf, err)
	run(t, "qpdf", "--check", path)
	checkFonts(t, path)
	text := flow(t, path)
	for _, f := range plan.Gate.Refers {
		mustHold(t, text, f.Text, f.Code, f.Source.Text)
	}
	mustHold(t, text, "To whom it may concern", "Ottilie Farnbrook", "11 June 1984", "2 March 2026",
		"No plan and no target were issued", "eating below what holds the weight", "Your answer", "Signature and date")
	if strings.Contains(text, "kcal") {
		t.Error("the note has a target")
	}
	var not *NotReferredError
	if _, err := Referral(planOf(t, woman()), options(t)); !errors.As(err, &not) {
		t.Errorf("nothing refers: got %v", err)
	}
}

func TestEveryStyleFits(t *testing.T) {
	styles := []unit.Style{
		{},
		{System: unit.USCustomary},
		{System: unit.UKCustomary, EnergyIn: unit.InKilojoules},
		{EnergyIn: unit.InKilojoules, DecimalComma: true},
	}
	for _, style := range styles {
		for meals := 1; meals <= domain.MostMeals; meals++ {
			in := man()
			in.MealsPerDay = meals
			in.Pattern = food.Vegan
			opt := longest(t)
			opt.Style, opt.Paper = style, Paper(meals%2)
			plan := planOf(t, in)
			pdf, err := Handout(plan, opt)
			path := written(t, pdf, err)
			checkTells(t, plan, opt, textOf(t, path))
			checkBoxes(t, path, fmt.Sprintf("%d meals, %+v", meals, style))
		}
	}
}

// longest are the longest options that are accepted, in three scripts.
func longest(t testing.TB) Options {
	opt := options(t)
	opt.Brand.Practice = "Κέντρο Διατροφής και Ευεξίας Παπαδοπούλου-Χατζηγιαννακοπούλου · Центр здорового питания на Набережной улице"
	opt.Brand.Practitioner = "Dr. Małgorzata Wyszyńska-Świętopełkowa, Ærøskøbing"
	opt.Brand.Contact = []string{"Wöhlerstraße 114, Hinterhaus, 2. Stock links, 60323 Großwiesenhausen", "+49 6321 960 118 44", "sprechstunde@ernaehrungspraxis-wiesenhausen.example"}
	opt.Brand.Footer = "Δευτέρα έως Πέμπτη, 9 έως 5 · с понедельника по четверг, с девяти до пяти · poniedziałek–czwartek"
	opt.ClientFirstName = "Ξανθίππη-Άννα-Κωνσταντίνα Щедрая-Железнова"
	opt.NextStep = strings.TrimSpace(strings.Repeat("Przygotuj w niedzielę miskę warzyw на всю неделю. ", 11))
	opt.NextVisit = "Donnerstag, 30. April 2026, 14:30 Uhr, im Gartenzimmer"
	return opt
}

// The usual handout is read at home, so that it stays within two sheets printed
// on both sides.
func TestTheUsualHandoutHasFourPages(t *testing.T) {
	for name, goal := range map[string]energy.Goal{
		"to a weight": {Kind: energy.Lose, Weight: 70},
		"by a day":    {Kind: energy.Lose, Weight: 72, By: unit.Date{Year: 2026, Month: 8, Day: 3}},
		"holding":     {Kind: energy.Maintain},
	} {
		in := woman()
		in.Goal = goal
		opt := options(t)
		opt.Brand.Logo = nil
		pdf, err := Handout(planOf(t, in), opt)
		if text := textOf(t, written(t, pdf, err)); !strings.Contains(text, "Page 1 of 4") {
			t.Errorf("%s: the handout has not four pages", name)
		}
	}
}
