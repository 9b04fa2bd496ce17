package vault

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"strings"
	"testing"
	"time"
)

func TestASecretOpensOnlyItsRing(t *testing.T) {
	k, code := newKeys(t)
	_, otherCode := newKeys(t)
	ring := must(ParseRing(k.Ring().Bytes()))(t)
	for name, passphrase := range map[string]string{
		"another": "seven green bicycles slept", "nothing": "", "blanks": "   ", "in capitals": strings.ToUpper(samplePhrase),
	} {
		if _, err := ring.Unlock(passphrase); !errors.Is(err, ErrPassphrase) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, code := range map[string]RecoveryCode{"another": otherCode, "none": {}} {
		if _, err := ring.Recover(code); !errors.Is(err, ErrCode) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := ring.Recover(code); err != nil {
		t.Error(err)
	}
}

// The same letters typed on another system, with other blanks around, are the
// same passphrase (Unicode Standard Annex 15: NFKC).
func TestAPassphraseIsTheSameOnEveryKeyboard(t *testing.T) {
	k, _, err := Create("Zoë’s  ﬁne Ångström", TestEffort) // composed, with a ligature
	if err != nil {
		t.Fatal(err)
	}
	for _, typed := range []string{"Zoe\u0308’s  fine A\u030angstro\u0308m", "\u00a0Zoë’s\u00a0 fine \u212bngström\n"} {
		if _, err := k.Ring().Unlock(typed); err != nil {
			t.Errorf("%q: %v", typed, err)
		}
	}
}

func TestAnotherPassphraseAndAnotherCode(t *testing.T) {
	k, code := newKeys(t)
	sealed := must(k.Seal("t", "r", "c", 1, []byte("kept")))(t)
	const otherPhrase = "a drawer full of winter light"
	renamed := must(k.WithPassphrase(otherPhrase, TestEffort))(t)
	recoded, newCode, err := renamed.WithRecoveryCode()
	if err != nil {
		t.Fatal(err)
	}
	if k.Ring().CodeMark() != renamed.Ring().CodeMark() || k.Ring().CodeMark() == recoded.Ring().CodeMark() {
		t.Error("the mark of the code must follow the code")
	}
	ring := must(ParseRing(recoded.Ring().Bytes()))(t)
	_, err = ring.Unlock(samplePhrase)
	wantErr(t, err, ErrPassphrase)
	_, err = ring.Recover(code)
	wantErr(t, err, ErrCode)
	for name, again := range map[string]*Keys{
		"passphrase": must(ring.Unlock(otherPhrase))(t), "code": must(ring.Recover(newCode))(t),
		"passphrase, first ring": must(k.Ring().Unlock(samplePhrase))(t),
	} {
		if got := must(again.Open("t", "r", "c", 1, sealed))(t); string(got) != "kept" {
			t.Errorf("%s: %q", name, got)
		}
	}
	_, err = k.WithPassphrase("password1", TestEffort)
	wantErr(t, err, ErrWeak)
}

func TestRotation(t *testing.T) {
	k, code := newKeys(t)
	old := must(k.Seal("t", "r", "c", 1, []byte("old")))(t)
	both := must(k.WithNewKey())(t)
	if k.Rotating() || !both.Rotating() {
		t.Error("only the next ring has two keys")
	}
	fresh := must(both.Seal("t", "r", "c", 1, []byte("new")))(t)
	open := func(k *Keys, sealed []byte) string {
		plain, err := k.Open("t", "r", "c", 1, sealed)
		if err != nil {
			return err.Error()
		}
		return string(plain)
	}
	for name, k := range map[string]*Keys{
		"at once": both, "by passphrase": must(must(ParseRing(both.Ring().Bytes()))(t).Unlock(samplePhrase))(t),
		"by code": must(both.Ring().Recover(code))(t),
	} {
		if open(k, old) != "old" || open(k, fresh) != "new" {
			t.Errorf("%s: %q, %q", name, open(k, old), open(k, fresh))
		}
	}
	only := must(both.WithOnlyCurrent())(t)
	again := must(must(ParseRing(only.Ring().Bytes()))(t).Recover(code))(t)
	for name, k := range map[string]*Keys{"at once": only, "again": again} {
		_, err := k.Open("t", "r", "c", 1, old)
		if open(k, fresh) != "new" || !errors.Is(err, ErrKey) || k.Rotating() {
			t.Errorf("%s: the former key must be gone: %v", name, err)
		}
	}
	if a, _ := only.Current(); bytes.Contains(only.Ring().Bytes(), []byte(must(currentName(k))(t))) || a.String() != must(currentName(both))(t) {
		t.Error("the ring must name the new key only")
	}
}

func currentName(k *Keys) (string, error) {
	id, ok := k.Current()
	if !ok {
		return "", ErrLocked
	}
	return id.String(), nil
}

func TestLockedKeysDoNothing(t *testing.T) {
	k, _ := newKeys(t)
	inside := k.keys[0]
	sealed := must(k.Seal("t", "r", "c", 1, nil))(t)
	container := sealedContainer(t, k, []byte("x"))
	k.Lock()
	k.Lock()
	if inside.key != [keySize]byte{} {
		t.Error("the key is still in memory")
	}
	for name, call := range map[string]func() error{
		"Seal":             func() error { _, err := k.Seal("t", "r", "c", 1, nil); return err },
		"Open":             func() error { _, err := k.Open("t", "r", "c", 1, sealed); return err },
		"WithPassphrase":   func() error { _, err := k.WithPassphrase(samplePhrase, TestEffort); return err },
		"WithRecoveryCode": func() error { _, _, err := k.WithRecoveryCode(); return err },
		"WithNewKey":       func() error { _, err := k.WithNewKey(); return err },
		"WithOnlyCurrent":  func() error { _, err := k.WithOnlyCurrent(); return err },
		"NewWriter":        func() error { _, err := k.NewWriter(&bytes.Buffer{}); return err },
		"NewReader":        func() error { _, err := must(OpenContainer(bytes.NewReader(container)))(t).NewReader(k); return err },
	} {
		if err := call(); !errors.Is(err, ErrLocked) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, ok := k.Current(); ok || k.Rotating() {
		t.Error("locked keys have no current one")
	}
}

// Whatever happens to one bit of a ring, it is called damage and never a wrong
// passphrase.
func TestADamagedRingIsToldApart(t *testing.T) {
	k, _ := newKeys(t)
	text := k.Ring().Bytes()
	for bit := range len(text) * 8 {
		changed := bytes.Clone(text)
		changed[bit/8] ^= 1 << (bit % 8)
		if _, err := ParseRing(changed); !errors.Is(err, ErrRing) {
			t.Fatalf("bit %d flipped: %v", bit, err)
		}
	}
	for n := range len(text) {
		if _, err := ParseRing(text[:n]); !errors.Is(err, ErrRing) {
			t.Fatalf("cut to %d bytes: %v", n, err)
		}
	}
}

// withSum gives a line of JSON the title that fits it, as somebody who changes a
// ring on purpose would.
func withSum(line []byte) []byte {
	return fmt.Appendf(nil, "%s%08x\n%s\n", ringTitle, crc32.Checksum(line, castagnoli), line)
}

// A ring that somebody put together from parts of two is refused, whichever
// secret is tried.
func TestARingOfPartsIsRefused(t *testing.T) {
	a, codeA := newKeys(t)
	b, codeB := newKeys(t)
	for name, change := range map[string]func(r *Ring){
		"passphrase": func(r *Ring) { r.passphrase = b.ring.passphrase },
		"code":       func(r *Ring) { r.recovery = b.ring.recovery },
		"keys":       func(r *Ring) { r.keys = b.ring.keys },
		"readers":    func(r *Ring) { r.readers = b.ring.readers },
		"readers of an earlier ring": func(r *Ring) {
			r.readers = must(a.WithPassphrase("a drawer full of winter light", TestEffort))(t).ring.readers
		},
		"a key of another": func(r *Ring) { r.keys = append(r.keys[:1:1], b.ring.keys[0]) },
		"no key":           func(r *Ring) { r.keys = nil },
		"a key twice":      func(r *Ring) { r.keys = append(r.keys[:1:1], r.keys[0]) },
		"many keys": func(r *Ring) {
			for i := range byte(mostKeys) {
				r.keys = append(r.keys[:len(r.keys):len(r.keys)], wrappedKey{KeyID{1, 2, 3, i}, r.keys[0].wrapped})
			}
		},
		"no slots":       func(r *Ring) { r.passphrase, r.recovery = nil, nil },
		"slots swapped":  func(r *Ring) { r.passphrase, r.recovery = r.recovery, r.passphrase },
		"no age file":    func(r *Ring) { r.passphrase, r.recovery = []byte("x"), []byte("age-encryption.org/v1\n") },
		"no age key":     func(r *Ring) { r.keys = []wrappedKey{{r.keys[0].id, []byte("x")}} },
		"too much work":  func(r *Ring) { r.passphrase, r.recovery = laborious(r.passphrase), laborious(r.recovery) },
		"another's slot": func(r *Ring) { *r = Ring{b.ring.passphrase, b.ring.recovery, r.keys, r.readers} },
	} {
		t.Run(name, func(t *testing.T) {
			r := *a.ring
			change(&r)
			ring, err := ParseRing(r.Bytes())
			if err != nil {
				wantErr(t, err, ErrRing)
				return
			}
			opened := 0
			for _, open := range []func() (*Keys, error){
				func() (*Keys, error) { return ring.Unlock(samplePhrase) },
				func() (*Keys, error) { return ring.Recover(codeA) },
				func() (*Keys, error) { return ring.Recover(codeB) },
			} {
				_, err := open()
				switch {
				case err == nil:
					opened++
				case !errors.Is(err, ErrRing) && !errors.Is(err, ErrPassphrase) && !errors.Is(err, ErrCode):
					t.Errorf("refused without saying what it is: %v", err)
				}
			}
			// Where one of the two slots is whole, its own secret opens it.
			if allowed := map[string]int{"passphrase": 1, "code": 1, "readers of an earlier ring": 1}[name]; opened != allowed {
				t.Errorf("%d secrets open it, want %d", opened, allowed)
			}
		})
	}
}

// laborious asks for the work of 2^30, which would take minutes and a gigabyte.
func laborious(slot []byte) []byte {
	line, rest, _ := bytes.Cut(slot, []byte("\n"))
	second, rest, _ := bytes.Cut(rest, []byte("\n"))
	at := bytes.LastIndexByte(second, ' ')
	return bytes.Join([][]byte{line, append(second[:at:at], " 30"...), rest}, []byte("\n"))
}

func TestParsingARingIsStrict(t *testing.T) {
	for name, line := range map[string]string{
		"no JSON":      "hello",
		"no object":    "[]",
		"a stranger":   `{"passphrase":"","recovery":"","keys":[{"id":"00000001","wrapped":""}],"readers":"","more":1}`,
		"two objects":  `{"keys":[{"id":"00000001","wrapped":""}]} {}`,
		"a short id":   `{"keys":[{"id":"0001","wrapped":""}]}`,
		"capitals":     `{"keys":[{"id":"0000000A","wrapped":""}]}`,
		"no hex":       `{"keys":[{"id":"zzzzzzzz","wrapped":""}]}`,
		"no base64":    `{"keys":[{"id":"00000001","wrapped":"%"}]}`,
		"endless":      `{"passphrase":"` + strings.Repeat("A", mostRing) + `"}`,
		"nothing":      "",
		"only a title": "\n",
	} {
		if _, err := ParseRing(withSum([]byte(line))); !errors.Is(err, ErrRing) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Unlocking takes about a second, by the measure of what a trial took, within
// the bounds.
func TestEffortForAMachine(t *testing.T) {
	for _, c := range []struct {
		took time.Duration
		want Effort
	}{
		{0, HeaviestEffort},
		{time.Millisecond, HeaviestEffort},
		{60 * time.Millisecond, 19},
		{125 * time.Millisecond, 18},
		{170 * time.Millisecond, 18},
		{190 * time.Millisecond, 17},
		{250 * time.Millisecond, 17},
		{time.Second, LightestEffort},
		{time.Hour, LightestEffort},
	} {
		if got := effortFor(15, c.took); got != c.want {
			t.Errorf("a trial of %v: %d, want %d", c.took, got, c.want)
		}
	}
	measured := must(MeasureEffort())(t)
	if measured < LightestEffort || measured > HeaviestEffort {
		t.Errorf("measured %d", measured)
	}
}

// The effort that was chosen is the one in the file.
func TestTheEffortIsWritten(t *testing.T) {
	k, _, err := Create(samplePhrase, 7)
	if err != nil {
		t.Fatal(err)
	}
	second := strings.Split(string(k.ring.passphrase), "\n")[1]
	if !strings.HasPrefix(second, "-> scrypt ") || !strings.HasSuffix(second, " 7") {
		t.Errorf("the slot begins %q", second)
	}
}

func FuzzParseRing(f *testing.F) {
	k, _ := newKeys(f)
	_, line, _ := bytes.Cut(k.Ring().Bytes(), []byte("\n"))
	f.Add(bytes.TrimSuffix(line, []byte("\n")))
	f.Add([]byte(`{"passphrase":"AA==","recovery":"AA==","keys":[{"id":"00000001","wrapped":"AA=="}],"readers":"AA=="}`))
	f.Add([]byte("{}"))
	f.Fuzz(func(t *testing.T, line []byte) {
		ring, err := ParseRing(withSum(line)) // the sum is right, or nothing else would be tried
		if err != nil {
			if !errors.Is(err, ErrRing) {
				t.Errorf("%q: %v", line, err)
			}
			return
		}
		if !json.Valid(line) {
			t.Errorf("%q is a ring, but no JSON", line)
		}
		again, err := ParseRing(ring.Bytes())
		if err != nil || !bytes.Equal(again.Bytes(), ring.Bytes()) {
			t.Errorf("%q is written as %q, and read as %v, %v", line, ring.Bytes(), again, err)
		}
		// Nobody's secret opens it, and trying takes no time: none asks for much work.
		if _, err := ring.open(must(newIdentity())(t)); err == nil {
			t.Errorf("%q opened", line)
		}
	})
}

// BenchmarkUnlock is one unlocking at each effort that a practice may have.
func BenchmarkUnlock(b *testing.B) {
	for effort := LightestEffort; effort <= HeaviestEffort; effort++ {
		b.Run(fmt.Sprintf("effort=%d", effort), func(b *testing.B) {
			k, _, err := Create(samplePhrase, effort)
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				must(k.Ring().Unlock(samplePhrase))(b).Lock()
			}
		})
	}
	b.Run("effort=measured", func(b *testing.B) {
		effort := must(MeasureEffort())(b)
		k, _, err := Create(samplePhrase, effort)
		if err != nil {
			b.Fatal(err)
		}
		for b.Loop() {
			must(k.Ring().Unlock(samplePhrase))(b).Lock()
		}
		b.ReportMetric(float64(effort), "effort")
	})
}

func BenchmarkRecover(b *testing.B) {
	k, code := newKeys(b)
	for b.Loop() {
		must(k.Ring().Recover(code))(b).Lock()
	}
}
