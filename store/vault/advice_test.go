package vault

import (
	"strings"
	"testing"
	"unicode"
)

func TestAdvice(t *testing.T) {
	for passphrase, want := range map[string]Strength{
		// Short, or nothing at all.
		"": TooWeak, "   ": TooWeak, "x7#Kq!": TooWeak, "a b c d": TooWeak,
		// Among what is tried first.
		"password": TooWeak, "Password1!": TooWeak, "PASSWORD": TooWeak, "sunshine": TooWeak, "letmein2024": TooWeak,
		"trustno1": TooWeak, "Wilhelmina": TooWeak, "wonderful!!": TooWeak, "2026-03-02": TooWeak, "020 7946 0000": TooWeak,
		// Patterns.
		"aaaaaaaaaaaaaaaaaaaa": TooWeak, "abababababababab": TooWeak, "qwertyuiop": TooWeak, "1234567890123456": TooWeak,
		"asdfghjkl;zxcvbnm": TooWeak, "abcdefghijklmnop": TooWeak, "987654321": TooWeak, "hahahahaha": TooWeak,
		// Known to be the practice's.
		"handbreadth": TooWeak, "Greenfield Nutrition": TooWeak, "greenfield nutrition handbreadth": TooWeak,
		// Accepted.
		"kitchen table": Fair, "zq7kvmwe": Fair, "tea with ada": Fair, "greenfield violet": Fair, "wonderful kitchen": Fair, "nutrition greenfield sled": Fair,
		"seven green bicycles sleep": Good, "correct horse battery staple": Good, "der hund trinkt heute tee": Good,
		"ünser kleines grünes boot": Good, "猫が窓の外を見ている朝の光の中で": Good, "kqzvmwtrplxnbhgd": Good,
	} {
		got := Advise(passphrase, "Greenfield Nutrition", "")
		if got.Strength != want || got.Accepted != (want != TooWeak) {
			t.Errorf("%q: %+v, want %v", passphrase, got, want)
		}
		if got.Words == "" || len(got.Words) > 130 {
			t.Errorf("%q: the advice is %q", passphrase, got.Words)
		}
	}
}

// No advice asks for capitals, digits or signs.
func TestAdviceHasNoSillyRules(t *testing.T) {
	for _, passphrase := range []string{"", "short", "password", "aaaaaaaaaa", "handbreadth", "kitchen table", "seven green bicycles sleep"} {
		for _, word := range []string{"capital", "upper", "digit", "number", "symbol", "special", "punctuation"} {
			if words := Advise(passphrase).Words; strings.Contains(strings.ToLower(words), word) {
				t.Errorf("%q: %q", passphrase, words)
			}
		}
	}
	// The same words without capitals, digits and signs are as good.
	const all = "Seven 7 green, bicycles! sleep"
	plain := strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || r == ' ' {
			return unicode.ToLower(r)
		}
		return -1
	}, all)
	if a, b := Advise(all), Advise(plain); a != b {
		t.Errorf("%q is %v, %q is %v", all, a, plain, b)
	}
}

func BenchmarkAdvise(b *testing.B) {
	for b.Loop() {
		Advise("seven green bicycles sleep", "Greenfield Nutrition", "Ottoline Quill")
	}
}
