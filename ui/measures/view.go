package measures

import (
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

// content is what one measure holds, in words.
type content struct {
	Kind   hand.Kind
	Amount string // "240 ml, about 136 g"
	Spread string // "78 to 170 g, by food"
	Brings string // "127 kcal"
	Macros string // "19 g protein, 3.9 g fat, 3.5 g carbohydrate and 0.9 g fibre"
	Filled string // "chicken breast, turkey breast and 13 more"
	Steps  []derive.Step
}

// serving is a meal or the whole day. Its drawings tell the counts in words.
type serving struct {
	Name     string
	Brings   string // "about 620 kcal, 31 g protein"
	Measures hand.Measures
}

// beside is one line of what the measures bring beside what is aimed at.
type beside struct {
	Name   string // "Energy"
	Target string
	Brings string
	Words  string // "20 kcal more"
}

// view is everything that the section shows.
type view struct {
	State state
	// Lead says why there are no measures, or that they are held.
	Lead string
	Way  way

	// Contents are told before there is a plan, too: they follow the eating
	// pattern and what is avoided, where both were understood.
	HasContents bool
	Contents    [4]content
	Basket      string // whose foods fill the measures
	Meals       int

	HasMeals  bool
	Day       serving
	Servings  []serving
	Near      string
	Distances []beside
	Steps     []derive.Step
}

func look(s Source) view {
	in, style := s.Reading().Intake, s.Style()
	v := view{Meals: in.MealsPerDay}
	plan, planned := s.Plan()
	switch {
	case !planned:
		v.State, v.Lead, v.Way = waiting, waitingLead(s.Reading()), wayToWant(s.Reading())
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
	if foodsUnderstood(s.Reading()) {
		v.fill(in.Pattern, in.Avoid, style)
	}
	if planned {
		v.allot(plan, style)
	}
	return v
}

// foodsUnderstood reports whether it is known what this client does not eat; a
// word that was not understood may be an allergen.
func foodsUnderstood(r draft.Reading) bool {
	_, pattern := r.Problems[draft.Pattern]
	_, avoid := r.Problems[draft.Avoid]
	return !pattern && !avoid
}

func (v *view) fill(pattern food.Pattern, avoid []food.Allergen, style unit.Style) {
	v.HasContents, v.Basket = true, basketWords(pattern, avoid)
	contents := hand.Fill(pattern, avoid)
	for _, k := range hand.Kinds() {
		v.Contents[k] = contentOf(contents[k], food.Basket(hand.GroupOf(k), pattern, avoid), style)
	}
}

func (v *view) allot(p domain.Plan, style unit.Style) {
	t := p.Targets
	v.HasMeals = true
	v.Day = serving{"The day", about(t.Allotment.Brings, style), t.Allotment.Day}
	for _, m := range t.Allotment.Meals {
		v.Servings = append(v.Servings, serving{m.Name, about(m.Brings, style), m.Measures})
	}
	v.Near = nearWords(t.Allotment.Distance, style)
	v.Distances = distances(t, style)
	v.Steps = t.Allotment.Steps
}
