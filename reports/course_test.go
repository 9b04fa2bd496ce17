package reports

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

func TestWeightMarks(t *testing.T) {
	for _, c := range []struct {
		system    unit.System
		low, high unit.Kilogram
		want      string
	}{
		{unit.Metric, 64.3, 78.4, "60 kg, 65 kg, 70 kg, 75 kg, 80 kg"},
		{unit.Metric, 70, 71.2, "70 kg, 70.5 kg, 71 kg, 71.5 kg"},
		{unit.USCustomary, 78, 99.5, "160 lb, 180 lb, 200 lb, 220 lb"},
		{unit.UKCustomary, 61, 80, "9 st, 10 st, 11 st, 12 st, 13 st"},
		{unit.Metric, 70, 70, "70 kg, 70.5 kg"},
	} {
		var got []string
		for _, m := range weightMarks(c.system, c.low, c.high) {
			got = append(got, unit.Style{System: c.system}.Weight(m))
		}
		if told := strings.Join(got, ", "); told != c.want {
			t.Errorf("%v to %v kg: %s, want %s", c.low, c.high, told, c.want)
		}
	}
}

// The marks of an axis hold all of the course, lie evenly and are few.
func TestMarksHoldTheCourse(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		system := unit.System(rapid.IntRange(0, 2).Draw(r, "system"))
		low := unit.Kilogram(rapid.Float64Range(20, 390).Draw(r, "low"))
		high := low + unit.Kilogram(rapid.Float64Range(0, 200).Draw(r, "span"))
		marks := weightMarks(system, low, high)
		last := len(marks) - 1
		if marks[0] > low+1e-6 || marks[last] < high-1e-6 || len(marks) < 2 || len(marks) > mostWeightSteps+1 {
			r.Fatalf("%v to %v: %v", low, high, marks)
		}
		for i := range last {
			if step, first := marks[i+1]-marks[i], marks[1]-marks[0]; math.Abs(float64(step-first)) > 1e-9 {
				r.Fatalf("uneven: %v", marks)
			}
		}
		days := rapid.IntRange(1, 3750).Draw(r, "days")
		weeks := weekMarks(days)
		if weeks[0] != 0 || weeks[len(weeks)-1]*daysInWeek > days || len(weeks) > mostWeekSteps+1 {
			r.Fatalf("%d days: %v", days, weeks)
		}
	})
}

// The table has the day of the goal and the end, each once and in order, and no
// two rows that tell the same.
func TestToldDays(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		last := rapid.IntRange(7, 3750).Draw(r, "last")
		arrival := rapid.IntRange(1, last).Draw(r, "arrival")
		days := toldDays(arrival, last)
		has := map[int]bool{}
		for i, d := range days {
			has[d] = true
			if i > 0 && d <= days[i-1] {
				r.Fatalf("out of order: %v", days)
			}
		}
		if !has[arrival] || !has[last] || len(days) > len(toldWeeks)+2 {
			r.Fatalf("arrival %d, end %d: %v", arrival, last, days)
		}
	})
}

// byDate is a woman who wants a weight by a day, with what else a plan can be told.
func byDate() domain.Intake {
	in := woman()
	in.Goal.By, in.UsualFibre, in.FatFloorPerKg = in.Date.AddDays(210), 12, 0.9
	in.MeasuredResting, in.Body.Fat, in.ProteinBasis = 1510, 38, macro.BasisLean
	in.Counting = macro.CountAvailable
	return lifted(in)
}

// The paper tells the course that the plan has: the drawing's words, the table,
// the static rule beside it and what holds the weight.
func TestPaperTellsTheCourse(t *testing.T) {
	plan := planOf(t, byDate())
	p, o := plan.Projection, plan.Goal
	for _, style := range []unit.Style{{}, {System: unit.USCustomary}, {System: unit.UKCustomary, EnergyIn: unit.InKilojoules}} {
		opt := options(t)
		opt.Style, opt.Pages = style, []Page{PageWhy}
		pdf, err := Handout(plan, opt)
		path := written(t, pdf, err)
		text := strings.ReplaceAll(flow(t, path), "\u00a0", " ")
		at := p.Bands[p.Reached]
		mustHold(t, text,
			"Where this may lead", wordsLegendLine, wordsLegendBand, wordsLegendRule, "Weeks from 2 March 2026",
			plain(style.EnergyPerDay(p.Phases[0].Energy)), plain(style.Energy(p.Phases[1].Energy)),
			fmt.Sprintf("%d weeks, your goal %s %s to %s %s", 30, style.Weight(at.Weight), style.Weight(at.Low), style.Weight(at.High), style.Weight(p.Static(p.Reached))),
			"This should bring you to "+style.Weight(70)+" by 28 September 2026.",
			"An old rule of thumb says "+plain(style.EnergyPerDay(o.StaticTarget.Value))+". It leaves that out.",
			"by 28 September 2026. We expect "+style.Weight(p.Promise.Expected.Value)+".",
			"To hold the new weight",
		)
		checkBoxes(t, path, fmt.Sprintf("by date, %+v", style))
		value, _ := style.EnergyValue(p.Holding.Value)
		mustHold(t, text, plain(style.Number(value, 0)))
	}
}

// Near and far goals, and a goal that is never reached, keep their labels apart.
func TestEveryCourseFits(t *testing.T) {
	for name, goal := range map[string]energy.Goal{
		"a week": {Kind: energy.Lose, Weight: 78, By: unit.Date{Year: 2026, Month: 3, Day: 9}},
		"far":    {Kind: energy.Lose, Weight: 70, PerWeek: 0.05},
		"never":  {Kind: energy.Lose, Weight: 58, Energy: 2150},
		"open":   {Kind: energy.Gain, Energy: 3800},
	} {
		in := woman()
		in.Goal = goal
		for _, system := range []unit.System{unit.Metric, unit.USCustomary, unit.UKCustomary} {
			opt := options(t)
			opt.Style, opt.Paper, opt.Pages = unit.Style{System: system, EnergyIn: unit.InKilojoules}, Paper(system%2), []Page{PageWhy}
			pdf, err := Handout(planOf(t, lifted(in)), opt)
			path := written(t, pdf, err)
			checkBoxes(t, path, fmt.Sprintf("%s, system %d", name, system))
			mustHold(t, flow(t, path), "Where this may lead", "We expect")
		}
	}
}

// plain is a text with plain spaces.
func plain(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// The other derivations in plain words.
func TestPaperTellsTheOtherDerivations(t *testing.T) {
	plan := planOf(t, byDate())
	pdf, err := Handout(plan, options(t))
	text := plain(flow(t, written(t, pdf, err)))
	floor := unit.Style{}.Grams(plan.Targets.Floor.Grams.Value)
	mustHold(t, text,
		"We measured this.", "indirect calorimetry", "Other published equations give ", "Other published ways: DRI 2005",
		"We count it on your weight without its fat.", "So we never go under "+floor+" a day.", "It is set by your weight.",
		"Fibre is not counted in it", "Now you eat about 12 g. Add no more than 5 g each week. Then you are there in 4 weeks.",
	)
	in := woman()
	in.RestingEquation = energy.KatchMcArdle
	pdf, err = Handout(planOf(t, in), options(t))
	text = plain(flow(t, written(t, pdf, err)))
	mustHold(t, text, "It comes from your weight, height, age and sex.", "Lean mass: weight × (1 − body fat)", "21.6 × lean mass", "Add it bit by bit.")
}

func TestNoCourseWhereThereIsNone(t *testing.T) {
	holding, nursing, unnumbered := woman(), woman(), woman()
	holding.Goal = energy.Goal{Kind: energy.Maintain}
	nursing.Goal, nursing.Reproduction.Breastfeeding = energy.Goal{Kind: energy.Maintain}, energy.FirstHalfYear
	for name, in := range map[string]domain.Intake{"holding": holding, "breastfeeding": nursing, "without numbers": unnumbered} {
		opt := options(t)
		opt.WithoutNumbers = name == "without numbers"
		pdf, err := Handout(planOf(t, lifted(in)), opt)
		text := flow(t, written(t, pdf, err))
		if strings.Contains(text, "Where this may lead") || strings.Contains(text, wordsLegendRule) {
			t.Errorf("%s: a course is drawn", name)
		}
		if name == "breastfeeding" {
			mustHold(t, text, wordsMaintenanceBaby)
		}
	}
}

var moves = regexp.MustCompile(`(-?[\d.]+) (-?[\d.]+) ([ml])\n`)

// lines returns the polylines of a page's operators in points.
func lines(ops string) (all [][]point) {
	for _, m := range moves.FindAllStringSubmatch(ops, -1) {
		p := point{number(m[1]), number(m[2])}
		if m[3] == "m" {
			all = append(all, nil)
		}
		all[len(all)-1] = append(all[len(all)-1], p)
	}
	return all
}

// The curves are drawn where the values lie: the expected weight from the first
// day to the last, and the static rule until it comes to the goal.
func TestCurvesLieWhereTheValuesDo(t *testing.T) {
	plan := planOf(t, byDate())
	s := emptySheet(t)
	s.pages = append(s.pages, &ops{})
	c := canvas{sheet: s}
	k := courseChart{writer: writer{house: house{hue: defaultColour}}, course: plan.Projection}
	last := k.last()
	x, y := scale{0, float64(last.Day), 30, 190}, scale{60, 80, 120, 60}
	k.curves(c, x, y)
	drawn := lines(s.vectors().String())
	expected, rule := drawn[len(drawn)-1], drawn[len(drawn)-2]
	check := func(name string, got point, day int, weight unit.Kilogram) {
		px, py := c.at(x.at(float64(day)), y.at(float64(weight)))
		if math.Abs(got.x-px) > 0.01 || math.Abs(got.y-py) > 0.01 {
			t.Errorf("%s: at %v, want %v, %v", name, got, px, py)
		}
	}
	check("start", expected[0], 0, plan.Intake.Weight)
	check("end", expected[len(expected)-1], last.Day, last.Weight)
	check("start of the rule", rule[0], 0, plan.Intake.Weight)
	check("end of the rule", rule[len(rule)-1], k.ruleUntil(), 70)
	// By hand: 8.4 kg at 7716.2 kcal a kilogram and the deficit of the plan.
	days := 8.4 * 7716.17917 / -float64(plan.Goal.Change)
	if until := float64(k.ruleUntil()); until < days || until > days+1 {
		t.Errorf("the rule comes to the goal on day %v, want just after %v", until, days)
	}
	if !strings.Contains(s.vectors().String(), "] 0 d") {
		t.Error("the static rule is not broken")
	}
}
