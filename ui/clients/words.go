package clients

import (
	"fmt"
	"strings"

	"handbreadth/domain/unit"
)

// words tells how far a file is.
func (g Glance) words() string {
	switch g.Status {
	case Begun:
		return "Intake begun"
	case Ready:
		if g.Plan > 0 {
			return fmt.Sprintf("Changed since plan %d", g.Plan)
		}
		return "Plan not kept yet"
	case Held:
		return "Held: a reason is missing"
	case Referred:
		return "Referred"
	case Kept:
		return fmt.Sprintf("Plan %d kept", g.Plan)
	}
	return "Not started"
}

// age tells the completed years, or nothing where the birth date is not known.
func age(born, today unit.Date) string {
	if born.IsZero() || born.After(today) {
		return ""
	}
	return fmt.Sprintf("%d", int(born.AgeOn(today)))
}

// day tells a date as people at a desk say it.
func day(d, today unit.Date) string {
	if d.IsZero() {
		return ""
	}
	switch today.DaysUntil(d) {
	case -1:
		return "Yesterday"
	case 0:
		return "Today"
	case 1:
		return "Tomorrow"
	}
	if d.Year == today.Year {
		return fmt.Sprintf("%d %s", d.Day, d.Month)
	}
	return fmt.Sprintf("%d %s %d", d.Day, d.Month.String()[:3], d.Year)
}

// counted tells how many clients a list has.
func counted(n int, query string, archived bool) string {
	what := "clients"
	if n == 1 {
		what = "client"
	}
	if archived {
		what = "archived " + what
	}
	if strings.TrimSpace(query) == "" {
		return fmt.Sprintf("%d %s", n, what)
	}
	return fmt.Sprintf("%d %s by that name", n, what)
}
