package measures

import (
	"fmt"
	"math"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// listed joins words as people say them.
func listed(parts []string, otherwise string) string {
	switch len(parts) {
	case 0:
		return otherwise
	case 1:
		return parts[0]
	}
	last := len(parts) - 1
	return strings.Join(parts[:last], ", ") + " and " + parts[last]
}

// about tells what an amount of food brings, rounded to what can be known.
func about(n hand.Nutrients, style unit.Style) string {
	return "about " + rounded(n.Energy, style) + "\n" + wholeGrams(n.Protein, style) + " protein"
}

// rounded writes an energy to the nearest 10 kcal or 50 kJ.
func rounded(e unit.Kilocalorie, style unit.Style) string {
	value, name := style.EnergyValue(e)
	step := stepOf(style)
	return style.Number(math.Round(value/step)*step, 0) + " " + name
}

func stepOf(style unit.Style) float64 {
	if style.EnergyIn == unit.InKilojoules {
		return 50
	}
	return 10
}

func wholeGrams(g unit.Gram, style unit.Style) string {
	return style.Grams(unit.Gram(math.Round(float64(g))))
}

// contentOf tells what one measure holds.
func contentOf(c hand.Content, filling food.Filling, style unit.Style) content {
	told := content{
		Kind: c.Kind, Amount: "about " + style.Grams(c.Grams.Value),
		Brings: style.Energy(c.Nutrients.Energy), Macros: macros(c.Nutrients, style),
		Said: filling.Words(), Steps: c.Steps, Filling: filling,
	}
	if c.Volume > 0 {
		told.Amount = style.Volume(c.Volume) + ", " + told.Amount
	}
	if c.Grams.Low < c.Grams.High {
		told.Spread = style.Number(float64(c.Grams.Low), 0) + " to " + style.Number(float64(c.Grams.High), 0) + " g, by food and hand"
	}
	return told
}

// amountNote tells what a count of a measure comes to in the kitchen, as a range
// of counts where the client prefers it, and what is wished of it.
func amountNote(c hand.Content, n unit.Measure, ranges bool, bound string, style unit.Style) string {
	var parts []string
	if n > 0 {
		grams := style.Grams(unit.Gram(kitchen(float64(n) * float64(c.Grams.Value))))
		if c.Volume > 0 {
			grams = style.Volume(unit.Millilitre(kitchen(float64(n)*float64(c.Volume)))) + ", " + grams
		}
		parts = append(parts, grams)
		if ranges {
			parts = append(parts, c.Between(n).Words(c.Kind))
		}
	}
	if bound != "" {
		parts = append(parts, bound)
	}
	return strings.Join(parts, "\n")
}

// kitchen rounds an amount as a kitchen knows it: to 1 under 30, to 5 under 200,
// else to 10.
func kitchen(amount float64) float64 {
	const small, middling = 30, 200
	step := 10.0
	switch {
	case amount < small:
		step = 1
	case amount < middling:
		step = 5
	}
	return math.Max(1, math.Round(amount/step)*step)
}

// macros tells what a measure brings besides energy.
func macros(n hand.Nutrients, style unit.Style) string {
	return listed([]string{
		style.Grams(n.Protein) + " protein", style.Grams(n.Fat) + " fat",
		style.Grams(n.Carbohydrate) + " carbohydrate", style.Grams(n.Fibre) + " fibre",
	}, "")
}

// basketWords says whose foods fill the measures.
func basketWords(pattern food.Pattern, avoid []food.Allergen) string {
	words := "Reckoned from foods of " + eater[pattern]
	if len(avoid) == 0 {
		return words + "."
	}
	var names []string
	for _, a := range avoid {
		names = append(names, a.Name())
	}
	return words + ", without " + listed(names, "") + "."
}

var eater = map[food.Pattern]string{
	food.Omnivore: "an omnivore", food.Pescatarian: "a pescatarian",
	food.Vegetarian: "a vegetarian", food.Vegan: "a vegan",
}

// nearWords tells in plain words how near a day of the measures comes.
func nearWords(d hand.Distance, style unit.Style) string {
	energy, _ := style.EnergyValue(d.Energy)
	_, name := style.EnergyValue(1)
	words := fmt.Sprintf("A day of these measures brings about %s and %s.",
		besideWords(energy, stepOf(style), name, "energy", style), besideWords(float64(d.Protein), 1, "g", "protein", style))
	if d.UnderFloor {
		words += " Its fat lies under the floor: the wishes leave too little."
	}
	return words
}

func besideWords(diff, step float64, unitName, what string, style unit.Style) string {
	rounded := math.Round(math.Abs(diff)/step) * step
	if rounded == 0 {
		return "as much " + what + " as the target"
	}
	than := "more"
	if diff < 0 {
		than = "less"
	}
	return style.Number(rounded, 0) + " " + unitName + " " + than + " " + what + " than the target"
}

// distances sets what the measures bring beside each target.
func distances(t *domain.Targets, style unit.Style) []beside {
	b, d := t.Allotment.Brings, t.Allotment.Distance
	energy, name := style.EnergyValue(d.Energy)
	grams := func(what string, target, brings, diff unit.Gram) beside {
		return beside{what, wholeGrams(target, style), wholeGrams(brings, style), difference(float64(diff), "g", style)}
	}
	return []beside{
		{"Energy", style.Energy(t.Energy.Value), style.Energy(b.Energy), difference(energy, name, style)},
		grams("Protein", t.Protein.Value, b.Protein, d.Protein),
		grams("Fat", t.Fat.Value, b.Fat, d.Fat),
		grams("Carbohydrate", t.Carbohydrate.Value, b.Carbohydrate, d.Carbohydrate),
		grams("Fibre", t.Fibre.Value, b.Fibre, b.Fibre-t.Fibre.Value),
	}
}

func difference(diff float64, unitName string, style unit.Style) string {
	whole := math.Round(math.Abs(diff))
	switch {
	case whole == 0:
		return "as aimed at"
	case diff > 0:
		return style.Number(whole, 0) + " " + unitName + " more"
	}
	return style.Number(whole, 0) + " " + unitName + " less"
}
