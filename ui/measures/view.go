package measures

import (
	"slices"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// state says what a client file has come to.
type state int

const (
	waiting  state = iota // something is missing or could not be read
	referred              // a referral takes the plan's place
	held                  // a reason is missing
	open                  // may be issued
)

// way leads to another section.
type way struct {
	Label   string
	Section string
	Field   draft.Field
}

// cell is one measure of one meal.
type cell struct {
	Count  unit.Measure
	Locked bool
	Note   string // "540 ml, 310 g"
}

// serving is a meal, or the whole day where Size is -1.
type serving struct {
	Name   string
	Brings string // "about 620 kcal" and, below it, "31 g protein"
	Size   int    // among [hand.MealSizes]
	Cells  [4]cell
}

// beside is one line of what the measures bring beside what is aimed at.
type beside struct {
	Name   string // "Energy"
	Target string
	Brings string
	Words  string // "20 kcal more"
}

// content is what one measure holds, in words.
type content struct {
	Kind    hand.Kind
	Amount  string // "240 ml, about 136 g"
	Spread  string // "78 to 170 g, by food"
	Brings  string // "127 kcal"
	Macros  string // "19 g protein, 3.9 g fat, 3.5 g carbohydrate and 0.9 g fibre"
	Said    string // what became of a choice of foods
	Steps   []derive.Step
	Filling food.Filling
	Hand    unit.Ratio
}

// view is everything that the section shows at first sight.
type view struct {
	State state
	// Lead says why there are no measures, or that they are held.
	Lead string
	Way  way

	Meals    int
	Ranges   bool
	Wished   bool // there are wishes to take back
	Conflict conflict

	HasMeals  bool
	Servings  []serving
	Day       serving
	Near      string
	Others    []other
	DayLocked bool // a measure of the day that is fitted is fixed
	Distances []beside
	Steps     []derive.Step

	// The hand and the contents are told before there is a plan, too. Contents
	// need that the eating pattern and what is avoided were understood.
	Calibration hand.Calibration
	Calibrated  bool
	Hand        string // how it is known, in a line
	Factors     [4]factor
	HasContents bool
	Contents    [4]content
	PerMeasure  food.PerMeasure
	Basket      string // whose foods fill the measures
}

func look(s Source) view {
	r, style := s.Reading(), s.Style()
	in := r.Intake
	v := view{Meals: in.MealsPerDay, Ranges: in.Hand.Ranges, Wished: s.Get(draft.MealWishes) != ""}
	plan, planned := v.plan(s)
	switch {
	case !planned && len(v.Conflict.Wishes) > 0 && len(r.Problems) == 1 && len(r.Missing) == 0:
		v.State = waiting // the conflict says why
	case !planned:
		v.State, v.Lead, v.Way = waiting, waitingLead(r), wayToWant(r)
	case plan.Gate.Referred():
		v.State, v.Lead, v.Way = referred, referredLead, way{"See what asks for the referral", sectionScreening, ""}
	case plan.Gate.Held():
		v.State, v.Lead, v.Way = held, heldLead, wayToReason(plan)
	default:
		v.State = open
	}
	if v.State == referred {
		return v
	}
	v.calibrate(r, style)
	if foodsUnderstood(r) {
		v.fill(in, style)
	}
	if planned {
		v.allot(plan, style)
	}
	return v
}

// plan returns the plan; where wishes cannot be kept together, that without them,
// so that the grid stays to be looked at while one is taken back.
func (v *view) plan(s Source) (domain.Plan, bool) {
	if plan, planned := s.Plan(); planned {
		return plan, true
	}
	r := s.Reading()
	in := r.Intake
	v.Conflict, in.Hand.Wishes = conflictIn(in.MealsPerDay, in.Hand.Wishes)
	_, wishes := r.Problems[draft.MealWishes]
	if len(v.Conflict.Wishes) == 0 || !wishes || len(r.Problems) > 1 || len(r.Missing) > 0 {
		return domain.Plan{}, false
	}
	plan, err := domain.NewPlan(in)
	return plan, err == nil
}

// foodsUnderstood reports whether it is known what this client does not eat; a
// word that was not understood may be an allergen.
func foodsUnderstood(r draft.Reading) bool {
	_, pattern := r.Problems[draft.Pattern]
	_, avoid := r.Problems[draft.Avoid]
	return !pattern && !avoid
}

func (v *view) calibrate(r draft.Reading, style unit.Style) {
	v.Calibration, v.Calibrated = calibrated(r)
	v.Factors = factorsOf(v.Calibration, r, style)
	v.Hand = handSummary(v.Calibration, v.Calibrated, r, style)
}

func (v *view) fill(in domain.Intake, style unit.Style) {
	v.HasContents, v.Basket = true, basketWords(in.Pattern, in.Avoid)
	whole, fillings := hand.FillChosen(in.Hand.Basket, in.Pattern, in.Avoid)
	contents := whole.Scaled(v.Calibration)
	v.PerMeasure = contents.PerMeasure()
	for _, k := range hand.Kinds() {
		v.Contents[k] = contentOf(contents[k], fillings[k], style)
		v.Contents[k].Hand = v.Calibration.Factors[k].Value
	}
}

func (v *view) allot(p domain.Plan, style unit.Style) {
	t := p.Targets
	a := t.Allotment
	v.HasMeals = true
	for i, m := range a.Meals {
		s := v.serving(p, i+1, m.Name, m.Measures, m.Brings, style)
		s.Size = sizeOf(p.Intake.Hand.Sizes, i)
		v.Servings = append(v.Servings, s)
	}
	v.Day = v.serving(p, 0, "The day", a.Day, a.Brings, style)
	v.Day.Size = -1
	v.Near = nearWords(a.Distance, style)
	v.Others = othersOf(a, style)
	for _, k := range fitted {
		v.DayLocked = v.DayLocked || v.Day.Cells[k].Locked
	}
	v.Distances = distances(t, style)
	v.Steps = a.Steps
}

func (v *view) serving(p domain.Plan, meal int, name string, m hand.Measures, brings hand.Nutrients, style unit.Style) serving {
	s := serving{Name: name, Brings: about(brings, style)}
	for _, k := range hand.Kinds() {
		locked, bound := isLocked(p.Intake.Hand.Wishes, meal, k)
		s.Cells[k] = cell{m.Of(k), locked, amountNote(p.Targets.Contents[k], m.Of(k), v.Ranges && meal > 0, bound, style)}
	}
	return s
}

// sizeOf returns which of the named sizes a meal has; usual where none is told.
func sizeOf(sizes []hand.MealSize, meal int) int {
	size := hand.Usual
	if meal < len(sizes) {
		size = sizes[meal]
	}
	return slices.Index(hand.MealSizes(), size)
}
