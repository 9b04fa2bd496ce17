package unit

// Kilogram is a body weight or another mass told in kilograms.
type Kilogram float64

// Gram is a mass of food or of a nutrient.
type Gram float64

// Milligram is a mass of a mineral or a vitamin.
type Milligram float64

// Microgram is a mass of a vitamin.
type Microgram float64

// Centimetre is a length: stature, a palm, a fist.
type Centimetre float64

// Millilitre is a volume of food.
type Millilitre float64

// Kilocalorie is an amount of energy, or of energy a day where the name of the
// variable says so. One kilocalorie is 4.184 kilojoules.
type Kilocalorie float64

// Kilojoule is an amount of energy in the SI unit.
type Kilojoule float64

// Year is an age in completed years.
type Year int

// Day is a length of time in days.
type Day float64

// PAL is a physical activity level: total energy over resting energy.
type PAL float64

// Percent is a share told in hundredths: 20 means 20 %.
type Percent float64

// GramPerKilogram is an amount of a nutrient a day for each kilogram of body
// weight.
type GramPerKilogram float64

// KilogramPerSquareMetre is a body mass index.
type KilogramPerSquareMetre float64

// KilogramPerWeek is a rate of weight change; loss is negative.
type KilogramPerWeek float64

// Ratio is a bare proportion.
type Ratio float64

// Measure is a count of hand measures, in wholes and halves.
type Measure float64

// Exact equivalences. The pound and the inch are those of the international
// yard and pound agreement of 1959; the kilocalorie is the thermochemical one
// (SI brochure); the US customary cup, tablespoon and teaspoon are those of
// NIST Handbook 44, appendix C.
const (
	KilogramPerPound       = 0.45359237
	PoundPerStone          = 14
	CentimetrePerInch      = 2.54
	InchPerFoot            = 12
	KilojoulePerKilocal    = 4.184
	GramPerOunce           = 28.349523125
	MillilitrePerUSCup     = 236.5882365
	MillilitrePerUSTbsp    = 14.78676478125
	MillilitrePerUSFluidOz = 29.5735295625
)

// Kilojoules returns the same energy in kilojoules.
func (k Kilocalorie) Kilojoules() Kilojoule { return Kilojoule(k * KilojoulePerKilocal) }

// Kilocalories returns the same energy in kilocalories.
func (k Kilojoule) Kilocalories() Kilocalorie { return Kilocalorie(k / KilojoulePerKilocal) }

// Pounds returns the weight in avoirdupois pounds.
func (k Kilogram) Pounds() float64 { return float64(k) / KilogramPerPound }

// Metres returns the length in metres.
func (c Centimetre) Metres() float64 { return float64(c) / 100 }

// BMI returns the body mass index of a weight at a stature.
// Source: WHO, weight in kilograms over the square of stature in metres.
func BMI(weight Kilogram, stature Centimetre) KilogramPerSquareMetre {
	m := stature.Metres()
	return KilogramPerSquareMetre(float64(weight) / (m * m))
}

// WeightAtBMI returns the weight that has the given index at a stature.
func WeightAtBMI(index KilogramPerSquareMetre, stature Centimetre) Kilogram {
	m := stature.Metres()
	return Kilogram(float64(index) * m * m)
}
