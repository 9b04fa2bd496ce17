package vault

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"runtime/debug"
	"strings"
	"time"

	"filippo.io/age"
	"golang.org/x/crypto/scrypt"
	"golang.org/x/text/unicode/norm"
)

// Effort is how much work one try of a passphrase costs: scrypt with
// N = 2^Effort, r = 8, p = 1, which takes 2^Effort kilobytes of memory. The zero
// value stands for what [MeasureEffort] finds.
type Effort int

const (
	// LightestEffort is the least a measured effort comes to, on any machine:
	// 128 MB. OWASP Password Storage Cheat Sheet, scrypt: N = 2^17, r = 8, p = 1.
	LightestEffort Effort = 17
	// HeaviestEffort is the most: 512 MB. A laptop of 4 GB still opens it beside
	// other programs (convention, no source).
	HeaviestEffort Effort = 19
	// TestEffort makes tests quick. It protects nothing.
	TestEffort Effort = 4
	// codeEffort is that of the recovery code, which needs none: nobody tries
	// 2^131 codes.
	codeEffort Effort = 10
	// mostEffort is the most that a ring may ask of this machine.
	mostEffort Effort = 21
)

// unlockTime is what unlocking should take.
const unlockTime = time.Second

// MeasureEffort finds the effort with which unlocking takes about a second on
// this machine. It takes about a third of one.
func MeasureEffort() (Effort, error) {
	const trial Effort = 15
	fastest := time.Duration(math.MaxInt64)
	for range 3 {
		start := time.Now()
		if _, err := scrypt.Key([]byte("trial"), []byte("trial"), 1<<trial, 8, 1, keySize); err != nil {
			return 0, fmt.Errorf("vault: %w", err)
		}
		fastest = min(fastest, time.Since(start))
	}
	tidyMemory()
	return effortFor(trial, fastest), nil
}

// effortFor is the effort nearest to unlockTime, where one of trial took so
// long: each step doubles the time.
func effortFor(trial Effort, took time.Duration) Effort {
	steps := math.Round(math.Log2(float64(unlockTime) / float64(max(took, 1))))
	return min(max(trial+Effort(steps), LightestEffort), HeaviestEffort)
}

// tidyMemory gives what is not used any more back to the system, which empties
// it: scrypt's working memory, and what the libraries copied.
func tidyMemory() { debug.FreeOSMemory() }

// normal is a passphrase as it is used: composed and with compatible letters
// made one (NFKC), so that every keyboard and system gives the same, and
// without blanks at its ends (both as NIST SP 800-63B, 5.1.1.2, suggests).
func normal(passphrase string) string { return strings.TrimSpace(norm.NFKC.String(passphrase)) }

func newPassphraseSlot(passphrase string, effort Effort) (*age.X25519Recipient, []byte, error) {
	if advice := Advise(passphrase); !advice.Accepted {
		return nil, nil, &WeakError{advice}
	}
	if effort == 0 {
		var err error
		if effort, err = MeasureEffort(); err != nil {
			return nil, nil, err
		}
	}
	return newSlot(normal(passphrase), effort)
}

// newSlot makes an identity and wraps it with a secret text, as an age file
// that the age program itself opens too.
func newSlot(secret string, effort Effort) (*age.X25519Recipient, []byte, error) {
	identity, err := age.GenerateX25519Identity()
	if err != nil {
		return nil, nil, fmt.Errorf("vault: %w", err)
	}
	recipient, err := age.NewScryptRecipient(secret)
	if err != nil {
		return nil, nil, fmt.Errorf("vault: %w", err)
	}
	recipient.SetWorkFactor(int(effort))
	slot, err := encrypt([]byte(identity.String()+"\n"), recipient)
	tidyMemory()
	return identity.Recipient(), slot, err
}

// openSlot unwraps an identity, or fails with wrong when the secret is not the
// one, and with ErrRing when the slot is none.
func openSlot(slot []byte, secret string, wrong error) (*age.X25519Identity, error) {
	if secret == "" {
		return nil, wrong
	}
	key, err := age.NewScryptIdentity(secret)
	if err != nil {
		return nil, fmt.Errorf("vault: %w", err)
	}
	key.SetMaxWorkFactor(int(mostEffort))
	text, err := decrypt(slot, key)
	tidyMemory()
	if noMatch := new(age.NoIdentityMatchError); errors.As(err, &noMatch) {
		return nil, wrong
	}
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrRing, err)
	}
	identity, err := age.ParseX25519Identity(strings.TrimSpace(string(text)))
	clear(text)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrRing, err)
	}
	return identity, nil
}

func encrypt(plain []byte, to ...age.Recipient) ([]byte, error) {
	var out bytes.Buffer
	w, err := age.Encrypt(&out, to...)
	if err == nil {
		_, err = w.Write(plain)
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		return nil, fmt.Errorf("vault: %w", err)
	}
	return out.Bytes(), nil
}

func decrypt(sealed []byte, with age.Identity) ([]byte, error) {
	r, err := age.Decrypt(bytes.NewReader(sealed), with)
	if err != nil {
		return nil, err
	}
	return io.ReadAll(r)
}
