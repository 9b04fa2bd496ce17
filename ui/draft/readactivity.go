package draft

import (
	"regexp"
	"strconv"

	"handbreadth/domain"
	"handbreadth/domain/energy"
	"handbreadth/domain/macro"
	"handbreadth/domain/unit"
)

// isWay reports whether a value of [Activity] names another way than a class.
func isWay(text string) bool {
	return text == ActivityAsNumber || text == ActivityAsCustomary || text == ActivityAsDay
}

// activity reads the one way that was chosen; what was typed for the others
// stays in the form.
func (r *reader) activity() {
	in := &r.out.Intake
	switch chosen := r.form.Get(Activity); chosen {
	case ActivityAsNumber:
		if pal, ok := r.number(PAL, float64(energy.LeastPAL), float64(energy.MostPAL), "a PAL of 1.0 to 2.5"); ok {
			in.Activity.PAL = unit.PAL(pal)
		}
	case ActivityAsCustomary:
		in.Activity.Customary = r.form.Get(Customary)
	case ActivityAsDay:
		in.Activity.Day = r.day()
	default:
		in.Activity.Category = energy.Category(chosen)
	}
	in.Exercise = r.exercise()
	in.Training = choice(r, Training, macro.Trainings(), NoTraining, "none, endurance or strength")
}

func (r *reader) missingActivity() {
	way := map[string]Field{ActivityAsNumber: PAL, ActivityAsCustomary: Customary, ActivityAsDay: Day}
	field, chosen := way[r.form.Get(Activity)]
	if !chosen || (field != Day && r.form.Get(field) != "") || (field == Day && r.toldDay()) {
		return
	}
	r.out.Missing = append(r.out.Missing, field)
}

// toldDay reports whether anything was typed for any hours.
func (r *reader) toldDay() bool {
	for _, p := range energy.Pursuits() {
		if r.form.Get(DayHours(p.Code)) != "" {
			return true
		}
	}
	return false
}

// day reads the hours of a day. An activity of no hours is left out.
func (r *reader) day() []energy.Span {
	var spans []energy.Span
	for _, p := range energy.Pursuits() {
		field := DayHours(p.Code)
		text := r.form.Get(field)
		if text == "" {
			continue
		}
		hours, ok := parseHours(text)
		if !ok || hours > energy.HoursInDay {
			r.refuse(field, acceptedHours)
			continue
		}
		if _, plain := plainNumber(text); !plain { // a bare number says it itself
			r.out.Understood[field] = HourText(hours, r.style) + " a day"
		}
		if hours > 0 {
			spans = append(spans, energy.Span{Pursuit: p, Hours: hours})
		}
	}
	return spans
}

const acceptedHours = "the hours of an average day, such as 7.5, 7 h 30 min, 45 min or 3 h a week, and at most 24"

const (
	minutesInHour = 60
	daysInWeek    = 7
)

// clockText is hours and minutes said together: "7 h 30 min", "7:30", "1h30".
var clockText = regexp.MustCompile(`^(\d{1,2})\s*(?:h|hr|hrs|hour|hours|:)\s*(\d{1,2})\s*(?:m|min|mins|minutes)?(\s+.*|/.*)?$`)

// parseHours reads hours of an average day; hours a week are divided by seven.
func parseHours(text string) (energy.Hour, bool) {
	amount, per := perWeek(text)
	days := 1.0
	if per {
		days = daysInWeek
	}
	if m := clockText.FindStringSubmatch(amount); m != nil && m[3] == "" {
		h, _ := plainNumber(m[1])
		minutes, _ := plainNumber(m[2])
		return energy.Hour((h + minutes/minutesInHour) / days), minutes < minutesInHour
	}
	hours, ok := parseAmount(amount, map[string]float64{
		"": 1, "h": 1, "hr": 1, "hrs": 1, "hour": 1, "hours": 1,
		"m": 1.0 / minutesInHour, "min": 1.0 / minutesInHour, "mins": 1.0 / minutesInHour,
		"minute": 1.0 / minutesInHour, "minutes": 1.0 / minutesInHour,
	})
	return energy.Hour(hours / days), ok
}

// HourText writes hours in hours and minutes: "7 h 30 min", "45 min", "0 h".
func HourText(hours energy.Hour, style unit.Style) string {
	minutes := int(float64(hours)*minutesInHour + 0.5)
	h, m := minutes/minutesInHour, strconv.Itoa(minutes%minutesInHour)+" min"
	switch {
	case m == "0 min":
		return style.Number(float64(h), 0) + " h"
	case h == 0:
		return m
	}
	return style.Number(float64(h), 0) + " h " + m
}

// exercise reads the energy of training, which may be less than any day's.
func (r *reader) exercise() unit.Kilocalorie {
	text := r.form.Get(Exercise)
	if text == "" {
		return 0
	}
	bare := 1.0
	if r.style.EnergyIn == unit.InKilojoules {
		bare = 1 / unit.KilojoulePerKilocal
	}
	kcal, ok := parseAmount(withoutADay(text), map[string]float64{
		"": bare, "kcal": 1, "cal": 1, "calories": 1, "kj": 1 / unit.KilojoulePerKilocal, "mj": 1000 / unit.KilojoulePerKilocal,
	})
	if !ok || kcal > float64(domain.MostExercise) {
		r.refuse(Exercise, "an energy of 0 to 4000 kcal a day (16 736 kJ), such as 250 kcal or 1000 kJ")
		return 0
	}
	r.out.Understood[Exercise] = r.style.EnergyPerDay(unit.Kilocalorie(kcal))
	return unit.Kilocalorie(kcal)
}
