package targets

import (
	"math"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// wish is the way in which a goal is said: of a date, a weekly rate and an energy
// one decides, and the others follow.
type wish int

const (
	byDate wish = iota
	byRate
	byEnergy
)

// wishes are the ways in the order of the choice.
var wishes = []wish{byDate, byRate, byEnergy}

// field is where a wish is typed.
func (w wish) field() draft.Field {
	return [...]draft.Field{byDate: draft.GoalBy, byRate: draft.GoalPerWeek, byEnergy: draft.GoalEnergy}[w]
}

func (w wish) label() string {
	return [...]string{byDate: "Date", byRate: "Rate", byEnergy: "Energy"}[w]
}

// wishOf returns the way that the form uses, and false where it names none.
func wishOf(get func(draft.Field) string, kind energy.GoalKind) (wish, bool) {
	if kind == energy.Maintain {
		return byEnergy, get(draft.GoalEnergy) != ""
	}
	for _, w := range []wish{byEnergy, byRate, byDate} {
		if get(w.field()) != "" {
			return w, true
		}
	}
	return byDate, false
}

// only returns the changes that leave a wish alone with a text, which may be
// empty.
func (w wish) only(text string) map[draft.Field]string {
	changes := map[draft.Field]string{}
	for _, other := range wishes {
		changes[other.field()] = ""
	}
	changes[w.field()] = text
	return changes
}

// memory keeps what was typed for a wish while another one is looked at, so that
// turning back finds it.
type memory struct {
	texts map[wish]string
	// put is what turning has written into the form; left as it is, it need not
	// be turned back.
	put map[wish]string
}

func newMemory() *memory { return &memory{texts: map[wish]string{}, put: map[wish]string{}} }

// turn returns the changes that say the goal in another way: the same course, as
// near as can be typed, or what stood there before. The plan may be missing.
func (m *memory) turn(from, to wish, get func(draft.Field) string, plan *domain.Plan, style unit.Style) map[draft.Field]string {
	here := get(from.field())
	before, was := m.texts[to]
	m.texts[from] = here
	text := ""
	if plan != nil && plan.Goal != nil {
		text = said(to, *plan, style)
	}
	if untouched := here == m.put[from]; was && before != "" && (untouched || text == "") {
		text = before
	}
	m.put[to] = text
	return to.only(text)
}

// said says what a plan comes to as a wish, in a text that can be typed; "" where
// it cannot be said so.
func said(w wish, p domain.Plan, style unit.Style) string {
	switch w {
	case byDate:
		return p.Goal.ReachedOn.Long()
	case byRate:
		return rateText(p.Goal.MeanRate.Value, style)
	}
	return energyText(p.Goal.Target.Value, style)
}

// rateText writes a rate without its sign to a twentieth of a kilogram or a tenth
// of a pound; "" where that is not accepted as a wish.
func rateText(r unit.KilogramPerWeek, style unit.Style) string {
	step := unit.KilogramPerWeek(rateStep(style))
	r = unit.KilogramPerWeek(math.Round(math.Abs(float64(r/step)))) * step
	if r < domain.LeastPerWeek-rateNoise || r > domain.MostPerWeek+rateNoise {
		return ""
	}
	return strings.TrimSuffix(style.Rate(r), " a week")
}

// rateStep is what a rate is rounded to, in kilograms a week.
func rateStep(style unit.Style) float64 {
	if style.System == unit.Metric {
		return 0.05
	}
	return 0.1 * unit.KilogramPerPound
}

// rateNoise is what binary fractions may add.
const rateNoise = 1e-9

// energyText writes an energy to the nearest ten.
func energyText(e unit.Kilocalorie, style unit.Style) string {
	value, name := style.EnergyValue(e)
	const step = 10
	return style.Number(math.Round(value/step)*step, 0) + " " + name
}
