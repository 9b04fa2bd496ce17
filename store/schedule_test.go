package store

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestBackupDue(t *testing.T) {
	berlin := time.FixedZone("one hour east", 3600)
	at := func(day, hour, minute int) time.Time { return time.Date(2026, 3, day, hour, minute, 0, 0, berlin) }
	for _, row := range []struct {
		name string
		last time.Time
		now  time.Time
		want Due
	}{
		{"never", time.Time{}, at(2, 9, 0), Due{Now: true, Why: DueNever}},
		{"today", at(2, 8, 0), at(2, 23, 59), Due{Why: DueNot}},
		{"a minute over midnight", at(2, 23, 59), at(3, 0, 0), Due{Now: true, Why: DueNewDay, Days: 1}},
		{"midnight there, not in UTC", at(2, 23, 30).UTC(), at(3, 0, 30), Due{Now: true, Why: DueNewDay, Days: 1}},
		{"after the weekend", at(6, 18, 0), at(9, 8, 0), Due{Now: true, Why: DueNewDay, Days: 3}},
		{"a little in the future", at(3, 8, 0), at(2, 9, 0), Due{Why: DueNot}},
		{"far in the future", at(30, 8, 0), at(2, 9, 0), Due{Now: true, Why: DueClockBack}},
		{"decades ago", at(2, 9, 0).AddDate(-20, 0, 0), at(2, 9, 0), Due{Now: true, Why: DueNewDay, Days: 7305}},
	} {
		if got := BackupDue(BackupPlan{Folder: "stick", Last: row.last}, row.now); got != row.want {
			t.Errorf("%s: %+v, want %+v", row.name, got, row.want)
		}
		if got := BackupDue(BackupPlan{Last: row.last}, row.now); got != (Due{Why: DueNoFolder}) {
			t.Errorf("%s, without a folder: %+v", row.name, got)
		}
	}
	seen := map[string]bool{}
	for _, d := range []Due{{Why: DueNoFolder}, {Why: DueNever}, {Why: DueClockBack}, {Why: DueNewDay, Days: 1}, {Why: DueNewDay, Days: 9}, {Why: DueNot}} {
		if words := d.Words(); len(words) < 20 || seen[words] {
			t.Errorf("%+v says %q", d, words)
		} else {
			seen[words] = true
		}
	}
}

// aMoment is any moment of a clock that may be wrong by decades.
func aMoment() *rapid.Generator[time.Time] {
	return rapid.Custom(func(t *rapid.T) time.Time {
		return time.Unix(rapid.Int64Range(0, 4102444800).Draw(t, "seconds"), 0).UTC() // 1970 to 2100
	})
}

// However the clock jumps, a backup that was made settles the day, and two days
// later there is one due.
func TestABackupSettlesItsDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		now := aMoment().Draw(t, "now")
		plan := BackupPlan{Folder: "stick", Last: aMoment().Draw(t, "last")}
		if BackupDue(plan, now).Now {
			plan.Last = now
		}
		if due := BackupDue(plan, now); due.Now {
			t.Fatalf("still due: %+v", due)
		}
		if later := now.Add(72 * time.Hour); !BackupDue(plan, later).Now {
			t.Fatalf("three days later nothing is due, last %v, now %v", plan.Last, later)
		}
	})
}

func TestRotation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		made := rapid.SliceOfN(aMoment(), 0, 60).Draw(t, "made")
		now := aMoment().Draw(t, "now")
		gone := superseded(made, now)
		isGone := map[int]bool{}
		for _, i := range gone {
			if isGone[i] {
				t.Fatalf("%d is removed twice", i)
			}
			isGone[i] = true
		}
		var kept, past []time.Time
		for i, m := range made {
			if !isGone[i] {
				kept = append(kept, m)
			}
			switch {
			case !m.After(now):
				past = append(past, m)
			case isGone[i]:
				t.Fatalf("%v is after now and removed", m)
			}
		}
		// The newest of all and the newest that is not after now always stay.
		for _, group := range [][]time.Time{made, past} {
			if len(group) > 0 && !slices.Contains(kept, slices.MaxFunc(group, time.Time.Compare)) {
				t.Fatal("the newest is removed")
			}
		}
		future := len(made) - len(past)
		if most := keptDays + keptWeeks + keptMonths + future; len(kept) > most {
			t.Fatalf("%d stay, at most %d should", len(kept), most)
		}
		// Nothing more goes when it is asked again.
		if again := superseded(kept, now); len(again) > 0 {
			t.Fatalf("asked again, %d more go", len(again))
		}
		// So many days, weeks and months stay as there were, up to the rule.
		for _, rule := range []struct {
			count  int
			period func(time.Time) string
		}{{keptDays, dayOf}, {keptWeeks, weekOf}, {keptMonths, monthOf}} {
			had, has := periods(past, rule.period), periods(kept, rule.period)
			if want := min(rule.count, len(had)); len(has) < want {
				t.Fatalf("%d periods stay of %d, want %d", len(has), len(had), want)
			}
		}
	})
}

func periods(made []time.Time, of func(time.Time) string) map[string]bool {
	found := map[string]bool{}
	for _, m := range made {
		found[of(m)] = true
	}
	return found
}

// practiceYears plays a practice: a backup on some days, the clock jumping now
// and then, and the rotation after each.
func TestRotationOverTheYears(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		now := time.Date(2026, 1, 5, 18, 0, 0, 0, time.UTC)
		var there []time.Time
		for range rapid.IntRange(1, 800).Draw(t, "backups") {
			now = now.Add(time.Duration(rapid.IntRange(1, 3*24).Draw(t, "hours")) * time.Hour)
			if rapid.IntRange(0, 200).Draw(t, "jump") == 0 {
				now = aMoment().Draw(t, "where to")
			}
			there = append(there, now)
			for _, i := range slices.Backward(superseded(there, now)) {
				there = slices.Delete(there, i, i+1)
			}
			if there[len(there)-1] != now {
				t.Fatal("the backup just made is removed")
			}
		}
	})
}

// Without a jump the rule gives what it promises.
func TestRotationOfADailyPractice(t *testing.T) {
	now := time.Date(2026, 1, 5, 18, 0, 0, 0, time.UTC)
	var there []time.Time
	for range 500 {
		now = now.AddDate(0, 0, 1)
		there = append(there, now)
		for _, i := range slices.Backward(superseded(there, now)) {
			there = slices.Delete(there, i, i+1)
		}
	}
	for back := range keptDays {
		if day := now.AddDate(0, 0, -back); !slices.Contains(there, day) {
			t.Errorf("the day %s is not there", dayOf(day))
		}
	}
	for back := range keptWeeks {
		if week := weekOf(now.AddDate(0, 0, -7*back)); !periods(there, weekOf)[week] {
			t.Errorf("the week %s is not there", week)
		}
	}
	first := time.Date(now.Year(), now.Month(), 1, 0, 0, 0, 0, time.UTC)
	for back := range keptMonths {
		if month := monthOf(first.AddDate(0, -back, 0)); !periods(there, monthOf)[month] {
			t.Errorf("the month %s is not there", month)
		}
	}
	if len(there) > keptDays+keptWeeks+keptMonths {
		t.Errorf("%d backups stay", len(there))
	}
}
