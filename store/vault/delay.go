package vault

import "time"

// Tries counts wrong passphrases one after the other. Keep it where it survives
// a restart; it has no secret. The delay it asks for is for the person at this
// keyboard: who copies the file is slowed by the effort alone.
type Tries struct {
	Wrong int       // since the last right one
	Last  time.Time // of the last wrong one
}

const (
	freeTries    = 3
	firstDelay   = 2 * time.Second
	longestDelay = 5 * time.Minute
)

// Delay is how long to wait after the last of so many wrong passphrases: nothing
// for the first three, then two seconds, doubled with each one up to five
// minutes (convention, no source).
func Delay(wrong int) time.Duration {
	delay := firstDelay
	for n := freeTries + 1; n < wrong && delay < longestDelay; n++ {
		delay *= 2
	}
	if wrong <= freeTries {
		return 0
	}
	return min(delay, longestDelay)
}

// Wait is how long to wait from now until the next passphrase may be tried,
// never more than the longest delay.
func (t Tries) Wait(now time.Time) time.Duration {
	delay := Delay(t.Wrong)
	return min(max(t.Last.Add(delay).Sub(now), 0), delay)
}

// Seen is what to keep when the clock is looked at: a clock that went back since
// the last wrong passphrase starts the delay anew from now, once, so that it
// ends however far the clock went.
func (t Tries) Seen(now time.Time) Tries {
	if now.Before(t.Last) {
		t.Last = now
	}
	return t
}

// After is the count after one more wrong passphrase.
func (t Tries) After(now time.Time) Tries { return Tries{Wrong: t.Wrong + 1, Last: now} }
