package unit

// The bounds of a wished rate: this program's choice, no source. What is safe is
// for the screening to say.
const lowRate, highRate KilogramPerWeek = 0.05, 2

var rates = quantity{
	accepted: "a change of weight a week with its unit and without a sign, such as 0.5 kg or 1 lb, from 0.05 to 2 kg (0.12 to 4.4 lb)",
	low:      float64(lowRate),
	high:     float64(highRate),
	names: spelt(
		"kg: kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes",
		"g: g gram grams gramme grammes",
		"lb: lb lbs pound pounds",
	),
	factors: map[string]float64{
		"kg": 1,
		"g":  1.0 / gramsInKilogram,
		"lb": KilogramPerPound,
	},
	per: "week",
}

// ParseRate reads a wished change of weight a week of 0.05 to 2 kg with its unit
// and without a sign: "0.5 kg", "1 lb", "500 g a week", "0,5 kg/week". The error
// is a [Problem] with the field's name.
func ParseRate(field, text string) (KilogramPerWeek, error) {
	value, err := rates.parse(field, text)
	return KilogramPerWeek(value), err
}

// ParseRateIn is [ParseRate] that also reads a number without a unit: as
// kilograms in a metric practice, as pounds in a US one; refused in a UK one.
func ParseRateIn(field, text string, bare System) (KilogramPerWeek, error) {
	value, err := rates.parse(field, text, bare.bareUnits("kg", "lb")...)
	return KilogramPerWeek(value), err
}
