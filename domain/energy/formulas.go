package energy

import (
	"fmt"
	"strconv"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// Each coefficient is named by its equation and stands in the table beside it;
// units: kilograms, centimetres (metres for Henry), completed years, kcal a day
// (MJ a day for Müller).

type mifflinRow struct{ weight, height, age, constant float64 }

// Source: Mifflin 1990, simplified form (seen).
var mifflinRows = map[Sex]mifflinRow{
	Male:   {10, 6.25, -5, 5},
	Female: {10, 6.25, -5, -161},
}

// Source: Roza and Shizgal 1984 (seen in a secondary copy).
var harrisBenedictRows = map[Sex]mifflinRow{
	Male:   {13.397, 4.799, -5.677, 88.362},
	Female: {9.247, 3.098, -4.330, 447.593},
}

func mifflin(in RestingInput) worked { return linear(mifflinRows[in.Sex], in) }

func harrisBenedict(in RestingInput) worked { return linear(harrisBenedictRows[in.Sex], in) }

func linear(r mifflinRow, in RestingInput) worked {
	return worked{
		kcal: r.weight*float64(in.Weight) + r.height*float64(in.Height) + r.age*float64(in.Age) + r.constant,
		formula: fmt.Sprintf("%s × weight + %s × height − %s × age %s",
			plain(r.weight), plain(r.height), plain(-r.age), signed(r.constant)),
		inputs: []derive.Input{weightInput(in), heightInput(in), ageInput(in)},
	}
}

// band is a line for an age band that begins at an age and lasts until the next.
type band struct {
	from                     unit.Year
	weight, height, constant float64
}

// Source: Henry 2005, table of weight equations in kcal (from memory).
var henryWeightRows = map[Sex][]band{
	Male:   {{18, 16.0, 0, 545}, {30, 14.2, 0, 593}, {60, 13.5, 0, 514}},
	Female: {{18, 13.1, 0, 558}, {30, 9.74, 0, 694}, {60, 10.1, 0, 569}},
}

// Source: Henry 2005, table of weight and height equations in kcal, height in
// metres (from memory).
var henryHeightRows = map[Sex][]band{
	Male:   {{18, 14.4, 313, 113}, {30, 11.4, 541, -137}, {60, 11.4, 541, -256}},
	Female: {{18, 10.4, 615, -282}, {30, 8.18, 502, -11.6}, {60, 8.52, 421, 10.7}},
}

// Source: Schofield 1985 in the kcal form of FAO/WHO/UNU 2004, table 5.2 (seen
// in a secondary copy).
var schofieldRows = map[Sex][]band{
	Male:   {{18, 15.057, 0, 692.2}, {30, 11.472, 0, 873.1}, {60, 11.711, 0, 587.7}},
	Female: {{18, 14.818, 0, 486.6}, {30, 8.126, 0, 845.6}, {60, 9.082, 0, 658.5}},
}

func henryWeight(in RestingInput) worked       { return banded(henryWeightRows[in.Sex], in) }
func henryWeightHeight(in RestingInput) worked { return banded(henryHeightRows[in.Sex], in) }
func schofield(in RestingInput) worked         { return banded(schofieldRows[in.Sex], in) }

// banded works out the line of the client's age band. Publications print bands
// that overlap ("18-30", "30-60"); here a band begins at its lower age: our
// convention.
func banded(rows []band, in RestingInput) worked {
	row := rows[0]
	for _, r := range rows {
		if in.Age >= r.from {
			row = r
		}
	}
	w := worked{
		kcal:    row.weight*float64(in.Weight) + row.height*in.Height.Metres() + row.constant,
		formula: plain(row.weight) + " × weight " + signed(row.constant),
		inputs:  []derive.Input{weightInput(in), {Name: "age band", Text: fmt.Sprintf("from %d years", row.from)}},
	}
	if row.height != 0 {
		w.formula = plain(row.weight) + " × weight + " + plain(row.height) + " × height in metres " + signed(row.constant)
		w.inputs = append(w.inputs, derive.Input{Name: "height in metres", Value: in.Height.Metres(), Unit: "m"})
	}
	return w
}

// Source: Owen 1986 (women who are not athletes, seen), Owen 1987 (men, from memory).
var owenRows = map[Sex]band{Male: {0, 10.2, 0, 879}, Female: {0, 7.18, 0, 795}}

func owen(in RestingInput) worked {
	row := owenRows[in.Sex]
	return worked{
		kcal:    row.weight*float64(in.Weight) + row.constant,
		formula: plain(row.weight) + " × weight " + signed(row.constant),
		inputs:  []derive.Input{weightInput(in)},
	}
}

// Source: Müller 2004, weight form, MJ a day (from memory).
const (
	muellerWeight   = 0.047
	muellerMale     = 1.009
	muellerAge      = -0.01452
	muellerConstant = 3.21
)

func mueller(in RestingInput) worked {
	megajoules := muellerWeight*float64(in.Weight) + muellerAge*float64(in.Age) + muellerConstant
	constant := muellerConstant
	if in.Sex == Male {
		megajoules += muellerMale
		constant += muellerMale
	}
	const perMegajoule = 1000
	return worked{
		kcal:    float64(unit.Kilojoule(megajoules * perMegajoule).Kilocalories()),
		formula: fmt.Sprintf("(0.047 × weight − 0.01452 × age + %s) / 0.004184", plain(constant)),
		inputs:  []derive.Input{weightInput(in), ageInput(in)},
	}
}

// Source: Cunningham 1980 and 1991 (from memory).
var (
	cunninghamRow = band{0, 22, 0, 500}
	katchRow      = band{0, 21.6, 0, 370}
)

func cunningham(in RestingInput) worked   { return onLean(cunninghamRow, in) }
func katchMcArdle(in RestingInput) worked { return onLean(katchRow, in) }

func onLean(row band, in RestingInput) worked {
	from := "measurement"
	if !in.LeanMeasured {
		from = "estimate"
	}
	return worked{
		kcal:    row.weight*float64(in.LeanMass) + row.constant,
		stray:   row.weight * float64(in.LeanError),
		formula: plain(row.weight) + " × lean mass " + signed(row.constant),
		inputs:  []derive.Input{{Name: "lean mass", Value: float64(in.LeanMass), Unit: "kg"}, {Name: "lean mass comes from", Text: from}},
	}
}

func weightInput(in RestingInput) derive.Input {
	return derive.Input{Name: "weight", Value: float64(in.Weight), Unit: "kg"}
}

func heightInput(in RestingInput) derive.Input {
	return derive.Input{Name: "height", Value: float64(in.Height), Unit: "cm"}
}

func ageInput(in RestingInput) derive.Input {
	return derive.Input{Name: "age", Value: float64(in.Age), Unit: "years"}
}

func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func signed(v float64) string {
	if v < 0 {
		return "− " + plain(-v)
	}
	return "+ " + plain(v)
}
