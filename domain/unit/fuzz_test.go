package unit_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain/unit"
)

// sane checks what holds for any text: a Problem that names field and text and
// no value, or a value within the bounds.
func sane[T ~float64](t interface{ Fatalf(string, ...any) }, text string, got T, err error, low, high T) {
	var problem unit.Problem
	switch {
	case errors.As(err, &problem):
		if got != 0 || problem.Field != "x" || problem.Given != text || problem.Accepted == "" {
			t.Fatalf("%q gave %v with %+v", text, got, problem)
		}
	case err != nil:
		t.Fatalf("%q: not a Problem: %v", text, err)
	case !(got >= low && got <= high):
		t.Fatalf("%q gave %v, out of bounds", text, got)
	}
}

var systems = []unit.System{unit.Metric, unit.USCustomary, unit.UKCustomary}

// agrees checks that a text with its own unit means the same in every system.
func agrees[T ~float64](t interface{ Fatalf(string, ...any) }, text string, alone T, aloneErr error, in T, inErr error) {
	if aloneErr == nil && (inErr != nil || in != alone) {
		t.Fatalf("%q is %v, but %v, %v where a bare number is read too", text, alone, in, inErr)
	}
}

func checkWeight(t interface{ Fatalf(string, ...any) }, text string) {
	alone, err := unit.ParseWeight("x", text)
	sane(t, text, alone, err, 20, 400)
	for _, s := range systems {
		in, inErr := unit.ParseWeightIn("x", text, s)
		sane(t, text, in, inErr, 20, 400)
		agrees(t, text, alone, err, in, inErr)
	}
}

func checkHeight(t interface{ Fatalf(string, ...any) }, text string) {
	alone, err := unit.ParseHeight("x", text)
	sane(t, text, alone, err, 100, 250)
	length, lengthErr := unit.ParseLength("x", text)
	sane(t, text, length, lengthErr, 1, 250)
	for _, s := range systems {
		in, inErr := unit.ParseHeightIn("x", text, s)
		sane(t, text, in, inErr, 100, 250)
		agrees(t, text, alone, err, in, inErr)
		in, inErr = unit.ParseLengthIn("x", text, s)
		sane(t, text, in, inErr, 1, 250)
		agrees(t, text, length, lengthErr, in, inErr)
	}
}

func checkEnergy(t interface{ Fatalf(string, ...any) }, text string) {
	alone, err := unit.ParseEnergy("x", text)
	sane(t, text, alone, err, 200, 10000)
	for _, u := range []unit.EnergyUnit{unit.InKilocalories, unit.InKilojoules} {
		in, inErr := unit.ParseEnergyIn("x", text, u)
		sane(t, text, in, inErr, 200, 10000)
		agrees(t, text, alone, err, in, inErr)
	}
}

func checkPercent(t interface{ Fatalf(string, ...any) }, text string) {
	got, err := unit.ParsePercent("x", text, 15, 40)
	sane(t, text, got, err, 15, 40)
	wide, wideErr := unit.ParsePercent("x", text, 0, 100)
	sane(t, text, wide, wideErr, 0, 100)
	if err == nil && wideErr == nil && math.Abs(float64(got-wide)) > 0 {
		t.Fatalf("%q is %v or %v", text, got, wide)
	}
}

func checkRate(t interface{ Fatalf(string, ...any) }, text string) {
	alone, err := unit.ParseRate("x", text)
	sane(t, text, alone, err, 0.05, 2)
	for _, s := range systems {
		in, inErr := unit.ParseRateIn("x", text, s)
		sane(t, text, in, inErr, 0.05, 2)
		agrees(t, text, alone, err, in, inErr)
	}
}

// TestParseAnything is the fuzzing's short form: texts made of the pieces that
// quantities are written with.
func TestParseAnything(t *testing.T) {
	piece := rapid.SampledFrom([]string{
		"0", "1", "5", "11", "68", "72", "168", "180", "500", "800", "1800", ".", ",", " ", "\u00a0", "½", "1/2", "/",
		"kg", "g", "lb", "st", "cm", "m", "mm", "ft", "in", "'", "''", `"`, "′", "″", "kcal", "kJ", "MJ", "day", "week", "a", "per",
		"%", "cent", "-", "+", "e", "x", "NaN", "７", "\x00", "\xff",
	})
	rapid.Check(t, func(t *rapid.T) {
		text := ""
		for _, p := range rapid.SliceOfN(piece, 0, 7).Draw(t, "pieces") {
			text += p
		}
		checkWeight(t, text)
		checkHeight(t, text)
		checkEnergy(t, text)
		checkPercent(t, text)
		checkRate(t, text)
	})
}

func seed(f *testing.F, texts ...string) {
	for _, text := range texts {
		f.Add(text)
	}
}

func FuzzParseWeight(f *testing.F) {
	seed(f, "72.5 kg", "72,500 g", "160 lbs", "11 st 6½ lb", "11st6", "11.5 st", "７0 kg", "1.234,5 lb", "")
	f.Fuzz(func(t *testing.T, text string) { checkWeight(t, text) })
}

func FuzzParseHeight(f *testing.F) {
	seed(f, "168 cm", "1,68m", "1m68", `5'5"`, "5′5″", "5 ft 5 1/2 in", "5ft5", "65 in", "1 680 mm", "5''")
	f.Fuzz(func(t *testing.T, text string) { checkHeight(t, text) })
}

func FuzzParseEnergy(f *testing.F) {
	seed(f, "1800 kcal", "1 800 kcal/day", "1,800 kcal a day", "7.5 MJ", "7531 kJ per day", "1.800,5 kcal", "1800 a day")
	f.Fuzz(func(t *testing.T, text string) { checkEnergy(t, text) })
}

func FuzzParsePercent(f *testing.F) {
	seed(f, "20", "20 %", "20,5%", "20 per cent", "20½ %", "-20", "2e1")
	f.Fuzz(func(t *testing.T, text string) { checkPercent(t, text) })
}

func FuzzParseRate(f *testing.F) {
	seed(f, "0.5 kg", "1 lb", "500 g a week", "0,500 kg/week", "½ lb per week", "1,500 g/w", "0.5 a week", "-1 lb")
	f.Fuzz(func(t *testing.T, text string) { checkRate(t, text) })
}
