package widgets

import (
	"strings"

	"fyne.io/fyne/v2"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

// Derivation shows how a number came about, step by step: the formula with the
// values put in, the result with its range, a remark and the source.
type Derivation struct {
	composite
	style unit.Style
	steps *fyne.Container
}

// NewDerivation returns an empty derivation.
func NewDerivation(style unit.Style) *Derivation {
	d := &Derivation{style: style, steps: ColumnGap(theme.Unit + theme.Half)}
	d.init(d, d.steps)
	return d
}

// SetSteps shows these steps.
func (d *Derivation) SetSteps(steps []derive.Step) {
	d.steps.Objects = nil
	for _, step := range steps {
		d.steps.Objects = append(d.steps.Objects, d.step(step))
	}
	d.Refresh()
}

// SetStyle changes how numbers are written; show the steps again after it.
func (d *Derivation) SetStyle(style unit.Style) { d.style = style }

func (d *Derivation) step(s derive.Step) fyne.CanvasObject {
	column := ColumnGap(2, Ends(NewText(s.Label, Body), NewLine(ResultText(s, d.style), Strong)))
	if s.Formula != "" {
		column.Add(NewText(s.Formula, Small))
	}
	if put, ok := putIn(s, d.style); ok {
		line := NewText(put, Small)
		line.SetColour(theme.Ink)
		column.Add(line)
	} else if len(s.Inputs) > 0 {
		column.Add(NewText(inputsText(s, d.style), Small))
	}
	if s.Range != nil {
		column.Add(NewText("Range "+rangeText(*s.Range, s.Unit, d.style), Small))
	}
	if s.Note != "" {
		note := NewText(s.Note, Small)
		note.SetColour(theme.Ink)
		column.Add(note)
	}
	if source := SourceText(s.Source); source != "" {
		column.Add(NewText(source, Source))
	}
	return column
}

// SourceText puts a source in words, with how well it was confirmed.
func SourceText(s derive.Source) string {
	switch {
	case s.Text == "":
		return ""
	case s.Confidence == derive.Custom, s.Confidence == derive.Arithmetic:
		return "Source: " + s.Text
	case s.Confidence == derive.Seen:
		return "Source: " + s.Text + " (read in the source)"
	case s.Confidence == derive.SeenSecond:
		return "Source: " + s.Text + " (read in a later copy)"
	}
	return "Source: " + s.Text + " (from memory, not yet confirmed)"
}

// ResultText writes the result of a step with its unit.
func ResultText(s derive.Step, style unit.Style) string {
	return withUnit(figure(s.Result, s.Unit, style), s.Unit)
}

func rangeText(r derive.Range, of string, style unit.Style) string {
	return figure(r.Low, of, style) + " to " + withUnit(figure(r.High, of, style), of)
}

func withUnit(number, name string) string {
	if name == "" {
		return number
	}
	return number + " " + name
}

// figure writes a number as precisely as it means something: energy to the
// kilocalorie, else three figures or two decimals.
func figure(value float64, of string, style unit.Style) string {
	size := max(value, -value)
	switch {
	case strings.HasPrefix(of, "kcal"), strings.HasPrefix(of, "kJ"), size >= 100:
		return trimmed(style.Number(value, 0))
	case size >= 10:
		return trimmed(style.Number(value, 1))
	}
	return trimmed(style.Number(value, 2))
}

// trimmed drops zeros after the decimal mark.
func trimmed(number string) string {
	if !strings.ContainsAny(number, ".,") {
		return number
	}
	return strings.TrimRight(strings.TrimRight(number, "0"), ".,")
}

func inputText(in derive.Input, style unit.Style) string {
	if in.Text != "" {
		return in.Text
	}
	return withUnit(figure(in.Value, in.Unit, style), in.Unit)
}

func inputsText(s derive.Step, style unit.Style) string {
	parts := make([]string, len(s.Inputs))
	for i, in := range s.Inputs {
		parts[i] = in.Name + " " + inputText(in, style)
	}
	return "With " + strings.Join(parts, ", ")
}
