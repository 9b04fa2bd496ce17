package draft

import "strings"

// AskedEachVisit reports a field whose answer does not hold until the next
// visit: scores and what they were made of, the weeks of a pregnancy and the age
// of a child. An old answer there would count as asked.
func AskedEachVisit(field Field) bool {
	return field == PregnantWeeks || field == Breastfeeding || strings.HasPrefix(string(field), scoredPrefix)
}
