package macro

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/derive"
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
	for _, row := range rows(t, "split_protein_fixed_then_fat_pct") {
		left := row.in["kcal"] - 4*row.in["protein_g"]
		fat := row.in["kcal"] * row.in["fat_pct"] / 100
		s := Divide(SplitInput{
			Energy: unit.Kilocalorie(row.in["kcal"]), Protein: unit.Gram(row.in["protein_g"]),
			CarbFatBalance: unit.Percent(100 * (left - fat) / left), FatFloor: 20,
		})
		near(t, "fat", float64(s.Fat.Value), row.want["fat_g"], 5e-5)
		near(t, "carbohydrate", float64(s.Carbohydrate.Value), row.want["carb_g"], 5e-5)
		shares := s.Shares(unit.Gram(row.in["protein_g"]))
		near(t, "protein share", float64(shares.Protein), row.want["protein_pct"], 5e-5)
		near(t, "carbohydrate share", float64(shares.Carbohydrate), row.want["carb_pct"], 5e-5)
	}
}

// Source: IOM 2002/2005: 45-65 % of 2000 kcal is 225-325 g (seen).
func TestCarbohydrateBandInGrams(t *testing.T) {
	near(t, "45 %", float64(gramsAt(2000, CarbohydrateShareFloor, EnergyPerGramCarbohydrate)), 225, 1e-9)
	near(t, "65 %", float64(gramsAt(2000, MostCarbohydrateShare, EnergyPerGramCarbohydrate)), 325, 1e-9)
}

func anySplit(t *rapid.T) SplitInput {
	in := SplitInput{
		Energy:         unit.Kilocalorie(rapid.IntRange(0, 5000).Draw(t, "energy")),
		CarbFatBalance: unit.Percent(rapid.Float64Range(0, 100).Draw(t, "balance")),
		FatFloor:       unit.Percent(rapid.Float64Range(15, 60).Draw(t, "floor")),
		Counting:       rapid.SampledFrom(Countings()).Draw(t, "counting"),
	}
	most := rapid.Float64Range(0, 1).Draw(t, "protein") * (100 - float64(in.FatFloor))
	in.Protein = gramsAt(in.Energy, unit.Percent(most), EnergyPerGramProtein)
	in.Fibre = Fibre(in.Energy)
	in.LeastCarbohydrate = rapid.SampledFrom([]unit.Gram{0, CarbohydratePregnant, CarbohydrateBreastfeeding}).Draw(t, "least carbohydrate")
	return in
}

// The fat never goes under its floor, and grams times factors are the energy,
// whatever the counting.
func TestFloorIsAWall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := anySplit(t)
		s := Divide(in)
		fat, floor := EnergyPerGramFat*float64(s.Fat.Value), float64(in.Energy)*float64(in.FatFloor)/100
		if fat < floor-1e-6 {
			t.Fatalf("fat brings %v kcal, floor %v", fat, floor)
		}
		sum := EnergyPerGramProtein*float64(in.Protein) + fat + energyOfCarbohydrate(in.Counting, s)
		if math.Abs(sum-float64(in.Energy)) > 1e-6 {
			t.Fatalf("grams bring %v kcal, target %v", sum, in.Energy)
		}
		if s.Available.Value < 0 || s.Fibre.Value < 0 || math.Abs(float64(s.Available.Value+s.Fibre.Value-s.Total.Value)) > 1e-9 {
			t.Fatalf("available %v + fibre %v, total %v", s.Available.Value, s.Fibre.Value, s.Total.Value)
		}
		if in.Energy > 0 && in.LeastCarbohydrate == 0 && s.AtFloor != (in.CarbFatBalance > s.WallBalance+1e-9) && math.Abs(float64(in.CarbFatBalance-s.WallBalance)) > 1e-6 {
			t.Fatalf("balance %v, wall %v, at floor %v", in.CarbFatBalance, s.WallBalance, s.AtFloor)
		}
		if s.Available.Value < in.LeastCarbohydrate-1e-6 && fat > floor+1e-6 {
			t.Fatalf("carbohydrate %v under %v while fat is over its floor", s.Available.Value, in.LeastCarbohydrate)
		}
	})
}

func energyOfCarbohydrate(c Counting, s Split) float64 {
	if c == CountAvailable {
		return 4*float64(s.Carbohydrate.Value) + 2*float64(s.Fibre.Value)
	}
	return 4 * float64(s.Carbohydrate.Value)
}

// A higher balance never brings less carbohydrate nor more fat, and beyond the
// wall nothing moves.
func TestBalanceIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := anySplit(t)
		more := in
		more.CarbFatBalance = unit.Percent(rapid.Float64Range(float64(in.CarbFatBalance), 100).Draw(t, "more"))
		a, b := Divide(in), Divide(more)
		if b.Fat.Value > a.Fat.Value+1e-9 || b.Total.Value < a.Total.Value-1e-9 {
			t.Fatalf("balance %v: %v fat; %v: %v fat", in.CarbFatBalance, a.Fat.Value, more.CarbFatBalance, b.Fat.Value)
		}
		if in.CarbFatBalance > a.WallBalance && math.Abs(float64(a.Fat.Value-b.Fat.Value)) > 1e-9 {
			t.Fatalf("beyond the wall at %v fat moved from %v to %v", a.WallBalance, a.Fat.Value, b.Fat.Value)
		}
	})
}

// 2000 kcal, 100 g protein, half of the rest each way: 800 kcal of fat and 800 of
// carbohydrate with 28 g of fibre. Worked by hand from the factors of Regulation
// (EU) 1169/2011 (seen): total 800/4 = 200 g, available 200 - 28 = 172 g; or
// available (800 - 2 x 28)/4 = 186 g, total 214 g.
func TestBothCountings(t *testing.T) {
	in := SplitInput{Energy: 2000, Protein: 100, CarbFatBalance: 50, FatFloor: 20, Fibre: Fibre(2000)}
	s := Divide(in)
	near(t, "total", float64(s.Carbohydrate.Value), 200, 1e-9)
	near(t, "its available", float64(s.Available.Value), 172, 1e-9)
	in.Counting = CountAvailable
	s = Divide(in)
	near(t, "available", float64(s.Carbohydrate.Value), 186, 1e-9)
	near(t, "its total", float64(s.Total.Value), 214, 1e-9)
	for _, counting := range Countings() {
		in.Counting = counting
		s = Divide(in)
		if own, _ := s.Carbohydrate.Last(); own.Key != "carbohydrate" || own.Result != float64(s.Carbohydrate.Value) {
			t.Errorf("%q: step %+v", counting, own)
		}
		if beside, ok := s.Beside.Last(); !ok || beside.Key == "carbohydrate" || beside.Result != float64(s.Beside.Value) {
			t.Errorf("%q: beside %+v", counting, beside)
		}
	}
}

// Fibre is a part of carbohydrate, so there is never more of it.
func TestFibreIsHeldWithinCarbohydrate(t *testing.T) {
	for _, counting := range Countings() {
		s := Divide(SplitInput{Energy: 1600, Protein: 120, CarbFatBalance: 0, FatFloor: 20, Fibre: Fibre(1600), Counting: counting})
		if s.Fibre.Value != 0 || s.Total.Value != 0 || len(s.Fibre.Steps) != 2 {
			t.Errorf("%q: fibre %v of %v, steps %d", counting, s.Fibre.Value, s.Total.Value, len(s.Fibre.Steps))
		}
	}
}

func TestFibreRise(t *testing.T) {
	for _, c := range []struct {
		target, usual, rise unit.Gram
		weeks               int
	}{{28, 28, 0, 0}, {28, 30, 0, 0}, {28, 23, 5, 1}, {28, 22.9, 5.1, 2}, {28, 13, 15, 3}, {28, 12, 16, 4}} {
		rise, weeks := FibreRise(c.target, c.usual)
		near(t, "rise", float64(rise), float64(c.rise), 1e-9)
		if weeks != c.weeks {
			t.Errorf("from %v to %v: %d weeks, want %d", c.usual, c.target, weeks, c.weeks)
		}
	}
}

func TestBandsAtTheirEdges(t *testing.T) {
	for _, c := range []struct {
		shares Shares
		inside [3]bool
	}{
		{Shares{10, 35, 55, 2000}, [3]bool{true, true, true}},
		{Shares{35, 20, 45, 2000}, [3]bool{true, true, true}},
		{Shares{9.9, 35.1, 55, 2000}, [3]bool{false, false, true}},
		{Shares{35.1, 19.9, 45, 2000}, [3]bool{false, false, true}},
		{Shares{10, 24.9, 65.1, 2000}, [3]bool{true, true, false}},
		{Shares{25, 30.1, 44.9, 2000}, [3]bool{true, true, false}},
	} {
		for i, b := range Bands(c.shares) {
			if b.Inside != c.inside[i] {
				t.Errorf("%+v: %s inside %v", c.shares, b.Key, b.Inside)
			}
			if step, ok := b.Share.Last(); !ok || step.Note == "" || step.Source.Confidence != derive.Seen {
				t.Errorf("%s: step %+v", b.Key, step)
			}
		}
	}
}
