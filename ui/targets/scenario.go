package targets

import (
	"maps"

	"handbreadth/domain"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// scenario is a goal that is kept to be compared. It lives in the screen only.
type scenario struct {
	Name   string // "A"
	Fields map[draft.Field]string
}

// mostScenarios is how many goals are kept beside the one of the plan.
const mostScenarios = 2

// snapshot is the goal as it stands in a form.
func snapshot(get func(draft.Field) string) map[draft.Field]string {
	fields := map[draft.Field]string{}
	for _, field := range goalFields {
		fields[field] = get(field)
	}
	return fields
}

// scenarios are the goals that are kept.
type scenarios []scenario

// keep adds a goal under the first free name. It reports false where there is no
// room, or where the goal is kept already.
func (s *scenarios) keep(fields map[draft.Field]string) bool {
	if len(*s) >= mostScenarios || s.has(fields) {
		return false
	}
	*s = append(*s, scenario{s.free(), fields})
	return true
}

func (s *scenarios) has(fields map[draft.Field]string) bool {
	for _, kept := range *s {
		if maps.Equal(kept.Fields, fields) {
			return true
		}
	}
	return false
}

func (s *scenarios) free() string {
	for _, name := range []string{"A", "B"} {
		taken := false
		for _, kept := range *s {
			taken = taken || kept.Name == name
		}
		if !taken {
			return name
		}
	}
	return "C"
}

func (s *scenarios) remove(index int) { *s = append((*s)[:index:index], (*s)[index+1:]...) }

// take makes a scenario the plan, and keeps the goal that the plan had in its
// place, so that nothing is lost. It returns what changes in the form.
func (s *scenarios) take(index int, now map[draft.Field]string) map[draft.Field]string {
	wanted := (*s)[index].Fields
	(*s)[index].Fields = now
	return wanted
}

// column is one goal in figures.
type column struct {
	Title, Asked string
	Rows         [len(compared)]string
	// Remark says why there are no figures, or that they are held.
	Remark string
	IsPlan bool
}

// compared names the figures that are set side by side.
var compared = [...]string{
	"Energy a day", "Rate on average", "Goal reached", "Then holding", "Protein", "Fat", "Carbohydrate", "Measures a day",
}

// columnOf works out one goal over the answers of a form.
func columnOf(form draft.Form, c scenario, style unit.Style) column {
	over := form.Clone()
	for field, text := range c.Fields {
		over[field] = text
	}
	reading := draft.Read(over, style)
	col := column{Title: "Goal " + c.Name}
	if !reading.Complete() {
		col.Remark = "Something is missing or cannot be read, so this goal has no figures."
		return col
	}
	plan, err := domain.NewPlan(reading.Intake)
	if err != nil {
		col.Asked, col.Remark = asked(reading.Intake.Goal, style), "No energy brings this goal."
		return col
	}
	col.fill(plan, style)
	return col
}

// fill puts a plan's figures into a column. A referred plan has none.
func (c *column) fill(p domain.Plan, style unit.Style) {
	c.Asked = asked(p.Intake.Goal, style)
	if p.Targets == nil {
		c.Remark = "A referral comes first, so this goal has no figures."
		return
	}
	if p.Gate.Held() {
		c.Remark = "Held until a reason is recorded."
	}
	t, o := p.Targets, *p.Goal
	c.Rows = [len(compared)]string{
		style.Energy(t.Energy.Value), meanWords(p, style), reachedWords(p), holdingWords(p, style),
		style.Grams(t.Protein.Value), style.Grams(t.Fat.Value), style.Grams(t.Carbohydrate.Value), measuresWords(t.Allotment.Day),
	}
	if unsafe(o) {
		c.Remark = joinedWords(c.Remark, "Outside of the guards.")
	}
}

func joinedWords(a, b string) string {
	if a == "" {
		return b
	}
	return a + " " + b
}

func meanWords(p domain.Plan, style unit.Style) string {
	if p.Goal.MeanRate.Value == 0 {
		return notYet
	}
	return signed(p.Goal.MeanRate.Value, style)
}

func reachedWords(p domain.Plan) string {
	if p.Goal.ReachedOn.IsZero() {
		return notYet
	}
	return p.Goal.ReachedOn.Long()
}

func holdingWords(p domain.Plan, style unit.Style) string {
	if p.Projection == nil {
		return notYet
	}
	return style.Energy(p.Projection.Holding.Value)
}

func measuresWords(m hand.Measures) string {
	words := ""
	for i, kind := range hand.Kinds() {
		if i > 0 {
			words += ", "
		}
		words += kind.Counted(m.Of(kind))
	}
	return words
}
