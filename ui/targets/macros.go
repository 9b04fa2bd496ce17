package targets

import (
	"fmt"
	"math"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/macro"
	"handbreadth/domain/screen"
	"handbreadth/domain/unit"
)

// macroView is the target shared among protein, fat and carbohydrate.
type macroView struct {
	Grams  [3]unit.Gram // protein, fat, carbohydrate
	Shares macro.Shares
	Rows   [3]row
	Bands  [3]macro.Band
	Beside row // carbohydrate in the other counting
	Fibre  row

	Balance balance

	// What is set, and why; the first is short, the second a remark.
	Protein, Floor, Counting, Usual setting
	ProteinInForce, FloorInForce    string
}

// setting says how something is set.
type setting struct{ Value, Note string }

// macroOrder is that of the rows.
var macroOrder = [3]string{"protein", "fat", "carbohydrate"}

func macrosOf(p domain.Plan, style unit.Style) macroView {
	t := p.Targets
	v := macroView{
		Grams: [3]unit.Gram{t.Protein.Value, t.Fat.Value, t.Carbohydrate.Value}, Shares: t.Shares,
		Balance: balanceOf(p, style), Fibre: fibreRow(p, style), Beside: besideRow(p, style),
		Protein: proteinSetting(t, style), Floor: floorSetting(p, style), Counting: countingSetting(p, style), Usual: usualSetting(p, style),
		ProteinInForce: style.Number(float64(t.ProteinPerKg), 1) + " by situation", FloorInForce: style.Percent(macro.DefaultFatFloor),
	}
	steps := [3][]derive.Step{t.Protein.Steps, t.Fat.Steps, t.Carbohydrate.Steps}
	for i, key := range macroOrder {
		for _, b := range t.Bands {
			if b.Key == key {
				v.Bands[i] = b
				v.Rows[i] = macroRow(b, steps[i], style)
			}
		}
	}
	v.Rows[2].Label = map[macro.Counting]string{macro.CountTotal: "Carbohydrate, total", macro.CountAvailable: "Carbohydrate, available"}[p.Intake.Counting]
	return v
}

// macroRow tells a macro as its part of the energy, beside the acceptable range;
// the bar tells the grams.
func macroRow(b macro.Band, steps []derive.Step, style unit.Style) row {
	where := "in"
	switch rounded := unit.Percent(math.Round(float64(b.Share.Value))); {
	case rounded < b.Low:
		where = "under"
	case rounded > b.High:
		where = "over"
	}
	return row{
		Value: wholePercent(b.Share.Value, style) + " of energy",
		Note:  where + " the acceptable range of " + style.Number(float64(b.Low), 0) + " to " + style.Percent(b.High),
		Steps: append(append([]derive.Step{}, steps...), b.Share.Steps...),
	}
}

func wholePercent(p unit.Percent, style unit.Style) string {
	return style.Percent(unit.Percent(math.Round(float64(p))))
}

// besideRow is carbohydrate as the other way of counting has it.
func besideRow(p domain.Plan, style unit.Style) row {
	label := "Available, without fibre"
	if p.Intake.Counting == macro.CountAvailable {
		label = "Total, with fibre"
	}
	b := p.Targets.Split.Beside
	return row{Label: label, Value: style.Grams(b.Value), Steps: b.Steps}
}

func fibreRow(p domain.Plan, style unit.Style) row {
	f := p.Targets.Fibre
	note := style.Grams(macro.FibrePer1000) + " for each " + style.Energy(1000)
	if usual := p.Intake.UsualFibre; usual > 0 {
		switch rise := f.Value - usual; {
		case rise >= 1:
			note = style.Grams(rise) + " more than now, raised step by step"
		case rise <= -1:
			note = style.Grams(-rise) + " less than now"
		default:
			note = "as much as now"
		}
	}
	return row{Value: style.Grams(f.Value), Note: note, Steps: f.Steps}
}

func proteinSetting(t *domain.Targets, style unit.Style) setting {
	why := situation(t.Protein.Steps, style)
	if t.Protein.Steps != nil {
		if last := t.Protein.Steps[len(t.Protein.Steps)-1]; last.Key == "protein" && last.Label != "Protein" {
			why += "; " + lower(last.Label)
		}
	}
	return setting{style.Number(float64(t.ProteinPerKg), perKgDecimals(t.ProteinPerKg)) + " g/kg", why}
}

// perKgDecimals keeps a second decimal only where there is one.
func perKgDecimals(g unit.GramPerKilogram) int {
	if math.Abs(float64(g)*10-math.Round(float64(g)*10)) < 1e-6 {
		return 1
	}
	return 2
}

// situation tells why protein is what it is for each kilogram, and on which
// weight: "losing weight, on the weight of 72.6 kg".
func situation(steps []derive.Step, style unit.Style) string {
	for _, step := range steps {
		if step.Key != "protein" || step.Label != "Protein" {
			continue
		}
		why, weight := "", ""
		for _, in := range step.Inputs {
			switch {
			case in.Text != "":
				why = in.Text
			case in.Unit == "kg":
				weight = "on the " + in.Name + " of " + style.Weight(unit.Kilogram(in.Value))
			}
		}
		return why + ", " + weight
	}
	return ""
}

// floorSetting says where the fat floor stands, and why.
func floorSetting(p domain.Plan, style unit.Style) setting {
	t := p.Targets
	value := wholePercent(t.FatFloor, style) + ", " + style.Grams(t.Floor.Grams.Value)
	usual, least := style.Percent(macro.DefaultFatFloor), style.Percent(macro.LeastFatFloor)
	switch {
	case t.Floor.ByWeight:
		return setting{value, style.Number(float64(p.Intake.FatFloorPerKg), 1) + " g for each kilogram decide; the floor by energy is lower"}
	case screen.RaisesFloor(p.Intake.Client.EquationSex, p.Age, p.BMI.Value) && p.Intake.FatFloor < macro.RaisedFatFloor:
		return setting{value, "kept at " + style.Percent(macro.RaisedFatFloor) + " for women of childbearing age and for a BMI under 18.5 (WHO/FAO 2010)"}
	case t.FatFloor == macro.DefaultFatFloor:
		return setting{value, "the lower edge of the range for adults (IOM 2002/2005, EFSA 2010)"}
	}
	return setting{value, "as set here; the usual one is " + usual + ", none is under " + least + " (WHO/FAO 2010)"}
}

func countingSetting(p domain.Plan, style unit.Style) setting {
	if p.Intake.Counting == macro.CountAvailable {
		return setting{"available", "fibre beside it at 2 kcal a gram, as labels in the European Union count"}
	}
	return setting{"total", "fibre inside it, as the USDA table and US labels count"}
}

func usualSetting(p domain.Plan, style unit.Style) setting {
	if p.Intake.UsualFibre == 0 {
		return setting{Value: "not asked"}
	}
	return setting{Value: style.Grams(p.Intake.UsualFibre) + " a day"}
}

// balance is the carbohydrate-fat balance as the slider shows it.
type balance struct {
	Wall unit.Percent
	Why  string // why the slider stops at the wall
	Kept string // what keeps carbohydrate above the balance; "" for nothing
}

func balanceOf(p domain.Plan, style unit.Style) balance {
	t := p.Targets
	return balance{Wall: t.Split.WallBalance, Why: wallWords(t, style), Kept: keptWords(t, style)}
}

// wallWords says why the slider stops.
func wallWords(t *domain.Targets, style unit.Style) string {
	return "at " + wholePercent(t.Split.WallBalance, style) + " fat meets its floor of " + wholePercent(t.FatFloor, style) + " of energy and goes no lower."
}

// keptWords says what keeps carbohydrate above what the balance asks for; "" where
// nothing does.
func keptWords(t *domain.Targets, style unit.Style) string {
	if !t.Split.RaisedCarbohydrate {
		return ""
	}
	return fmt.Sprintf("Carbohydrate is kept higher than the balance asks, for pregnancy or breastfeeding: it gets %s of the energy left after protein.",
		wholePercent(t.CarbFatBalance, style))
}

// balanceText is what the slider writes into the form: whole percents, rounded
// up at the wall, so that the thumb stays there.
func balanceText(p unit.Percent, atWall bool) string {
	whole := math.Round(float64(p))
	if atWall {
		whole = math.Ceil(float64(p) - 1e-9)
	}
	return unit.Style{}.Number(whole, 0) + "%"
}
