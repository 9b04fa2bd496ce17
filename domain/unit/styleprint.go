package unit

import "math"

// Weight writes a weight: metric to 0.1 kg ("72.6 kg"); US to whole pounds
// ("160 lb"); UK to whole pounds with stones ("11 st 6 lb"). A small weight,
// such as a change, keeps a tenth of a pound: under 20 lb in US style, under a
// stone in UK style.
func (s Style) Weight(w Kilogram) string {
	switch s.System {
	case USCustomary:
		const small = 20
		return s.pounds(w.Pounds(), small)
	case UKCustomary:
		return s.stones(w.Pounds())
	}
	return s.upTo(float64(w), 1) + " kg"
}

// pounds writes a tenth under the small weight, else whole pounds.
func (s Style) pounds(lb, small float64) string {
	if math.Abs(roundTo(lb, 0)) < small {
		return s.upTo(lb, 1) + " lb"
	}
	return s.Number(lb, 0) + " lb"
}

func (s Style) stones(lb float64) string {
	whole := math.Abs(roundTo(lb, 0))
	if !(whole >= PoundPerStone) || math.IsInf(whole, 0) {
		return s.pounds(lb, PoundPerStone)
	}
	st, rest := math.Trunc(whole/PoundPerStone), math.Mod(whole, PoundPerStone)
	written := s.Number(math.Copysign(st, lb), 0) + " st"
	if rest == 0 {
		return written
	}
	return written + " " + s.Number(rest, 0) + " lb"
}

// Height writes a stature: metric to 0.1 cm ("168 cm"); US and UK to half an
// inch ("5 ft 6 in", "5 ft 5½ in", "5 ft").
func (s Style) Height(h Centimetre) string {
	if s.System == Metric {
		return s.upTo(float64(h), 1) + " cm"
	}
	const halvesPerFoot = 2 * InchPerFoot
	halves := roundTo(float64(h)/CentimetrePerInch*2, 0)
	if math.IsNaN(halves) || math.IsInf(halves, 0) {
		return notKnown
	}
	if math.Abs(halves) < halvesPerFoot {
		return withHalf(halves) + " in"
	}
	written := s.Number(math.Trunc(halves/halvesPerFoot), 0) + " ft"
	rest := math.Mod(math.Abs(halves), halvesPerFoot)
	if rest == 0 {
		return written
	}
	return written + " " + withHalf(rest) + " in"
}

// Length writes a length of a hand or waist: US to 0.1 in ("3.3 in"), else to
// 0.1 cm ("8.4 cm"), which UK practices use for these too (common practice, no
// source).
func (s Style) Length(l Centimetre) string {
	if s.System == USCustomary {
		return s.upTo(float64(l)/CentimetrePerInch, 1) + " in"
	}
	return s.upTo(float64(l), 1) + " cm"
}

// EnergyValue returns the energy as a number in the practice's unit and the
// unit's short name, "kcal" or "kJ", for charts and tables.
func (s Style) EnergyValue(e Kilocalorie) (value float64, name string) {
	if s.EnergyIn == InKilojoules {
		return float64(e.Kilojoules()), "kJ"
	}
	return float64(e), "kcal"
}

// Energy writes an energy to whole units: "1880 kcal", "7866 kJ", "10 460 kJ".
func (s Style) Energy(e Kilocalorie) string {
	value, name := s.EnergyValue(e)
	return s.Number(value, 0) + " " + name
}

// EnergyPerDay writes an energy a day: "1880 kcal a day".
func (s Style) EnergyPerDay(e Kilocalorie) string { return s.Energy(e) + " a day" }

// Grams writes a mass of food or nutrient in every system alike: whole from
// 10 g on ("87 g"), else to 0.1 g ("4.5 g").
func (s Style) Grams(g Gram) string { return s.tenthsUnder10(float64(g)) + " g" }

// Volume writes a volume of food: metric and UK in millilitres ("240 ml"); US
// in quarters of a cup from ¼ cup on ("1 cup", "1¼ cups"), in half tablespoons
// from ½ tablespoon on ("1½ tbsp"), and in millilitres under that. The US
// measures are the nearest, for the kitchen: within an eighth of a cup or a
// quarter of a tablespoon.
func (s Style) Volume(v Millilitre) string {
	ml := float64(v)
	cups := roundTo(ml/MillilitrePerUSCup*4, 0)
	spoons := roundTo(ml/MillilitrePerUSTbsp*2, 0)
	const quarterCup = MillilitrePerUSCup / 4
	switch {
	case s.System != USCustomary || !(spoons >= 1) || math.IsInf(cups, 0):
		return s.tenthsUnder10(ml) + " ml"
	case spoons*MillilitrePerUSTbsp/2 < quarterCup:
		return withHalf(spoons) + " tbsp"
	}
	return s.cups(cups)
}

// cups writes a count of quarter cups.
func (s Style) cups(quarters float64) string {
	signs := [...]string{"", "¼", "½", "¾"}
	whole := math.Trunc(quarters / 4)
	part := signs[int(math.Mod(quarters, 4))]
	switch {
	case whole == 0:
		return part + " cup"
	case whole == 1 && part == "":
		return "1 cup"
	}
	return s.Number(whole, 0) + part + " cups"
}

// tenthsUnder10 writes a tenth under 10, else whole numbers.
func (s Style) tenthsUnder10(value float64) string {
	const small = 10
	if math.Abs(roundTo(value, 1)) < small {
		return s.upTo(value, 1)
	}
	return s.Number(value, 0)
}

// Percent writes a percentage to 0.1: "55%", "55.5%".
func (s Style) Percent(p Percent) string { return s.upTo(float64(p), 1) + "%" }

// Rate writes a rate of weight change with its sign, in kilograms ("0.4 kg a
// week") or, in US and UK style, pounds ("-1 lb a week"): to 0.1, or to 0.05
// where the rate is an exact twentieth, such as an agreed 0.25 kg.
func (s Style) Rate(r KilogramPerWeek) string {
	value, name := float64(r), " kg a week"
	if s.System != Metric {
		value, name = Kilogram(r).Pounds(), " lb a week"
	}
	const perWhole, noise = 20, 1e-9
	twentieths := value * perWhole
	if math.Abs(twentieths-math.Round(twentieths)) < noise {
		return s.upTo(value, 2) + name
	}
	return s.upTo(value, 1) + name
}
