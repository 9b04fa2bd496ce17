package vault

import (
	"errors"
	"math/big"
	"slices"
	"strings"
	"testing"
)

func valuesOf(c RecoveryCode) []int {
	var values []int
	for _, r := range c.letters {
		values = append(values, strings.IndexRune(letters, r))
	}
	return values
}

func spell(values []int) string {
	var b strings.Builder
	for _, v := range values {
		b.WriteByte(letters[v])
	}
	return b.String()
}

func TestACodeHasEnoughLetters(t *testing.T) {
	all := new(big.Int).Exp(big.NewInt(int64(len(letters))), big.NewInt(randomLetters), nil)
	if bits := all.BitLen() - 1; bits < 128 {
		t.Errorf("%d bits", bits)
	}
	for _, taken := range []string{"LI", "OQ", "UV", "L1", "O0", "Z2", "S5", "B8", "G6"} {
		if strings.Contains(letters, taken[:1]) && strings.Contains(letters, taken[1:]) {
			t.Errorf("%s are both letters of a code", taken)
		}
	}
	c := NewRecoveryCode()
	if groups := c.Groups(); len(groups) != 8 || len(c.String()) != 8*4+7 || c.IsZero() {
		t.Errorf("a code is %q", c)
	}
	if (RecoveryCode{}).String() != "" || !(RecoveryCode{}).IsZero() {
		t.Error("no code is not empty")
	}
}

// Every letter is as likely: over 40,000 letters none is far from its share
// (six standard deviations; a fair source fails this once in ten million runs).
func TestLettersAreEven(t *testing.T) {
	counts := map[rune]int{}
	const codes = 1500
	for range codes {
		for _, r := range NewRecoveryCode().letters[:randomLetters] {
			counts[r]++
		}
	}
	want := float64(codes*randomLetters) / float64(len(letters))
	for _, r := range letters {
		if diff := float64(counts[r]) - want; diff*diff > 36*want {
			t.Errorf("%c came %d times, %.0f are its share", r, counts[r], want)
		}
	}
}

func TestACodeIsReadAsPeopleTypeIt(t *testing.T) {
	c := RecoveryCode{}
	for c.IsZero() || !strings.ContainsAny(c.letters, "O") || !strings.ContainsAny(c.letters, "L") {
		c = NewRecoveryCode()
	}
	for name, typed := range map[string]string{
		"as printed":  c.String(),
		"small":       strings.ToLower(c.String()),
		"dashes":      strings.Join(c.Groups(), "-"),
		"long dashes": strings.Join(c.Groups(), " – "),
		"lines":       " " + strings.Join(c.Groups(), "\n") + "\n",
		"together":    strings.Join(c.Groups(), ""),
		"lookalikes":  strings.NewReplacer("O", "0", "L", "1", "U", "v", "Z", "2", "S", "5", "G", "6", "B", "8").Replace(c.String()),
	} {
		if got, err := ParseRecoveryCode(typed); err != nil || got != c {
			t.Errorf("%s: %q is read as %q, %v", name, typed, got, err)
		}
	}
}

func TestASlipIsToldApart(t *testing.T) {
	c := NewRecoveryCode()
	for name, typed := range map[string]string{
		"nothing":      "",
		"a letter off": c.String()[:len(c.String())-1],
		"one too many": c.String() + "A",
		"a strange":    "ä" + c.String()[1:],
		"a digit":      "3" + c.String()[1:],
		"endless":      strings.Repeat("A", 5000),
		"not a text":   "\xff\xfe" + c.String(),
	} {
		_, err := ParseRecoveryCode(typed)
		problem := new(CodeProblem)
		if !errors.As(err, &problem) || !errors.Is(err, ErrTypo) || problem.Plain == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Each single wrong letter, each pair of neighbours that changed places and each
// pair of wrong letters is noticed, but for pairs 22 places apart.
func TestTheCheckingLettersNoticeSlips(t *testing.T) {
	c := NewRecoveryCode()
	sound := valuesOf(c)
	if remainder(sound) != [checkLetters]int{} {
		t.Fatal("a new code is not sound")
	}
	missed, tried := 0, 0
	for i := range sound {
		for a := 1; a < len(letters); a++ {
			wrong := slices.Clone(sound)
			wrong[i] = mod(wrong[i] + a)
			if _, err := ParseRecoveryCode(spell(wrong)); err == nil {
				t.Fatalf("letter %d wrong by %d and not noticed", i, a)
			}
			for j := i + 1; j < len(sound); j++ {
				for b := 1; b < len(letters); b++ {
					both := slices.Clone(wrong)
					both[j] = mod(both[j] + b)
					tried++
					if remainder(both) == [checkLetters]int{} {
						missed++
						if j-i != 22 {
							t.Fatalf("letters %d and %d wrong by %d and %d and not noticed", i, j, a, b)
						}
					}
				}
			}
		}
		if i > 0 && sound[i] != sound[i-1] {
			swapped := slices.Clone(sound)
			swapped[i], swapped[i-1] = swapped[i-1], swapped[i]
			if _, err := ParseRecoveryCode(spell(swapped)); err == nil {
				t.Errorf("letters %d and %d changed places and it was not noticed", i-1, i)
			}
		}
	}
	t.Logf("%d of %d pairs of wrong letters are not noticed", missed, tried)
}

func FuzzParseRecoveryCode(f *testing.F) {
	f.Add(codeOf(make([]int, codeLength)).String())
	f.Add("AAAA-0000 1111")
	f.Add("äöü\x00\xff")
	f.Fuzz(func(t *testing.T, typed string) {
		c, err := ParseRecoveryCode(typed)
		if err != nil {
			if problem := new(CodeProblem); !errors.As(err, &problem) || problem.Plain == "" || !c.IsZero() {
				t.Errorf("%q: %q, %v", typed, c, err)
			}
			return
		}
		if again, err := ParseRecoveryCode(c.String()); err != nil || again != c || len(c.letters) != codeLength {
			t.Errorf("%q is read as %q, and that as %q, %v", typed, c, again, err)
		}
	})
}
