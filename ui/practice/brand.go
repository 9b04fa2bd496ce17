package practice

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// logoHeight is how high the logo is shown.
const logoHeight float32 = 56

func (s *Screen) colourFields() fyne.CanvasObject {
	s.colour = widgets.Name(widgets.NewField("Colour of headings and lines",
		"Six digits such as #1E5B4F. Text in it is darkened on paper where it would be hard to read."), "practice.colour")
	s.colour.Check = func(text string) (string, error) {
		_, err := readColour(text)
		return "", err
	}
	s.swatch = canvas.NewRectangle(nil)
	s.swatch.CornerRadius = theme.Radius
	s.swatch.SetMinSize(fyne.NewSize(theme.Four, theme.Unit))
	s.colour.SetText(s.settings.Colour)
	s.colour.OnChanged = s.typedColour
	s.showColour()
	s.logo = canvas.NewImageFromResource(nil)
	s.logo.FillMode = canvas.ImageFillContain
	s.logo.SetMinSize(fyne.NewSize(2*logoHeight, logoHeight))
	s.logoName = widgets.NewText("", widgets.Small)
	choose := widgets.Name(widgets.NewQuietButton("Choose a logo", func() { s.ways.Choose(s.takeLogo) }), "practice.logo")
	s.noLogo = widgets.Name(widgets.NewQuietButton("Remove the logo", s.removeLogo), "practice.nologo")
	s.showLogo()
	return widgets.Column(s.swatch, s.colour, s.logo, s.logoName, widgets.Row(choose, s.noLogo))
}

func (s *Screen) typedColour(text string) {
	colour, err := readColour(text)
	if err != nil {
		return // kept as it was until what is typed is a colour; the field says so
	}
	s.change(func(v *Settings) { v.Colour = colour })
	s.showColour()
}

// showColour shows the colour that is set, or the program's own.
func (s *Screen) showColour() {
	s.swatch.FillColor = theme.Colour(theme.Spruce)
	if c, ok := rgb(s.settings.Colour); ok {
		s.swatch.FillColor = c
	}
	s.swatch.Refresh()
}

func (s *Screen) takeLogo(name string, data []byte) {
	if err := checkLogo(data); err != nil {
		s.logoName.SetStyle(widgets.Problem)
		s.logoName.SetText(err.Error())
		s.object.Refresh()
		return
	}
	s.change(func(v *Settings) { v.Logo, v.LogoName = data, name })
	s.showLogo()
}

func (s *Screen) removeLogo() {
	s.change(func(v *Settings) { v.Logo, v.LogoName = nil, "" })
	s.showLogo()
}

func (s *Screen) showLogo() {
	s.logoName.SetStyle(widgets.Small)
	if s.settings.LogoName == "" {
		s.logoName.SetText("No logo yet: the name of the practice stands at the top of the papers.")
		s.logo.Hide()
		s.noLogo.Hide()
	} else {
		s.logoName.SetText(s.settings.LogoName)
		s.logo.Resource = fyne.NewStaticResource(s.settings.LogoName, s.settings.Logo)
		s.logo.Show()
		s.logo.Refresh()
		s.noLogo.Show()
	}
	if s.object != nil {
		s.object.Refresh()
	}
}
