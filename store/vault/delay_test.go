package vault

import (
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestTheDelayGrows(t *testing.T) {
	for wrong, want := range map[int]time.Duration{
		-1: 0, 0: 0, 1: 0, 3: 0, 4: 2 * time.Second, 5: 4 * time.Second, 6: 8 * time.Second, 10: 128 * time.Second,
		11: 256 * time.Second, 12: 5 * time.Minute, 13: 5 * time.Minute, 1_000_000: 5 * time.Minute,
	} {
		if got := Delay(wrong); got != want {
			t.Errorf("after %d: %v, want %v", wrong, got, want)
		}
	}
}

func TestTheWait(t *testing.T) {
	noon := time.Date(2026, 3, 2, 12, 0, 0, 0, time.UTC)
	tries := Tries{Wrong: 4}.After(noon) // five wrong: four seconds
	for name, c := range map[string]struct {
		now  time.Time
		want time.Duration
	}{
		"at once":              {noon, 4 * time.Second},
		"later":                {noon.Add(time.Second), 3 * time.Second},
		"over":                 {noon.Add(4 * time.Second), 0},
		"a year later":         {noon.AddDate(1, 0, 0), 0},
		"a year before":        {noon.AddDate(-1, 0, 0), 4 * time.Second},
		"another zone, later":  {noon.Add(time.Second).In(time.FixedZone("", 7200)), 3 * time.Second},
		"the end of calendars": {time.Unix(1<<40, 0), 0},
		"before all calendars": {time.Time{}, 4 * time.Second},
	} {
		if got := tries.Wait(c.now); got != c.want {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
	if wait := (Tries{}).Wait(noon); wait != 0 {
		t.Errorf("nothing was wrong, yet %v", wait)
	}
}

// Whatever the clock does, somebody who waits as long as they are told may try,
// at the latest after they were told once more.
func TestNobodyIsLockedOutForEver(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		moment := rapid.Custom(func(rt *rapid.T) time.Time { return time.Unix(rapid.Int64Range(-1<<36, 1<<36).Draw(rt, "moment"), 0) })
		tries := Tries{Wrong: rapid.IntRange(0, 40).Draw(rt, "wrong"), Last: moment.Draw(rt, "last")}
		now := moment.Draw(rt, "now") // after any jump
		tries = tries.Seen(now)
		first := tries.Wait(now)
		if first > longestDelay {
			rt.Fatalf("told to wait %v", first)
		}
		now = now.Add(first)
		tries = tries.Seen(now)
		if more := tries.Wait(now); more != 0 {
			rt.Errorf("waited %v as told, and %v more are wanted", first, more)
		}
	})
}
