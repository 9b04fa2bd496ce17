package vault

import (
	"errors"
	"testing"
)

func must[T any](v T, err error) func(testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

const samplePhrase = "seven green bicycles sleep"

func newKeys(t testing.TB) (*Keys, RecoveryCode) {
	t.Helper()
	k, code, err := Create(samplePhrase, TestEffort)
	if err != nil {
		t.Fatal(err)
	}
	return k, code
}

func wantErr(t testing.TB, err, want error) {
	t.Helper()
	if !errors.Is(err, want) {
		t.Fatalf("got error %v, want %v", err, want)
	}
}

func TestBothSecretsOpenTheRing(t *testing.T) {
	k, code := newKeys(t)
	sealed := must(k.Seal("record", "a/b", "body", 3, []byte("hello")))(t)
	ring := must(ParseRing(k.Ring().Bytes()))(t)
	for name, open := range map[string]func() (*Keys, error){
		"passphrase": func() (*Keys, error) { return ring.Unlock("  " + samplePhrase + "\n") },
		"code": func() (*Keys, error) {
			return ring.Recover(must(ParseRecoveryCode(code.String()))(t))
		},
	} {
		again := must(open())(t)
		if got := must(again.Open("record", "a/b", "body", 3, sealed))(t); string(got) != "hello" {
			t.Errorf("%s: %q", name, got)
		}
	}
	_, err := ring.Unlock("seven green bicycles slept")
	wantErr(t, err, ErrPassphrase)
	_, err = ring.Recover(NewRecoveryCode())
	wantErr(t, err, ErrCode)
}
