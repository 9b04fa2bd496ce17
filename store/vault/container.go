package vault

import (
	"bufio"
	"bytes"
	"encoding/hex"
	"errors"
	"fmt"
	"io"

	"filippo.io/age"
)

// A container is a stream that carries its own key ring:
//
//	Handbreadth backup 1
//	Handbreadth keys 1 <checksum>
//	{the ring}
//	<an age file>
//
// The age file is encrypted in chunks of 64 kB, each of them authenticated; it
// is for three readers: the data key, the passphrase's identity and the recovery
// code's identity.

const containerTitle = "Handbreadth backup 1\n"

// NewWriter begins a container in w. What is written to the result is encrypted
// on its way; Close ends the container and must be called, for one without its
// end is refused. It does not close w.
func (k *Keys) NewWriter(w io.Writer) (io.WriteCloser, error) {
	k.mu.RLock()
	defer k.mu.RUnlock()
	if len(k.keys) == 0 {
		return nil, ErrLocked
	}
	if _, err := w.Write(append([]byte(containerTitle), k.ring.Bytes()...)); err != nil {
		return nil, err
	}
	return age.Encrypt(w, dataKeyReader{k.keys[len(k.keys)-1:]}, k.readers.passphrase, k.readers.recovery)
}

// Container is one that is being read: its key ring is known, its content is
// not opened yet.
type Container struct {
	ring *Ring
	body io.Reader
}

// OpenContainer reads the head of a container. It fails with ErrContainer when
// the stream is none, or with what r fails with.
func OpenContainer(r io.Reader) (*Container, error) {
	in := bufio.NewReaderSize(r, mostRing)
	if title, err := in.Peek(len(containerTitle)); err != nil || string(title) != containerTitle {
		return nil, noContainer(err, "its title is not there")
	}
	var ring []byte
	for i := range 3 {
		line, err := in.ReadSlice('\n')
		if err != nil {
			return nil, noContainer(err, "its head has no end")
		}
		if i > 0 {
			ring = append(ring, line...)
		}
	}
	parsed, err := ParseRing(ring)
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrContainer, err)
	}
	return &Container{ring: parsed, body: in}, nil
}

// noContainer keeps what the disk said, and calls the rest damage.
func noContainer(err error, why string) error {
	if err == nil || errors.Is(err, io.EOF) || errors.Is(err, bufio.ErrBufferFull) {
		return fmt.Errorf("%w: %s", ErrContainer, why)
	}
	return err
}

// Ring returns the container's own key ring: Unlock it with the passphrase of
// the day on which it was made, or Recover it with the recovery code.
func (c *Container) Ring() *Ring { return c.ring }

// NewReader gives the content. It fails with ErrKey when the keys are not those
// of the container, and with ErrContainer when its head is damaged; reading
// fails with ErrContainer where the content was changed or cut short. What was
// read before is sound, but only io.EOF means that it is whole.
func (c *Container) NewReader(k *Keys) (io.Reader, error) {
	k.mu.RLock()
	defer k.mu.RUnlock()
	if len(k.keys) == 0 {
		return nil, ErrLocked
	}
	body, err := age.Decrypt(c.body, dataKeyReader{k.keys})
	if noMatch := new(age.NoIdentityMatchError); errors.As(err, &noMatch) {
		return nil, fmt.Errorf("%w: the container", ErrKey)
	}
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrContainer, err)
	}
	return checkedReader{body}, nil
}

// checkedReader calls a failure of the decryption what it is.
type checkedReader struct{ body io.Reader }

func (r checkedReader) Read(p []byte) (int, error) {
	n, err := r.body.Read(p)
	if err != nil && err != io.EOF {
		err = fmt.Errorf("%w: %w", ErrContainer, err)
	}
	return n, err
}

// dataKeyReader lets age wrap the key of a file with a data key. Other programs
// skip the line it writes.
type dataKeyReader struct{ keys []*dataKey }

const stanzaType = "handbreadth-data-key"

func filePlace(id KeyID) []byte { return placeOf(id, "container", "", "file key", 1) }

// Wrap implements age.Recipient.
func (r dataKeyReader) Wrap(fileKey []byte) ([]*age.Stanza, error) {
	with := r.keys[len(r.keys)-1]
	body, err := sealValue(&with.key, with.id, filePlace(with.id), fileKey)
	return []*age.Stanza{{Type: stanzaType, Args: []string{with.id.String()}, Body: body}}, err
}

// Unwrap implements age.Identity.
func (r dataKeyReader) Unwrap(stanzas []*age.Stanza) ([]byte, error) {
	for _, s := range stanzas {
		if s.Type != stanzaType || len(s.Args) != 1 {
			continue
		}
		name, err := hex.DecodeString(s.Args[0])
		id, ok := KeyOf(s.Body)
		if err != nil || !ok || !bytes.Equal(name, id[:]) {
			return nil, errors.New("the line of the data key is damaged")
		}
		for _, key := range r.keys {
			if key.id == id {
				return openValue(&key.key, filePlace(id), s.Body)
			}
		}
	}
	return nil, age.ErrIncorrectIdentity
}
