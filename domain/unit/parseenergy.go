package unit

import "strconv"

var energies = quantity{
	accepted: "an energy with its unit, such as 1800 kcal, 7500 kJ or 7.5 MJ, from 200 to 10000 kcal (837 to 41840 kJ)",
	low:      float64(lowEnergy),
	high:     float64(highEnergy),
	names: spelt(
		"kcal: kcal kcals kilocalorie kilocalories cal cals calorie calories",
		"kj: kj kilojoule kilojoules",
		"mj: mj megajoule megajoules",
	),
	factors: map[string]float64{
		"kcal": 1,
		"kj":   1 / KilojoulePerKilocal,
		"mj":   kilojoulePerMega / KilojoulePerKilocal,
	},
	per: "day",
}

// ParseEnergy reads an energy or an energy a day of 200 to 10000 kcal with its
// unit: "1800 kcal", "1 800 kcal", "1,800 kcal", "7.5 MJ", "7531 kJ", "1800
// kcal/day", "1800 kcal a day". "Calories" are kilocalories, as food labels use
// the word (US 21 CFR 101.9, from memory); small calories would be far out of
// bounds. The error is a [Problem] with the field's name.
func ParseEnergy(field, text string) (Kilocalorie, error) {
	return parseEnergy(field, text)
}

// ParseEnergyIn is [ParseEnergy] that also reads a number without a unit, in
// the given one.
func ParseEnergyIn(field, text string, bare EnergyUnit) (Kilocalorie, error) {
	name := "kcal"
	if bare == InKilojoules {
		name = "kj"
	}
	return parseEnergy(field, text, name)
}

func parseEnergy(field, text string, bare ...string) (Kilocalorie, error) {
	value, err := energies.parse(field, text, bare...)
	return Kilocalorie(value), err
}

// ParsePercent reads a percentage from low to high, with or without its sign:
// "55", "55 %", "55,5%", "55 per cent". The error is a [Problem] with the
// field's name.
func ParsePercent(field, text string, low, high Percent) (Percent, error) {
	q := quantity{
		accepted: "a percentage from " + plainPercent(low) + " to " + plainPercent(high),
		low:      float64(low),
		high:     float64(high),
		names:    spelt("%: percent pct"),
		factors:  map[string]float64{"%": 1},
	}
	value, err := q.parse(field, text, "%")
	return Percent(value), err
}

func plainPercent(p Percent) string {
	return strconv.FormatFloat(float64(p), 'f', -1, 64) + "%"
}
