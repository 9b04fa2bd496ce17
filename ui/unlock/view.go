package unlock

import (
	"fmt"
	"time"
)

// The words of the passphrase pages.
const (
	wordsNone    = "Choose a passphrase first."
	wordsDiffers = "The two are not the same. Type it once more, or show what is typed."
	wordsOld     = "Type the passphrase that opens the practice now."
	wordsNoCode  = "Type the recovery code from the sheet."
)

// pairProblem says what is wrong with a passphrase that was typed twice: with
// the first field, or with the second. Both are empty where nothing is.
func pairProblem(advice Advice, first, second string) (wrong, differs string) {
	switch {
	case first == "":
		return wordsNone, ""
	case !advice.Accepted:
		return advice.Words, ""
	case first != second:
		return "", wordsDiffers
	}
	return "", ""
}

// strength is how full the meter beside a passphrase is.
func strength(advice Advice, typed string) float64 {
	const weak, fair = 0.25, 0.6
	switch {
	case typed == "":
		return 0
	case advice.Good:
		return 1
	case advice.Accepted:
		return fair
	}
	return weak
}

// waitWords counts down to the next try.
func waitWords(wait time.Duration) string {
	seconds := int((wait + time.Second - 1) / time.Second)
	const minute = 60
	switch {
	case seconds == 1:
		return "Too many wrong passphrases. Try again in 1 second."
	case seconds <= 2*minute:
		return fmt.Sprintf("Too many wrong passphrases. Try again in %d seconds.", seconds)
	}
	return fmt.Sprintf("Too many wrong passphrases. Try again in %d minutes.", (seconds+minute-1)/minute)
}

// sealedWords says how far a sealing is.
func sealedWords(done, total int) string {
	if total == 0 {
		return "Making the keys…"
	}
	if done >= total {
		return "Wiping what lay open before…"
	}
	return fmt.Sprintf("Sealing: %d of %d entries", done, total)
}

// groupProblem says what is wrong with one group of a code that is typed back;
// nothing where it is right. Read reads a whole code as people type it, so a
// group may be in small letters, or have a 0 for an O.
func groupProblem(code Code, at int, typed string, read func(string) (Code, error)) string {
	const length = 4
	if typed == "" {
		return fmt.Sprintf("Type group %d from the sheet: %d letters.", at+1, length)
	}
	found, err := read(code.with(at, typed))
	if err != nil || found.String() != code.String() {
		return fmt.Sprintf("This is not group %d. Compare it with the sheet.", at+1)
	}
	return ""
}

// twoOf picks two different places of so many, in order. Pick returns a number
// below n.
func twoOf(count int, pick func(n int) int) (first, second int) {
	first = pick(count)
	second = pick(count - 1)
	if second >= first {
		return first, second + 1
	}
	return second, first
}
