package store

import (
	"cmp"
	"fmt"
	"slices"
	"time"
)

// BackupPlan says where backups go and when the last one succeeded.
type BackupPlan struct {
	Folder string    // empty where none was chosen
	Last   time.Time // zero for never
}

// DueWhy says why a backup is due, or is not.
type DueWhy int

// The reasons, in the order in which they are looked for.
const (
	DueNoFolder  DueWhy = iota // no folder was chosen: it cannot be made
	DueNever                   // none was ever made
	DueClockBack               // the last one lies more than a day in the future
	DueNewDay                  // the last one is of an earlier day
	DueNot                     // there is one of today
)

// Due says whether a backup is due.
type Due struct {
	Now  bool
	Why  DueWhy
	Days int // since the last one; 0 where that is not known
}

// BackupDue decides whether a backup is due: one for each day on which the
// program is used. Days are those of now's place. A clock that was set back by
// more than a day makes one due, so that it never waits for the future.
func BackupDue(p BackupPlan, now time.Time) Due {
	const dayLength = 24 * time.Hour
	switch {
	case p.Folder == "":
		return Due{Why: DueNoFolder}
	case p.Last.IsZero():
		return Due{Now: true, Why: DueNever}
	case p.Last.Sub(now) > dayLength:
		return Due{Now: true, Why: DueClockBack}
	}
	if days := daysBetween(p.Last.In(now.Location()), now); days > 0 {
		return Due{Now: true, Why: DueNewDay, Days: days}
	}
	return Due{Why: DueNot}
}

// daysBetween counts the midnights between two moments, by the calendar.
func daysBetween(from, to time.Time) int {
	noon := func(t time.Time) time.Time {
		return time.Date(t.Year(), t.Month(), t.Day(), 12, 0, 0, 0, time.UTC)
	}
	return int(noon(to).Sub(noon(from)).Hours() / 24)
}

// Words says it to the person at the desk.
func (d Due) Words() string {
	switch d.Why {
	case DueNoFolder:
		return "No folder for backups is chosen yet. Choose one, best on another disk."
	case DueNever:
		return "There is no backup yet."
	case DueClockBack:
		return "The last backup seems to lie in the future: the clock of this computer was changed."
	case DueNewDay:
		if d.Days == 1 {
			return "The last backup is of the day before."
		}
		return fmt.Sprintf("The last backup is %d days old.", d.Days)
	}
	return "There is a backup of today."
}

// How many backups stay.
const (
	keptDays   = 7
	keptWeeks  = 5
	keptMonths = 12
)

// superseded returns the positions of the backups that may go: all but the
// newest of each of the last 7 days, 5 weeks and 12 months that have one. Only
// periods with a backup count, so that a practice that opens once a week, or a
// clock that jumped ahead, does not thin them out. Those from after now are
// left alone: the clock was wrong then or is wrong now. The newest always
// stays. Days, weeks (from Monday) and months are those of UTC.
func superseded(made []time.Time, now time.Time) []int {
	order := make([]int, len(made))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(made[b].Compare(made[a]), cmp.Compare(b, a)) }) // the newest first
	keep := map[int]bool{}
	var past []int
	for _, i := range order {
		if made[i].After(now) {
			keep[i] = true
		} else {
			past = append(past, i)
		}
	}
	for _, rule := range []struct {
		count  int
		period func(time.Time) string
	}{{keptDays, dayOf}, {keptWeeks, weekOf}, {keptMonths, monthOf}} {
		seen := map[string]bool{}
		for _, i := range past {
			if period := rule.period(made[i].UTC()); !seen[period] && len(seen) < rule.count {
				seen[period] = true
				keep[i] = true
			}
		}
	}
	var gone []int
	for i := range made {
		if !keep[i] {
			gone = append(gone, i)
		}
	}
	slices.SortFunc(gone, cmp.Compare[int])
	return gone
}

func dayOf(t time.Time) string   { return t.Format(time.DateOnly) }
func monthOf(t time.Time) string { return t.Format("2006-01") }

func weekOf(t time.Time) string {
	year, week := t.ISOWeek()
	return fmt.Sprintf("%d-%02d", year, week)
}
