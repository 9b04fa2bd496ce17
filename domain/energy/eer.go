package energy

import (
	"fmt"
	"strings"

	"handbreadth/domain/derive"
	"handbreadth/domain/unit"
)

// CrossCheck is another published way to total energy, shown beside the plan's
// maintenance energy and never used in its place.
type CrossCheck struct {
	Name   string
	Energy derive.Derived[unit.Kilocalorie] // a day
}

// driFrom is the age from which the Dietary Reference Intakes have equations for
// adults.
const driFrom unit.Year = 19

// CrossChecks returns the total-energy equations of the Dietary Reference
// Intakes for a client: none under 19. With pregnancy or breastfeeding they are
// for holding weight only, and the rows for women are used, from whom they were
// made.
func CrossChecks(in RestingInput, a Activity, r Reproduction) []CrossCheck {
	if in.Age < driFrom {
		return nil
	}
	return []CrossCheck{
		dri2005(in, a.classBy(bands2005), r),
		{"DRI 2023, estimated energy requirement", nasem(in, a.classBy(bands2023), r)},
	}
}

func dri2005(in RestingInput, c Category, r Reproduction) CrossCheck {
	if r.Told() {
		in.Sex = Female
	}
	if r.PrePregnant > 0 && r.Weeks > 0 {
		in.Weight = r.PrePregnant
	}
	if unit.BMI(in.Weight, in.Height) < overweightFrom {
		return CrossCheck{"DRI 2005, estimated energy requirement", withDRI2005(iomNormal(in, c), r)}
	}
	return CrossCheck{"DRI 2005, total energy, overweight", withDRI2005(iomOverweight(in, c), r)}
}

// overweightFrom is the BMI from which the DRI 2005 have an equation of their own.
const overweightFrom unit.KilogramPerSquareMetre = 25

// The levels from which the second, third and fourth class begin. The two
// editions cut differently: a level of 1.45 is low active in 2005 and inactive in
// 2023.
//
// Source: IOM 2005 (seen): sedentary 1.0-1.39, low active 1.4-1.59, active
// 1.6-1.89, very active 1.9-2.5. NASEM 2023 (seen): inactive under 1.53, low active
// under 1.68, active under 1.85, very active under 2.50.
var (
	bands2005 = [3]unit.PAL{1.4, 1.6, 1.9}
	bands2023 = [3]unit.PAL{1.53, 1.68, 1.85}
)

// classBy returns the class of an activity in an edition: one told by name keeps
// its name, and a level told in another way falls into the class that holds it.
func (a Activity) classBy(bands [3]unit.PAL) Category {
	if a.PAL == 0 && a.Customary == "" && len(a.Day) == 0 {
		return a.Category
	}
	level := a.Level().Value
	found := classes[0].Category
	for i, from := range bands {
		if level >= from {
			found = classes[i+1].Category
		}
	}
	return found
}

// order of the classes in the coefficient tables.
func orderOf(c Category) int {
	for i, class := range classes {
		if class.Category == c {
			return i
		}
	}
	return 0
}

// iomRow is age, physical activity coefficients by class, weight and height (m).
type iomRow struct {
	constant, age  float64
	activity       [4]float64
	weight, height float64
}

// Source: IOM 2005, Dietary Reference Intakes, chapter 5: women and the table of
// 48 values seen, the men's coefficients from memory and reproduced by that table.
var iomNormalRows = map[Sex]iomRow{
	Male:   {662, -9.53, [4]float64{1.00, 1.11, 1.25, 1.48}, 15.91, 539.6},
	Female: {354, -6.91, [4]float64{1.00, 1.12, 1.27, 1.45}, 9.36, 726},
}

// Source: IOM 2005, total energy of overweight adults who hold their weight
// (from memory).
var iomOverweightRows = map[Sex]iomRow{
	Male:   {1086, -10.1, [4]float64{1.00, 1.12, 1.29, 1.59}, 13.7, 416},
	Female: {448, -7.95, [4]float64{1.00, 1.16, 1.27, 1.44}, 11.4, 619},
}

func iomNormal(in RestingInput, c Category) derive.Derived[unit.Kilocalorie] {
	return iom(iomNormalRows[in.Sex], in, c, derive.Source{Text: "IOM 2005, Dietary Reference Intakes for energy, chapter 5", Confidence: derive.Seen})
}

func iomOverweight(in RestingInput, c Category) derive.Derived[unit.Kilocalorie] {
	return iom(iomOverweightRows[in.Sex], in, c, derive.Source{Text: "IOM 2005, Dietary Reference Intakes for energy, chapter 5, overweight adults", Confidence: derive.Memory})
}

func iom(r iomRow, in RestingInput, c Category, source derive.Source) derive.Derived[unit.Kilocalorie] {
	activity := r.activity[orderOf(c)]
	value := r.constant + r.age*float64(in.Age) + activity*(r.weight*float64(in.Weight)+r.height*in.Height.Metres())
	return derive.Exact(unit.Kilocalorie(value), derive.Step{
		Key: "cross_check", Label: "Total energy, DRI 2005",
		Formula: fmt.Sprintf("%s − %s × age + %s × (%s × weight + %s × height in metres)", plain(r.constant), plain(-r.age), plain(activity), plain(r.weight), plain(r.height)),
		Inputs:  []derive.Input{ageInput(in), weightInput(in), {Name: "height in metres", Value: in.Height.Metres(), Unit: "m"}, {Name: "activity", Text: string(c)}},
		Result:  value, Unit: "kcal/day", Source: source,
	})
}

// nasemRow is constant, age, height (cm) and weight.
type nasemRow struct{ constant, age, height, weight float64 }

// Source: NASEM 2023, Dietary Reference Intakes for energy, adults of 19 and
// over, by class (from memory).
var nasemRows = map[Sex][4]nasemRow{
	Male:   {{753.07, -10.83, 6.50, 14.10}, {581.47, -10.83, 8.30, 14.94}, {1004.82, -10.83, 6.52, 15.91}, {-517.88, -10.83, 15.61, 19.11}},
	Female: {{584.90, -7.01, 5.72, 11.71}, {575.77, -7.01, 6.60, 12.14}, {710.25, -7.01, 6.54, 12.34}, {511.83, -7.01, 9.07, 12.56}},
}

// Source: NASEM 2023, second and third trimester, by class (from memory).
var nasemPregnantRows = [4]nasemRow{{1131.20, -2.04, 0.34, 12.15}, {693.35, -2.04, 5.73, 10.20}, {-223.84, -2.04, 13.23, 8.15}, {-779.72, -2.04, 18.45, 8.73}}

func nasem(in RestingInput, c Category, r Reproduction) derive.Derived[unit.Kilocalorie] {
	if r.Told() {
		in.Sex = Female
	}
	row, adds, label, note := nasemRows[in.Sex][orderOf(c)], 0.0, "", ""
	switch {
	case r.Weeks >= secondTrimester:
		before := r.PrePregnant
		if before == 0 {
			before, note = in.Weight, "The weight before pregnancy was not told; the present one stands in."
		}
		row = nasemPregnantRows[orderOf(c)]
		adds = perPregnantWeek*float64(r.Weeks) + laidDown(unit.BMI(before, in.Height))
		label = " + addition"
	case r.Breastfeeding == FirstHalfYear:
		adds, label = firstHalfYearAdds, " + addition"
	case r.Breastfeeding == SecondHalfYear:
		adds, label = secondHalfYearAdds, " + addition"
	}
	value := row.constant + row.age*float64(in.Age) + row.height*float64(in.Height) + row.weight*float64(in.Weight) + adds
	inputs := []derive.Input{ageInput(in), heightInput(in), weightInput(in), {Name: "activity", Text: string(c)}}
	if label != "" {
		inputs = append(inputs, derive.Input{Name: "addition", Value: adds, Unit: "kcal/day"})
	}
	return derive.Exact(unit.Kilocalorie(value), derive.Step{
		Key: "cross_check", Label: "Total energy, DRI 2023",
		Formula: fmt.Sprintf("%s − %s × age + %s × height + %s × weight%s", strings.Replace(plain(row.constant), "-", "−", 1), plain(-row.age), plain(row.height), plain(row.weight), label),
		Inputs:  inputs,
		Result:  value, Unit: "kcal/day",
		Source: derive.Source{Text: "NASEM 2023, Dietary Reference Intakes for energy", Confidence: derive.Memory}, Note: note,
	})
}
