package macro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// Source: 4/9/4 arithmetic, Regulation (EU) 1169/2011, annex XIV (seen): 2000
// kcal, 110 g of protein and 25 % fat leave 55.56 g of fat and 265 g of
// carbohydrate (row split_protein_fixed_then_fat_pct of macros.csv).
func TestSplitPublishedRow(t *testing.T) {
	const left = 2000 - 4*110.0
	balance := unit.Percent(100 * (left - 500) / left)
	s := Divide(SplitInput{Energy: 2000, Protein: 110, CarbFatBalance: balance, FatFloor: 20})
	near(t, "fat", float64(s.Fat.Value), 55.5556, 0.0001)
	near(t, "carbohydrate", float64(s.Carbohydrate.Value), 265, 0.0001)
	shares := SharesOf(110, s.Fat.Value, s.Carbohydrate.Value)
	near(t, "protein share", float64(shares.Protein), 22, 1e-9)
	near(t, "carbohydrate share", float64(shares.Carbohydrate), 53, 1e-9)
}

// Source: IOM 2002/2005: 45-65 % of 2000 kcal is 225-325 g (seen).
func TestCarbohydrateBandInGrams(t *testing.T) {
	near(t, "45 %", float64(gramsAt(2000, 45, EnergyPerGramCarbohydrate)), 225, 1e-9)
	near(t, "65 %", float64(gramsAt(2000, 65, EnergyPerGramCarbohydrate)), 325, 1e-9)
}

// Source: IOM 2002/2005: 14 g per 1000 kcal (from memory): 1500 kcal, 21 g.
func TestFibre(t *testing.T) {
	near(t, "fibre", float64(Fibre(1500).Value), 21, 1e-9)
	near(t, "fibre", float64(Fibre(2500).Value), 35, 1e-9)
}

func TestFloorIsAWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := SplitInput{
			Energy:         unit.Kilocalorie(rapid.Float64Range(800, 5000).Draw(t, "energy")),
			CarbFatBalance: unit.Percent(rapid.Float64Range(0, 100).Draw(t, "balance")),
			FatFloor:       unit.Percent(rapid.Float64Range(15, 40).Draw(t, "floor")),
		}
		in.Protein = gramsAt(in.Energy, unit.Percent(rapid.Float64Range(5, 60).Draw(t, "protein share")), EnergyPerGramProtein)
		if rapid.Bool().Draw(t, "least carbohydrate") {
			in.LeastCarbohydrate = CarbohydrateBreastfeeding
		}
		s := Divide(in)
		fat, floor := EnergyPerGramFat*float64(s.Fat.Value), float64(in.Energy)*float64(in.FatFloor)/100
		if fat < floor-1e-6 {
			t.Fatalf("fat brings %v kcal, floor %v", fat, floor)
		}
		sum := EnergyPerGramProtein*float64(in.Protein) + fat + EnergyPerGramCarbohydrate*float64(s.Carbohydrate.Value)
		if math.Abs(sum-float64(in.Energy)) > 1e-6 {
			t.Fatalf("grams bring %v kcal, target %v", sum, in.Energy)
		}
		if in.LeastCarbohydrate == 0 && s.AtFloor != (in.CarbFatBalance > s.WallBalance+1e-9) && math.Abs(float64(in.CarbFatBalance-s.WallBalance)) > 1e-6 {
			t.Fatalf("balance %v, wall %v, at floor %v", in.CarbFatBalance, s.WallBalance, s.AtFloor)
		}
	})
}

func TestProteinBySituation(t *testing.T) {
	base := ProteinInput{Weight: 70, Height: 175, Age: 40, Energy: 1600, FatFloor: 20}
	with := func(change func(*ProteinInput)) ProteinInput { in := base; change(&in); return in }
	cases := []struct {
		name string
		in   ProteinInput
		want float64
	}{
		{"holding weight, common practice", base, 70},
		{"losing, Leidy 2015 (from memory)", with(func(in *ProteinInput) { in.Direction = Lowering }), 84},
		{"gaining, ISSN 2017 (from memory)", with(func(in *ProteinInput) { in.Direction = Raising }), 98},
		{"65 or over, PROT-AGE (seen)", with(func(in *ProteinInput) { in.Age = 65 }), 84},
		{"kidney, KDIGO 2024 (from memory)", with(func(in *ProteinInput) { in.Kidney = true; in.Age = 70; in.Direction = Lowering }), 56},
		{"kidney wins over surgery", with(func(in *ProteinInput) { in.Kidney = true; in.AfterBariatric = true }), 56},
		{"after surgery at least 60 g", with(func(in *ProteinInput) { in.Weight = 50; in.AfterBariatric = true }), 60},
		{"at least 15 % of energy, common practice", with(func(in *ProteinInput) { in.Energy = 2400 }), 90},
		{"kidney is left alone", with(func(in *ProteinInput) { in.Energy = 2400; in.Kidney = true }), 56},
		{"what was asked for is left alone", with(func(in *ProteinInput) { in.Energy = 2400; in.Asked = 1 }), 70},
		{"asked for", with(func(in *ProteinInput) { in.Asked = 1.6 }), 112},
		{"no more than 35 % of energy", with(func(in *ProteinInput) { in.Asked = 2.5; in.Energy = 1600 }), 140},
		// Adjusted weight at 175 cm: 76.5625 + 0.25 x (120 - 76.5625) = 87.421875.
		{"adjusted weight from BMI 30, convention", with(func(in *ProteinInput) { in.Weight = 120 }), 87.421875},
		{"kidney on full weight", with(func(in *ProteinInput) { in.Weight = 120; in.Kidney = true }), 96},
	}
	for _, c := range cases {
		near(t, c.name, float64(Protein(c.in).Grams.Value), c.want, 1e-9)
	}
}
