package intake

import (
	"strings"

	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
	"handbreadth/ui/draft"
)

// dayWords is what the hours of a day add up to.
type dayWords struct {
	Share float64 // of 24 hours
	Sum   string
	Level string // "" where the hours are too many, or none were told
}

func dayWordsOf(spans []energy.Span, style unit.Style) dayWords {
	told := energy.Hour(0)
	for _, s := range spans {
		told += s.Hours
	}
	words := dayWords{Share: float64(told / energy.HoursInDay)}
	left := energy.HoursInDay - told
	switch {
	case len(spans) == 0:
		words.Sum = "Nothing told yet of 24 h. What is not told counts as sitting quietly."
		return words
	case left < 0:
		words.Sum = draft.HourText(told, style) + " told, " + draft.HourText(-left, style) + " more than a day has."
		return words
	case left == 0:
		words.Sum = "24 h told: the whole day."
	default:
		words.Sum = draft.HourText(told, style) + " told of 24 h; the other " + draft.HourText(left, style) + " count as sitting quietly."
	}
	if level, err := energy.LevelOfDay(spans); err == nil {
		words.Level = "PAL " + style.Number(float64(level.Value), 2) + ", within " +
			style.Number(float64(level.Low), 2) + " and " + style.Number(float64(level.High), 2)
	}
	return words
}

// metWords writes how much energy an activity takes.
func metWords(met energy.MET, style unit.Style) string {
	return style.Number(float64(met), decimalsOf(float64(met)))
}

// pursuitOf returns the code of the activity whose hours a field holds, and
// false where it is another field.
func pursuitOf(field draft.Field) (string, bool) {
	return strings.CutPrefix(string(field), string(draft.Day)+".")
}

// wayFor returns the field in which the activity is told where this one is part
// of it.
func wayFor(field draft.Field) draft.Field {
	if _, isHours := pursuitOf(field); isHours {
		return draft.Day
	}
	return field
}
