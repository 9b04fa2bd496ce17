package measures

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// other is one of the next nearest days, told by what is different in it.
type other struct {
	Words string
	Day   hand.Measures
}

func othersOf(now hand.Allotment, style unit.Style) []other {
	list := make([]other, len(now.Alternatives))
	for i, a := range now.Alternatives {
		list[i] = other{
			Words: capital(changeWords(now.Day, a.Day)) + ": " + nearnessWords(now.Distance, a.Distance, style) + ".",
			Day:   a.Day,
		}
	}
	return list
}

// changeWords tells what another day has less and more: "½ palm less, 1 thumb
// more".
func changeWords(from, to hand.Measures) string {
	var parts []string
	for _, k := range hand.Kinds() {
		switch d := to.Of(k) - from.Of(k); {
		case d < 0:
			parts = append(parts, k.Counted(-d)+" less")
		case d > 0:
			parts = append(parts, k.Counted(d)+" more")
		}
	}
	return strings.Join(parts, ", ")
}

// nearnessWords tells how much nearer to each target another day comes, or how
// much farther from it: "30 kcal nearer, 4 g protein farther".
func nearnessWords(from, to hand.Distance, style unit.Style) string {
	energyFrom, name := style.EnergyValue(from.Energy)
	energyTo, _ := style.EnergyValue(to.Energy)
	var parts []string
	add := func(from, to, step float64, what string) {
		nearer := math.Round((math.Abs(from)-math.Abs(to))/step) * step
		switch {
		case nearer > 0:
			parts = append(parts, style.Number(nearer, 0)+" "+what+" nearer")
		case nearer < 0:
			parts = append(parts, style.Number(-nearer, 0)+" "+what+" farther")
		}
	}
	add(energyFrom, energyTo, stepOf(style), name)
	add(float64(from.Protein), float64(to.Protein), 1, "g protein")
	add(float64(from.Fat), float64(to.Fat), 1, "g fat")
	add(float64(from.Carbohydrate), float64(to.Carbohydrate), 1, "g carbohydrate")
	if len(parts) == 0 {
		return "as near"
	}
	return strings.Join(parts, ", ")
}

// capital begins a text with a capital letter.
func capital(text string) string {
	if text == "" {
		return ""
	}
	first, size := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[size:]
}
