package unlock

import (
	"testing"
	"time"
)

func TestWhatIsWrongWithAPair(t *testing.T) {
	good, weak := Advice{Accepted: true}, Advice{Words: "Too short."}
	for _, c := range []struct {
		name           string
		advice         Advice
		first, second  string
		wrong, differs string
	}{
		{"nothing typed", weak, "", "", wordsNone, ""},
		{"too weak", weak, "abc", "abc", "Too short.", ""},
		{"typed once", good, goodPhrase, "", "", wordsDiffers},
		{"a slip", good, goodPhrase, goodPhrase + "s", "", wordsDiffers},
		{"in order", good, goodPhrase, goodPhrase, "", ""},
	} {
		if wrong, differs := pairProblem(c.advice, c.first, c.second); wrong != c.wrong || differs != c.differs {
			t.Errorf("%s: %q and %q", c.name, wrong, differs)
		}
	}
}

func TestTheMeterFollowsTheAdvice(t *testing.T) {
	last := -1.0
	for _, c := range []struct {
		typed  string
		advice Advice
	}{{"", Advice{}}, {"abc", Advice{}}, {"abcdefgh", Advice{Accepted: true}}, {goodPhrase, Advice{Accepted: true, Good: true}}} {
		if got := strength(c.advice, c.typed); got <= last {
			t.Errorf("%q fills %v, not more than %v", c.typed, got, last)
		} else {
			last = got
		}
	}
	if last != 1 {
		t.Errorf("a good one fills %v", last)
	}
}

func TestWaitingIsToldInSecondsAndMinutes(t *testing.T) {
	for wait, want := range map[time.Duration]string{
		time.Millisecond:        "Too many wrong passphrases. Try again in 1 second.",
		3500 * time.Millisecond: "Too many wrong passphrases. Try again in 4 seconds.",
		5 * time.Minute:         "Too many wrong passphrases. Try again in 5 minutes.",
	} {
		if got := waitWords(wait); got != want {
			t.Errorf("%v: %q", wait, got)
		}
	}
}

func TestSealingIsToldInEntries(t *testing.T) {
	for _, c := range []struct {
		done, total int
		want        string
	}{{0, 0, "Making the keys…"}, {20, 400, "Sealing: 20 of 400 entries"}, {400, 400, "Wiping what lay open before…"}} {
		if got := sealedWords(c.done, c.total); got != c.want {
			t.Errorf("%d of %d: %q", c.done, c.total, got)
		}
	}
}

func TestTwoOfPicksTwoDifferentGroupsInOrder(t *testing.T) {
	const count = 8
	seen := map[[2]int]bool{}
	for a := range count {
		for b := range count - 1 {
			picks := []int{a, b}
			first, second := twoOf(count, func(int) int {
				next := picks[0]
				picks = picks[1:]
				return next
			})
			if first >= second || second >= count {
				t.Fatalf("%d and %d", first, second)
			}
			seen[[2]int{first, second}] = true
		}
	}
	if want := count * (count - 1) / 2; len(seen) != want {
		t.Errorf("%d pairs can come, want %d", len(seen), want)
	}
}

func TestAGroupIsComparedAsPeopleTypeIt(t *testing.T) {
	read := (&fakeGuard{}).ReadCode
	for typed, right := range map[string]bool{"efgh": true, " EFGH ": true, "EFGJ": false, "": false, "EFG": false} {
		if problem := groupProblem(someCode, 1, typed, read); (problem == "") != right {
			t.Errorf("%q: %q", typed, problem)
		}
	}
}
