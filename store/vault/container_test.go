package vault

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"filippo.io/age"
)

func newIdentity() (*age.X25519Identity, error) { return age.GenerateX25519Identity() }

func sealedContainer(t testing.TB, k *Keys, content []byte) []byte {
	t.Helper()
	var out bytes.Buffer
	w := must(k.NewWriter(&out))(t)
	must(w.Write(content))(t)
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// contentOf opens a container, with keys taken out of it where k is nil.
func contentOf(container []byte, k *Keys) ([]byte, error) {
	c, err := OpenContainer(bytes.NewReader(container))
	if err != nil {
		return nil, err
	}
	if k == nil {
		if k, err = c.Ring().Unlock(samplePhrase); err != nil {
			return nil, err
		}
	}
	r, err := c.NewReader(k)
	if err != nil {
		return nil, err
	}
	return io.ReadAll(r)
}

func someBytes(n int) []byte {
	rng := rand.New(rand.NewPCG(1, uint64(n)))
	out := make([]byte, n)
	for i := range out {
		out[i] = byte(rng.Uint32())
	}
	return out
}

// On another machine there is the container and the recovery code, nothing else.
func TestAContainerOpensWithEitherSecret(t *testing.T) {
	k, code := newKeys(t)
	for _, size := range []int{0, 1, 64<<10 - 1, 64 << 10, 64<<10 + 1, 300_000} {
		content := someBytes(size)
		container := sealedContainer(t, k, content)
		c := must(OpenContainer(bytes.NewReader(container)))(t)
		elsewhere := must(c.Ring().Recover(code))(t)
		for name, keys := range map[string]*Keys{"passphrase": nil, "code": elsewhere, "open keys": k} {
			if got, err := contentOf(container, keys); err != nil || !bytes.Equal(got, content) {
				t.Errorf("%d bytes, %s: %d came back, %v", size, name, len(got), err)
			}
		}
	}
}

func TestAContainerAfterChanges(t *testing.T) {
	k, code := newKeys(t)
	container := sealedContainer(t, k, []byte("as it was"))
	both := must(k.WithNewKey())(t)
	if got, err := contentOf(container, both); err != nil || string(got) != "as it was" {
		t.Errorf("while the key rotates: %q, %v", got, err)
	}
	between := sealedContainer(t, both, []byte("between"))
	only := must(both.WithOnlyCurrent())(t)
	if got, err := contentOf(between, only); err != nil || string(got) != "between" {
		t.Errorf("made while the key rotated: %q, %v", got, err)
	}
	_, err := contentOf(container, only)
	wantErr(t, err, ErrKey)
	if got, err := contentOf(container, nil); err != nil || string(got) != "as it was" {
		t.Errorf("with the passphrase of its day: %q, %v", got, err)
	}
	c := must(OpenContainer(bytes.NewReader(container)))(t)
	if _, err := c.Ring().Recover(code); err != nil {
		t.Errorf("with the code of its day: %v", err)
	}
	stranger, _ := newKeys(t)
	_, err = contentOf(container, stranger)
	wantErr(t, err, ErrKey)
}

func TestADamagedContainerIsRefused(t *testing.T) {
	k, _ := newKeys(t)
	content := someBytes(200_000)
	container := sealedContainer(t, k, content)
	for n := 0; n < len(container); n += 1 + n/50 {
		if got, err := contentOf(container[:n], k); !errors.Is(err, ErrContainer) || !bytes.HasPrefix(content, got) {
			t.Fatalf("cut to %d bytes of %d: %d came back, %v", n, len(container), len(got), err)
		}
	}
	chunk := 64<<10 + 16
	body := bytes.Index(container, []byte("age-encryption.org"))
	start := body + bytes.Index(container[body:], []byte("\n---")) // the head of the age file ends on this line
	start += 1 + bytes.IndexByte(container[start+1:], '\n') + 1 + 16
	for name, change := range map[string]func(c []byte) []byte{
		"chunks left out":   func(c []byte) []byte { return append(c[:start+chunk:start+chunk], c[start+2*chunk:]...) },
		"chunks exchanged":  func(c []byte) []byte { return swapChunks(c, start, chunk) },
		"end left out":      func(c []byte) []byte { return c[:start+2*chunk] },
		"something after":   func(c []byte) []byte { return append(c, 0) },
		"another container": func(c []byte) []byte { return append(c[:start:start], sealedContainer(t, k, content)[start:]...) },
	} {
		if got, err := contentOf(change(bytes.Clone(container)), k); !errors.Is(err, ErrContainer) || !bytes.HasPrefix(content, got) {
			t.Errorf("%s: %d bytes came back, %v", name, len(got), err)
		}
	}
	rng := rand.New(rand.NewPCG(3, 3))
	for range 400 {
		changed, bit := bytes.Clone(container), rng.IntN(len(container)*8)
		changed[bit/8] ^= 1 << (bit % 8)
		got, err := contentOf(changed, k)
		if !errors.Is(err, ErrContainer) && !errors.Is(err, ErrKey) || !bytes.HasPrefix(content, got) {
			t.Errorf("bit %d flipped: %d bytes came back, %v", bit, len(got), err)
		}
	}
}

func swapChunks(c []byte, start, size int) []byte {
	first := bytes.Clone(c[start : start+size])
	copy(c[start:], c[start+size:start+2*size])
	copy(c[start+size:], first)
	return c
}

// Every byte of the head counts, the lines for other readers among them.
func TestADamagedHeadIsRefused(t *testing.T) {
	k, _ := newKeys(t)
	container := sealedContainer(t, k, []byte("x"))
	for at := range container {
		changed := bytes.Clone(container)
		changed[at] ^= 1 << (at % 8)
		if got, err := contentOf(changed, k); !errors.Is(err, ErrContainer) && !errors.Is(err, ErrKey) {
			t.Fatalf("bit %d of byte %d flipped: %q, %v", at%8, at, got, err)
		}
	}
}

// A reader or a disk that fails is not called damage.
func TestADiskFaultIsNotDamage(t *testing.T) {
	fault := errors.New("sector not found")
	_, err := OpenContainer(io.MultiReader(bytes.NewReader([]byte(containerTitle)), faulty{fault}))
	if !errors.Is(err, fault) || errors.Is(err, ErrContainer) {
		t.Errorf("got %v", err)
	}
	k, _ := newKeys(t)
	if _, err := k.NewWriter(faulty{fault}); !errors.Is(err, fault) {
		t.Errorf("got %v", err)
	}
}

type faulty struct{ err error }

func (f faulty) Read([]byte) (int, error)  { return 0, f.err }
func (f faulty) Write([]byte) (int, error) { return 0, f.err }

// The age program itself opens a container once the recovery code's identity is
// known: nobody depends on this program to get at a backup.
func TestTheAgeProgramOpensAContainer(t *testing.T) {
	program, err := exec.LookPath("age")
	if err != nil {
		t.Skip("the age program is not installed here")
	}
	k, code := newKeys(t)
	content := someBytes(150_000)
	container := sealedContainer(t, k, content)
	lines := bytes.SplitN(container, []byte("\n"), 4)
	identity := must(openSlot(k.ring.recovery, code.secret(), ErrCode))(t)
	folder := t.TempDir()
	keyFile, body := filepath.Join(folder, "key"), filepath.Join(folder, "body")
	for name, content := range map[string][]byte{keyFile: []byte(identity.String() + "\n"), body: lines[3]} {
		if err := os.WriteFile(name, content, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	out, err := exec.CommandContext(t.Context(), program, "--decrypt", "-i", keyFile, body).Output()
	if err != nil || !bytes.Equal(out, content) {
		t.Errorf("%d bytes came back, %v", len(out), err)
	}
	// The data key is wrapped for it as well.
	wrapped := filepath.Join(folder, "wrapped")
	if err := os.WriteFile(wrapped, k.ring.keys[0].wrapped, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err = exec.CommandContext(t.Context(), program, "--decrypt", "-i", keyFile, wrapped).Output()
	if err != nil || !bytes.Equal(out, k.keys[0].key[:]) {
		t.Errorf("the data key: %d bytes came back, %v", len(out), err)
	}
}

func FuzzOpenContainer(f *testing.F) {
	k, _ := newKeys(f)
	whole := sealedContainer(f, k, []byte("content"))
	f.Add(whole)
	f.Add(whole[:len(containerTitle)+30])
	f.Add(append([]byte(containerTitle), withSum([]byte(`{"keys":[{"id":"00000001","wrapped":""}]}`))...))
	f.Add([]byte(containerTitle + "\n\n\n"))
	f.Fuzz(func(t *testing.T, in []byte) {
		content, err := contentOf(in, k)
		if err == nil && !bytes.Equal(in, whole) {
			t.Errorf("%q opened as %q, and nobody sealed it", in, content)
		}
		if err != nil && !errors.Is(err, ErrContainer) && !errors.Is(err, ErrKey) {
			t.Errorf("%q: %v", in, err)
		}
	})
}

func BenchmarkContainer(b *testing.B) {
	k, _ := newKeys(b)
	content := someBytes(12 << 20)
	container := sealedContainer(b, k, content)
	b.Run("write 12 MB", func(b *testing.B) {
		b.SetBytes(int64(len(content)))
		for b.Loop() {
			w := must(k.NewWriter(io.Discard))(b)
			must(w.Write(content))(b)
			if err := w.Close(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("read 12 MB", func(b *testing.B) {
		b.SetBytes(int64(len(content)))
		for b.Loop() {
			if got := must(contentOf(container, k))(b); len(got) != len(content) {
				b.Fatal(fmt.Sprint(len(got), " bytes came back"))
			}
		}
	})
}
