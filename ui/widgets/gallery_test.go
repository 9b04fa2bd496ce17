package widgets

import (
	"os"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"handbreadth/domain/derive"
	"handbreadth/domain/hand"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// TestGallery writes pictures of all parts in both looks to the folder that
// HANDBREADTH_GALLERY names.
func TestGallery(t *testing.T) {
	dir := os.Getenv("HANDBREADTH_GALLERY")
	if dir == "" {
		t.Skip("set HANDBREADTH_GALLERY to a folder to get the pictures")
	}
	for name, variant := range map[string]theme.Variant{"light": theme.Light, "dark": theme.Dark} {
		app := program(t, variant)
		for sheet, build := range sheets {
			window := open(t, build(), 1100, 860)
			settle(window.Content())
			savePicture(t, window, dir, sheet+"-"+name+".png")
		}
		app.Settings().SetTheme(theme.New(variant, 1.5))
		window := open(t, numbersSheet(), 1100, 1200)
		settle(window.Content())
		savePicture(t, window, dir, "large-"+name+".png")
	}
}

func controlsSheet() fyne.CanvasObject {
	weight := NewField("Weight", "kg, lb, or stones and pounds")
	weight.Check = checkWeight
	weight.SetText("11 st 6 lb")
	height := NewField("Height", "cm, or feet and inches")
	height.Check = func(text string) (string, error) {
		h, err := unit.ParseHeight("height", text)
		return "= " + unit.Style{}.Height(h), err
	}
	height.SetText("about average")
	born := NewDateField("Date of birth", "")
	born.SetDate(unit.Date{Year: 1990, Month: 5, Day: 17})
	empty := NewField("Waist", "cm or inches, at the level of the navel")
	empty.SetPlaceHolder("not measured")
	off := NewField("Lean mass", "switched off")
	off.Disable()
	area := NewArea("Usual day", "what is eaten now, in words or measures", 3)
	area.SetText("Porridge and an apple early, soup and bread at noon, whatever the canteen has late.")
	primary, quiet, bare := NewPrimaryButton("Compute the plan", nil), NewQuietButton("Print", nil), NewTextButton("Show sources", nil)
	quiet.SetIcon(IconPrint)
	disabled, disabledQuiet := NewPrimaryButton("Not yet", nil), NewQuietButton("Not yet", nil)
	disabled.Disable()
	disabledQuiet.Disable()
	focused := NewQuietButton("Has the focus", nil)
	focused.FocusGained()
	empty.gained()
	strip := NewSectionStrip([]string{"Intake", "Screening", "Targets", "Measures", "Meals", "Handout", "Visits"}, nil)
	strip.Select(2)
	strip.SetMark(1, "2")
	rail := NewRail([]RailItem{
		{Label: "Clients", Icon: IconClients},
		{Label: "Kitchen", Icon: IconKitchen},
		{Label: "Practice", Icon: IconPractice},
		{Label: "Help and first steps", Icon: IconHelp},
	}, nil)
	rail.Select(0)
	rail.Button(1).FocusGained()
	page := NewPage(ColumnGap(theme.Two,
		NewText("Ottoline Farrow", Display), strip,
		NewCard("Body", Grid(240, weight, height, born, empty, off)), area,
		Row(primary, quiet, bare, disabled, disabledQuiet, focused),
		NewText("A paragraph of ordinary text that is long enough to wrap at the end of the line, as texts in another language do when they are a third longer than these here.", Body),
	))
	return container.NewBorder(nil, nil, rail, nil, page)
}

func checkWeight(text string) (string, error) {
	w, err := unit.ParseWeight("weight", text)
	return "= " + unit.Style{}.Weight(w), err
}

func choicesSheet() fyne.CanvasObject {
	goal := NewChoice("Goal", []Option{{Label: "Lose weight"}, {Label: "Keep weight"}, {Label: "Gain weight"}}, nil)
	goal.SetSelected(0)
	activity := NewChoice("Activity", []Option{
		{"Mostly sitting", "Desk, car, sofa; under half an hour on foot a day."},
		{"Somewhat active", "On foot for an hour a day, or light sport twice a week."},
		{"Active", "On foot at work, or brisk sport most days."},
		{"Very active", "Heavy work, or hard training nearly every day."},
	}, nil)
	activity.SetSelected(1)
	avoid := NewMultiChoice("Avoid", []Option{
		{Label: "Milk"},
		{Label: "Eggs"},
		{Label: "Fish"},
		{Label: "Crustaceans"},
		{Label: "Tree nuts"},
		{Label: "Peanuts"},
		{Label: "Wheat"},
		{Label: "Soya"},
		{Label: "Sesame"},
		{Label: "Celery"},
		{Label: "Mustard"},
		{Label: "Lupin"},
	}, nil)
	avoid.SetSelected([]int{5, 8})
	avoid.cursor = 4
	avoid.FocusGained()
	first := NewYesNo("Kidney disease, or told that the kidneys do not work as they should?", nil)
	first.SetAnswer(screen.No)
	first.SetNote("A yes holds the protein target at 0.8 g/kg.")
	second := NewYesNo("Insulin, or tablets that can make blood sugar fall too low?", nil)
	second.SetAnswer(screen.Yes)
	second.FocusGained()
	third := NewYesNo("Pregnant?", nil)
	narrow := NewYesNo("Has weight been lost without wanting it in the last six months?", nil)
	off := NewChoice("Equation (switched off)", []Option{{Label: "Default"}, {Label: "Measured"}}, nil)
	off.SetSelected(1)
	off.Disable()
	return NewPage(ColumnGap(theme.Two,
		Beside(320, ColumnGap(theme.Two, goal, activity), ColumnGap(theme.Two, avoid, off, Narrow(340, narrow))),
		NewCard("Screening", ColumnGap(theme.Two, first, NewHairline(), second, NewHairline(), third)),
	))
}

var demoSteps = []derive.Step{
	{
		Label: "Resting energy", Formula: "10 × weight + 6.25 × height − 5 × age − 161",
		Inputs: []derive.Input{{Name: "weight", Value: 72.6, Unit: "kg"}, {Name: "height", Value: 168, Unit: "cm"}, {Name: "age", Value: 35, Unit: "years"}},
		Result: 1440, Unit: "kcal/day", Range: &derive.Range{Low: 1296, High: 1584},
		Source: derive.Source{Text: "Mifflin, St Jeor et al. 1990, Am J Clin Nutr 51:241", Confidence: derive.Seen},
		Note:   "The default, since it came closest in people of this build.",
	},
	{
		Label: "Maintenance energy", Formula: "resting energy × PAL",
		Inputs: []derive.Input{{Name: "resting energy", Value: 1440, Unit: "kcal/day"}, {Name: "PAL", Value: 1.6}},
		Result: 2304, Unit: "kcal/day", Range: &derive.Range{Low: 2016, High: 2592},
		Source: derive.Source{Text: "FAO/WHO/UNU 2004, table 5.1", Confidence: derive.Memory},
	},
}

func numbersSheet() fyne.CanvasObject {
	energy := NewDisclosure("Target energy", unit.Style{})
	energy.SetProminent(true)
	energy.SetValue("1 804 kcal", "1 560 to 2 050 a day")
	maintenance := NewDisclosure("Maintenance energy", unit.Style{})
	maintenance.SetValue("2 304 kcal", "2 016 to 2 592")
	maintenance.SetSteps(demoSteps)
	maintenance.SetOpen(true)
	maintenance.header.FocusGained()
	bar := NewMacroBar(unit.Style{})
	bar.SetGrams(105, 58, 216)
	slider := NewBalanceSlider(nil)
	slider.SetWall(68, "fat is at least 20 % of energy here, and never under 15 %.")
	slider.SetValue(55)
	walled := NewBalanceSlider(nil)
	walled.SetWall(68, "fat is at least 20 % of energy here, and never under 15 %.")
	walled.SetValue(90)
	walled.FocusGained()
	source := derive.Source{Text: "NICE CG189, 2014", Confidence: derive.SeenSecond}
	note := NewFindingCard(derive.Finding{Level: derive.Note, Text: "Carbohydrate is under 130 g a day.", Source: source})
	caution := NewFindingCard(derive.Finding{Level: derive.Caution, Text: "This rate is quicker than most people keep up. The earliest date at a gentler rate is 4 October.", Source: source})
	hold := NewFindingCard(derive.Finding{Level: derive.Hold, Scope: derive.ScopeDeficit | derive.ScopeProtein, Text: "Kidney disease: protein stays at 0.8 g/kg until the doctor has been asked.", Source: source})
	hold.SetAction("Record a reason", nil)
	refer := NewFindingCard(derive.Finding{Level: derive.Refer, Scope: derive.ScopePlan, Text: "Weight was lost without wanting it. Please refer before any plan.", Source: source})
	refer.SetAction("Write the referral note", nil)
	left := ColumnGap(theme.Two, NewCard("Energy", ColumnGap(theme.Half, energy, NewHairline(), maintenance)), NewCard("Balance", ColumnGap(theme.Three, slider, walled)))
	right := ColumnGap(theme.Two, NewCard("Macros", bar), note, caution, hold, refer)
	return NewPage(Beside(380, left, right))
}

func measuresSheet() fyne.CanvasObject {
	rows := ColumnGap(theme.Unit)
	for _, meal := range []struct {
		name string
		m    hand.Measures
	}{
		{"Breakfast", hand.Measures{Palm: 0.5, Fist: 1, CuppedHand: 2, Thumb: 0}},
		{"Lunch", hand.Measures{Palm: 1.5, Fist: 1.5, CuppedHand: 1.5, Thumb: 1}},
		{"Dinner", hand.Measures{Palm: 1, Fist: 2.5, CuppedHand: 1, Thumb: 1.5}},
	} {
		cells := []fyne.CanvasObject{NewText(meal.name, Strong)}
		for _, kind := range hand.Kinds() {
			cell := NewMeasureCell(kind)
			cell.Set(meal.m.Of(kind), meal.m.Of(kind) > 1.5, "about 120 g")
			cells = append(cells, cell)
		}
		rows.Add(HeadedRow(96, cells...))
	}
	day := Grid(150)
	for i, kind := range hand.Kinds() {
		f := NewMeasureFigure(kind, 40)
		f.SetCount([]unit.Measure{3, 5.5, 4.5, 2.5}[i])
		day.Add(f)
	}
	day.Layout.(*gridLayout).most = 4
	return NewPage(ColumnGap(theme.Two, NewCard("The day", day), NewCard("Meals", rows)))
}

func listsSheet() fyne.CanvasObject {
	search := NewSearchField("Find a client")
	search.SetText("far")
	list := NewList(func() int { return 400 },
		func() fyne.CanvasObject { return NewListLine() },
		func(i int, row fyne.CanvasObject) {
			row.(*ListLine).Set([]string{"Ottoline Farrow", "Bartholomew Quillfeather-Oxenham of the Lower Marshes, a name too long for any row that was ever drawn here", "Ines Marrow"}[i%3],
				"born 17 May 1990 · last visit 2 March 2026", "next visit 30 March")
		})
	search.Steer(list)
	list.SetCursor(2)
	empty := NewEmptyState("No clients yet", "Add the first client, or look around with the demo practice. Nothing leaves this computer.", "Add a client", nil)
	toast := NewToast(nil)
	body := container.NewBorder(Inset(theme.Two, search), nil, nil, container.NewVBox(NewCard("", empty)), list)
	over := Over(body, toast)
	toast.Offer("Ottoline Farrow was deleted from the list of clients.", "Undo", func() {})
	toast.cancel()
	return over
}

// wrongField is a field with a text that is no weight.
func wrongField() *Field {
	f := NewField("Weight", "kg, lb, or stones and pounds")
	f.Check = func(text string) (string, error) {
		return "", unit.Problem{Field: "weight", Given: text, Accepted: "a weight with its unit, such as 72.5 kg"}
	}
	f.SetText("heavy")
	return f
}

// oneFinding is a hold with its button.
func oneFinding() *FindingCard {
	c := NewFindingCard(derive.Finding{Level: derive.Hold, Scope: derive.ScopeProtein, Text: "Kidney disease: ask first.", Source: derive.CommonPractice})
	c.SetAction("Record a reason", nil)
	return c
}

// openNumber is a number with its derivation open.
func openNumber() *Disclosure {
	d := NewDisclosure("Maintenance energy", unit.Style{})
	d.SetValue("2304 kcal", "2016 to 2592")
	d.SetSteps(demoSteps)
	d.SetOpen(true)
	return d
}
