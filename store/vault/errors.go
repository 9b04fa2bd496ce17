package vault

import "errors"

// The sentinels that a caller may test for with errors.Is.
var (
	// ErrLocked: the keys are not in memory, or were taken out of it.
	ErrLocked = errors.New("the keys are locked away")
	// ErrPassphrase: not the passphrase of this key ring.
	ErrPassphrase = errors.New("wrong passphrase")
	// ErrCode: a well-formed recovery code, but not the one of this key ring.
	ErrCode = errors.New("wrong recovery code")
	// ErrTypo: no recovery code as it stands; see [CodeProblem].
	ErrTypo = errors.New("the recovery code has a slip")
	// ErrWeak: a passphrase that [Advise] does not accept.
	ErrWeak = errors.New("the passphrase is too easy to guess")
	// ErrRing: what should be a key ring is none, or is damaged.
	ErrRing = errors.New("the key ring is damaged")
	// ErrValue: a sealed value that was changed, cut short or moved, or that is
	// no sealed value.
	ErrValue = errors.New("the sealed value does not open")
	// ErrKey: a value or a container sealed with a key that is not at hand.
	ErrKey = errors.New("sealed with another key")
	// ErrContainer: not a container, or a damaged or shortened one.
	ErrContainer = errors.New("the container is damaged")
)

// WeakError is an ErrWeak that says why.
type WeakError struct{ Advice Advice }

// Error is the text for the log.
func (e *WeakError) Error() string { return "vault: " + ErrWeak.Error() + ": " + e.Advice.Words }

// Unwrap lets errors.Is find ErrWeak.
func (e *WeakError) Unwrap() error { return ErrWeak }
