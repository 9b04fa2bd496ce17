package unit

// How numbers are read, in all of these functions. The decimal mark is a point
// or a comma. Thousands may be set apart by a space. A point or comma before
// exactly three digits could be either mark; the reading that lies in the
// quantity's bounds is taken, and the text is refused when both do: "1,800
// kcal" is 1800 since 1.8 is no day's energy, "72,500 kg" is 72.5 since nobody
// weighs 72 tonnes. Signs, exponents, hexadecimal, anything left over, and
// digits of other scripts are refused.

// The bounds of what is read: wide enough for any adult, narrow enough to catch
// a wrong unit. They are this program's choice, no source.
const (
	lowWeight, highWeight Kilogram    = 20, 400
	lowHeight, highHeight Centimetre  = 100, 250
	lowLength, highLength Centimetre  = 1, 250
	lowEnergy, highEnergy Kilocalorie = 200, 10000
)

var weights = quantity{
	accepted: "a weight with its unit, such as 72.5 kg, 160 lb or 11 st 6 lb, from 20 to 400 kg (45 to 881 lb)",
	low:      float64(lowWeight),
	high:     float64(highWeight),
	names: spelt(
		"kg: kg kgs kilo kilos kilogram kilograms kilogramme kilogrammes",
		"g: g gram grams gramme grammes",
		"lb: lb lbs pound pounds",
		"st: st stone stones",
	),
	factors: map[string]float64{
		"kg": 1,
		"g":  1.0 / gramsInKilogram,
		"lb": KilogramPerPound,
		"st": KilogramPerPound * PoundPerStone,
	},
	pairs: []unitPair{{
		large: "st", small: "lb", count: PoundPerStone,
		asked: "whole stones with pounds under 14, such as 11 st 6 lb",
	}},
}

const (
	gramsInKilogram    = 1000
	centimetrePerMetre = 100
	millimetrePerCm    = 10
	kilojoulePerMega   = 1000
)

var heights = quantity{
	accepted: "a height with its unit, such as 168 cm, 1.68 m or 5 ft 6 in, from 100 to 250 cm (3 ft 4 in to 8 ft 2 in)",
	low:      float64(lowHeight),
	high:     float64(highHeight),
	names: spelt(
		"cm: cm centimetre centimetres centimeter centimeters",
		"m: m metre metres meter meters",
		"mm: mm millimetre millimetres millimeter millimeters",
		"ft: ft foot feet",
		"in: in ins inch inches",
	),
	factors: map[string]float64{
		"cm": 1,
		"m":  centimetrePerMetre,
		"mm": 1.0 / millimetrePerCm,
		"ft": CentimetrePerInch * InchPerFoot,
		"in": CentimetrePerInch,
	},
	pairs: []unitPair{
		{
			large: "ft", small: "in", count: InchPerFoot,
			asked: "whole feet with inches under 12, such as 5 ft 6 in",
		},
		{
			large: "m", small: "cm", count: centimetrePerMetre, twoDigits: true,
			asked: "metres with two digits of centimetres, such as 1m68 or 1.68 m",
		},
	},
}

var lengths = quantity{
	accepted: "a length with its unit, such as 84 mm, 8.4 cm or 3.3 in, from 1 to 250 cm",
	low:      float64(lowLength),
	high:     float64(highLength),
	names: spelt(
		"cm: cm centimetre centimetres centimeter centimeters",
		"mm: mm millimetre millimetres millimeter millimeters",
		"in: in ins inch inches",
	),
	factors: map[string]float64{
		"cm": 1,
		"mm": 1.0 / millimetrePerCm,
		"in": CentimetrePerInch,
	},
}

// ParseWeight reads a body weight of 20 to 400 kg with its unit: "72.5 kg",
// "72,5kg", "160 lbs", "11 st 6 lb", "11st6", "11 st", "72500 g". The error is
// a [Problem] with the field's name.
func ParseWeight(field, text string) (Kilogram, error) {
	value, err := weights.parse(field, text)
	return Kilogram(value), err
}

// ParseWeightIn is [ParseWeight] that also reads a number without a unit: as
// kilograms in a metric practice, as pounds in a US one. In a UK practice it is
// refused, because kilograms, pounds and stones are all in daily use there and
// 70 could be two of them.
func ParseWeightIn(field, text string, bare System) (Kilogram, error) {
	value, err := weights.parse(field, text, bare.bareUnits("kg", "lb")...)
	return Kilogram(value), err
}

// ParseHeight reads a stature of 100 to 250 cm with its unit: "168 cm",
// "1.68 m", "1,68m", "1m68", "5 ft 5 in", "5'5\"", "5′5″", "5ft5", "5 ft 5½ in",
// "65 in", "5 ft". Feet with a decimal ("5.11 ft") are refused: they are as
// often meant as feet and inches. The error is a [Problem] with the field's
// name.
func ParseHeight(field, text string) (Centimetre, error) {
	value, err := heights.parse(field, text)
	return Centimetre(value), err
}

// ParseHeightIn is [ParseHeight] that also reads a number without a unit: in a
// metric practice as centimetres (168) or metres (1.68), whichever is a
// stature; in a US practice as inches. In a UK practice it is refused, because
// both are in daily use there.
func ParseHeightIn(field, text string, bare System) (Centimetre, error) {
	units := bare.bareUnits("cm", "in")
	if bare == Metric {
		units = append(units, "m")
	}
	value, err := heights.parse(field, text, units...)
	return Centimetre(value), err
}

// ParseLength reads a length of a hand or waist, 1 to 250 cm, with its unit:
// "84 mm", "8,4 cm", "3.3 in", `3¼"`. The error is a [Problem] with the field's
// name.
func ParseLength(field, text string) (Centimetre, error) {
	value, err := lengths.parse(field, text)
	return Centimetre(value), err
}

// ParseLengthIn is [ParseLength] that also reads a number without a unit: as
// centimetres in a metric practice, as inches in a US one; refused in a UK one.
func ParseLengthIn(field, text string, bare System) (Centimetre, error) {
	value, err := lengths.parse(field, text, bare.bareUnits("cm", "in")...)
	return Centimetre(value), err
}
