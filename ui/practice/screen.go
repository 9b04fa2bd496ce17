// Package practice is the page on which the practice sets its name and brand,
// its units and the look of the program. What is typed is handed up at once.
package practice

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Ways lead up from the page.
type Ways struct {
	// Changed takes the settings after every change.
	Changed func(Settings)
	// Choose asks for a picture file and hands over its name and content.
	Choose func(chosen func(name string, data []byte))
	// See leads to what is still to be done.
	See func()
}

// Screen is the page.
type Screen struct {
	ways     Ways
	settings Settings

	saved    *widgets.Text
	notice   *fyne.Container // what is still to be done, and a way there
	wanting  *widgets.Text
	colour   *widgets.Field
	swatch   *canvas.Rectangle
	logo     *canvas.Image
	logoName *widgets.Text
	noLogo   *widgets.Button
	object   fyne.CanvasObject
}

// New returns the page with what is set, and parts of other screens below.
func New(settings Settings, ways Ways, below ...fyne.CanvasObject) *Screen {
	s := &Screen{ways: ways, settings: settings, saved: widgets.NewLine("Saved", widgets.Small)}
	s.wanting = widgets.NewText("", widgets.Strong)
	s.wanting.SetColour(theme.Amber)
	see := widgets.Name(widgets.NewQuietButton("See to it", func() { s.ways.See() }), "practice.see")
	s.notice = widgets.Ends(s.wanting, see)
	s.notice.Hide()
	const leastColumn = 380
	content := widgets.ColumnGap(
		theme.Two,
		widgets.Ends(widgets.NewText("Practice", widgets.Display), s.saved),
		s.notice,
		widgets.Grid(
			leastColumn,
			widgets.NewCard("On the papers", s.brandFields()),
			widgets.Column(
				widgets.NewCard("Colour and logo", s.colourFields()),
				widgets.NewCard("Units", s.unitFields()),
				widgets.NewCard("This program", s.lookFields()),
			),
		),
	)
	for _, part := range below {
		content.Add(part)
	}
	s.object = widgets.NewPage(content)
	return s
}

// Object is what is shown.
func (s *Screen) Object() fyne.CanvasObject { return s.object }

// ShowSaved shows whether what was typed is on the disk.
func (s *Screen) ShowSaved(words string) { s.saved.SetText(words) }

// Follow takes settings that were changed elsewhere and are not shown here.
func (s *Screen) Follow(settings Settings) { s.settings = settings }

// ShowWanting shows what is still to be done, above everything else; nothing
// where all is in order.
func (s *Screen) ShowWanting(words string) {
	s.wanting.SetText(words)
	if words == "" {
		s.notice.Hide()
	} else {
		s.notice.Show()
	}
	s.object.Refresh()
}

// change makes a change and hands the settings up.
func (s *Screen) change(how func(*Settings)) {
	how(&s.settings)
	s.ways.Changed(s.settings)
}

// text makes a field for one of the texts.
func (s *Screen) text(name, label, hint string, of func(*Settings) *string) fyne.CanvasObject {
	f := widgets.Name(widgets.NewField(label, hint), "practice."+name)
	f.SetText(*of(&s.settings))
	f.OnChanged = func(text string) { s.change(func(v *Settings) { *of(v) = text }) }
	return f
}

func (s *Screen) brandFields() fyne.CanvasObject {
	contact := widgets.Name(widgets.NewArea("Contact", "Address, telephone, e-mail: one line each.", 3), "practice.contact")
	contact.SetText(s.settings.Contact)
	contact.OnChanged = func(text string) { s.change(func(v *Settings) { v.Contact = text }) }
	return widgets.Column(
		s.text("name", "Name of the practice", "", func(v *Settings) *string { return &v.Name }),
		s.text("practitioner", "Your name", "", func(v *Settings) *string { return &v.Practitioner }),
		s.text("registration", "Registration", "As your register or professional body writes it.", func(v *Settings) *string { return &v.Registration }),
		contact,
		s.text("footer", "Foot of each page", "One line.", func(v *Settings) *string { return &v.Footer }),
		s.paper(),
	)
}

func (s *Screen) paper() fyne.CanvasObject {
	papers := []string{PaperA4, PaperLetter}
	return s.choice("paper", "Paper", []string{"A4", "US Letter"}, indexOf(papers, s.settings.PaperSize()),
		func(v *Settings, i int) { v.Paper = papers[i] })
}

// choice makes a choice among a few words.
func (s *Screen) choice(name, label string, words []string, chosen int, set func(*Settings, int)) fyne.CanvasObject {
	options := make([]widgets.Option, len(words))
	for i, w := range words {
		options[i] = widgets.Option{Label: w}
	}
	c := widgets.Name(widgets.NewChoice(label, options, func(i int) {
		s.change(func(v *Settings) { set(v, i) })
	}), "practice."+name)
	c.SetSelected(chosen)
	return c
}

func (s *Screen) unitFields() fyne.CanvasObject {
	systems := []unit.System{unit.Metric, unit.UKCustomary, unit.USCustomary}
	energies := []unit.EnergyUnit{unit.InKilocalories, unit.InKilojoules}
	decimals := []bool{false, true}
	return widgets.Column(
		s.choice("system", "Weights and lengths", []string{"Metric (kg, cm)", "UK (st lb, ft in)", "US (lb, ft in)"},
			indexOf(systems, s.settings.System), func(v *Settings, i int) { v.System = systems[i] }),
		s.choice("energy", "Energy", []string{"kcal", "kJ"},
			indexOf(energies, s.settings.Energy), func(v *Settings, i int) { v.Energy = energies[i] }),
		s.choice("decimal", "Decimals", []string{"Point: 72.5", "Comma: 72,5"},
			indexOf(decimals, s.settings.DecimalComma), func(v *Settings, i int) { v.DecimalComma = decimals[i] }),
	)
}

func (s *Screen) lookFields() fyne.CanvasObject {
	looks := []string{LookLight, LookDark, LookSystem}
	sizes := []int{90, 100, 115, 130, 150}
	return widgets.Column(
		s.choice("look", "Look", []string{"Light", "Dark", "As the system"},
			indexOf(looks, s.settings.chosenLook()), func(v *Settings, i int) { v.Look = looks[i] }),
		s.choice("text", "Text size", []string{"90 %", "100 %", "115 %", "130 %", "150 %"},
			indexOf(sizes, int(s.settings.Scale()*100+0.5)), func(v *Settings, i int) { v.TextSize = sizes[i] }),
	)
}

// indexOf returns where a value is in a list, -1 where it is not.
func indexOf[T comparable](list []T, value T) int {
	for i, v := range list {
		if v == value {
			return i
		}
	}
	return -1
}
