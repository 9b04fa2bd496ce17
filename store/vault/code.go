package vault

import (
	"crypto/rand"
	"fmt"
	"strings"
	"unicode"
)

// RecoveryCode opens a key ring when the passphrase is lost. It is shown once
// and printed: 29 random letters (131 bits) and 3 that check them, in groups of
// four. The zero value is no code.
type RecoveryCode struct{ letters string }

// letters leaves out I, Q and V, which are taken for L, O and U; with no digit
// among them, 0 and 1 can only mean O and L. There are 23, a prime number, which
// the checking letters need.
const letters = "ABCDEFGHJKLMNOPRSTUWXYZ"

// lookalikes says which letter a sign that is none must stand for.
var lookalikes = map[rune]rune{
	'I': 'L', '1': 'L', '|': 'L', 'Q': 'O', '0': 'O', 'V': 'U', '2': 'Z', '5': 'S', '6': 'G', '8': 'B',
}

const (
	randomLetters = 29
	checkLetters  = 3
	codeLength    = randomLetters + checkLetters
	groupLength   = 4
)

// NewRecoveryCode makes a code from the system's random source.
func NewRecoveryCode() RecoveryCode {
	values := make([]int, 0, codeLength)
	for len(values) < randomLetters {
		var b [1]byte
		rand.Read(b[:])
		if n := int(b[0]); n < 256/len(letters)*len(letters) { // each letter as likely
			values = append(values, n%len(letters))
		}
	}
	return codeOf(append(values, make([]int, checkLetters)...))
}

// codeOf fills in the last three letters and spells the code.
func codeOf(values []int) RecoveryCode {
	copy(values[randomLetters:], make([]int, checkLetters))
	rest := remainder(values)
	for i, r := range rest {
		values[randomLetters+i] = (len(letters) - r) % len(letters)
	}
	var b strings.Builder
	for _, v := range values {
		b.WriteByte(letters[v])
	}
	return RecoveryCode{b.String()}
}

// remainder divides the code, read as a polynomial over the 23 residues, by one
// whose roots are 5, 5^2 and 5^3 (a Reed-Solomon code; 5 is a primitive root of
// 23). A sound code leaves nothing. One wrong letter always leaves something, and
// so do two wrong or exchanged ones that are not exactly 22 places apart; of any
// other damage one case in 12,167 is missed.
func remainder(values []int) [checkLetters]int {
	// (x - 5)(x - 2)(x - 10) = x^3 - 17x^2 + 80x - 100, with 5^2 = 2 and 5^3 = 10.
	divisor := [checkLetters]int{-17, 80, -100}
	var rest [checkLetters]int
	for _, v := range values {
		lead := rest[0]
		rest = [checkLetters]int{rest[1], rest[2], v}
		for i := range rest {
			rest[i] = mod(rest[i] - lead*divisor[i])
		}
	}
	return rest
}

func mod(n int) int {
	p := len(letters)
	return (n%p + p) % p
}

// String gives the code as it is shown and printed.
func (c RecoveryCode) String() string { return strings.Join(c.Groups(), " ") }

// Groups gives the eight groups of four letters.
func (c RecoveryCode) Groups() []string {
	var groups []string
	for at := 0; at < len(c.letters); at += groupLength {
		groups = append(groups, c.letters[at:at+groupLength])
	}
	return groups
}

// IsZero reports whether there is no code.
func (c RecoveryCode) IsZero() bool { return c.letters == "" }

// secret is what wraps the ring.
func (c RecoveryCode) secret() string { return c.letters }

// CodeProblem says what is wrong with a recovery code as it was typed. Nothing
// was tried with it.
type CodeProblem struct {
	Plain string // for the person at the desk
}

// Error is the text for the log; the letters typed are not in it.
func (p *CodeProblem) Error() string { return "vault: " + ErrTypo.Error() + ": " + p.Plain }

// Unwrap lets errors.Is find ErrTypo.
func (p *CodeProblem) Unwrap() error { return ErrTypo }

// ParseRecoveryCode reads a code as people type it: in capitals or not, with any
// blanks and dashes, with 0 for O and the like. It fails with a *CodeProblem for
// what cannot be a code, before anything is tried with it.
func ParseRecoveryCode(typed string) (RecoveryCode, error) {
	if len(typed) > 1000 {
		return RecoveryCode{}, codeProblem("This is far longer than a recovery code. It has %d letters.", codeLength)
	}
	var values []int
	for _, r := range typed {
		if unicode.IsSpace(r) || unicode.Is(unicode.Pd, r) || unicode.Is(unicode.Cf, r) || strings.ContainsRune("._,;:/", r) {
			continue
		}
		r = unicode.ToUpper(r)
		if meant, ok := lookalikes[r]; ok {
			r = meant
		}
		at := strings.IndexRune(letters, r)
		if at < 0 {
			return RecoveryCode{}, codeProblem("No recovery code has the sign %q. Look at group %d again.", r, len(values)/groupLength+1)
		}
		values = append(values, at)
	}
	if len(values) != codeLength {
		return RecoveryCode{}, codeProblem("A recovery code has %d letters in %d groups of %d; this has %d.",
			codeLength, codeLength/groupLength, groupLength, len(values))
	}
	if remainder(values) != [checkLetters]int{} {
		return RecoveryCode{}, codeProblem("One of the letters is not right, or two have changed places. Compare each group with the sheet.")
	}
	return codeOf(values), nil
}

func codeProblem(format string, args ...any) *CodeProblem {
	return &CodeProblem{Plain: fmt.Sprintf(format, args...)}
}
