package screen

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"handbreadth/domain/unit"
)

type given map[string]float64

func scoreRows(t *testing.T, id string) (rows []struct {
	in          given
	score, kind string
},
) {
	t.Helper()
	file, err := os.Open("../../testdata/reference/screening.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range lines[1:] {
		if line[0] != id {
			continue
		}
		in := given{}
		for _, pair := range strings.Split(line[1], ";") {
			name, value, _ := strings.Cut(pair, "=")
			in[name], _ = strconv.ParseFloat(value, 64)
		}
		rows = append(rows, struct {
			in          given
			score, kind string
		}{in, line[2], line[3]})
	}
	if len(rows) == 0 {
		t.Fatalf("no rows for %s", id)
	}
	return rows
}

// Source: BAPEN MUST 2003 (seen).
func TestMUSTAgainstPublishedRows(t *testing.T) {
	for _, row := range scoreRows(t, "must") {
		got := ScoreMUST(MUSTInput{
			BMI: unit.KilogramPerSquareMetre(row.in["bmi"]), Loss: unit.Percent(row.in["unplanned_loss_pct_3_6mo"]),
			AcutelyIll: row.in["acutely_ill_no_intake_gt5d"] == 1,
		})
		if strconv.Itoa(got) != row.score {
			t.Errorf("%v: %d points, want %s", row.in, got, row.score)
		}
		if class := must().Class(got); class != row.kind {
			t.Errorf("%v: %s, want %s", row.in, class, row.kind)
		}
	}
}

// Source: Morgan 1999, BMJ 319:1467 (seen).
func TestSCOFFAgainstPublishedRows(t *testing.T) {
	for _, row := range scoreRows(t, "scoff") {
		answers := make([]bool, 5)
		for i := range int(row.in["yes_answers"]) {
			answers[i] = true
		}
		got := ScoreSCOFF(answers...)
		if class := scoff().Class(got); strconv.Itoa(got) != row.score || class != row.kind {
			t.Errorf("%v: %d points, %s, want %s %s", row.in, got, class, row.score, row.kind)
		}
	}
	if (Score{5, false}).Positive(2) {
		t.Error("a questionnaire that was not asked counts")
	}
}

// Source: Burke 2018 (30 and 45 seen).
func TestEnergyAvailabilityAgainstPublishedRows(t *testing.T) {
	for _, row := range scoreRows(t, "energy_availability") {
		got := float64(EnergyAvailability(unit.Kilocalorie(row.in["intake_kcal"]), unit.Kilocalorie(row.in["exercise_kcal"]), unit.Kilogram(row.in["ffm_kg"])).Value)
		want, _ := strconv.ParseFloat(row.score, 64)
		if math.Abs(got-want) > 0.0001 {
			t.Errorf("%v: %v, want %v", row.in, got, want)
		}
		if low := EnergyAvailable(got) < LowAvailability; low != (row.kind == "low") {
			t.Errorf("%v: low %v, want %s", row.in, low, row.kind)
		}
	}
}

// Source: Ferguson 1999 (seen on two reprints of the form).
func TestMSTAgainstPublishedRows(t *testing.T) {
	for _, row := range scoreRows(t, "mst") {
		got := ScoreMST(MSTInput{Loss: unit.Kilogram(row.in["loss_kg"]), Unsure: row.in["unsure"] == 1, PoorAppetite: row.in["poor_appetite"] == 1})
		if class := mst().Class(got); strconv.Itoa(got) != row.score || class != row.kind {
			t.Errorf("%v: %d points, %s, want %s %s", row.in, got, class, row.score, row.kind)
		}
	}
}

// Source: Ferguson 1999 (seen on two reprints of the form); edges of the steps.
func TestMST(t *testing.T) {
	for _, c := range []struct {
		in   MSTInput
		want int
	}{
		{MSTInput{}, 0},
		{MSTInput{Unsure: true}, 2},
		{MSTInput{Loss: 1}, 1},
		{MSTInput{Loss: 5}, 1},
		{MSTInput{Loss: 6}, 2},
		{MSTInput{Loss: 10}, 2},
		{MSTInput{Loss: 11}, 3},
		{MSTInput{Loss: 15}, 3},
		{MSTInput{Loss: 16}, 4},
		{MSTInput{Loss: 16, PoorAppetite: true}, 5},
	} {
		if got := ScoreMST(c.in); got != c.want {
			t.Errorf("%+v: %d, want %d", c.in, got, c.want)
		}
	}
}
