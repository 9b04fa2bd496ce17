package vault

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
)

// scanned is what of the memory is looked at. It is not on the heap, and is
// emptied after each look, so that looking leaves no copies.
var scanned [1 << 16]byte

// timesInMemory counts how often this process has a key in memory that it may
// write to. The key is given inverted, or the search would find itself.
func timesInMemory(t *testing.T, inverted *[keySize]byte) (times int) {
	t.Helper()
	memory := must(os.Open("/proc/self/mem"))(t)
	defer memory.Close()
	for _, line := range strings.Split(string(must(os.ReadFile("/proc/self/maps"))(t)), "\n") {
		var from, to int64
		var mode string
		if n, _ := fmt.Sscanf(line, "%x-%x %s", &from, &to, &mode); n < 3 || !strings.HasPrefix(mode, "rw") {
			continue
		}
		for at := from; at < to; at += int64(len(scanned) - keySize) {
			n, err := memory.ReadAt(scanned[:min(int64(len(scanned)), to-at)], at)
			if err != nil && !errors.Is(err, io.EOF) {
				break // such as memory of a device
			}
			times += timesIn(scanned[:n], inverted)
			clear(scanned[:])
		}
	}
	return times
}

func timesIn(memory []byte, inverted *[keySize]byte) (times int) {
	for {
		at := bytes.IndexByte(memory, ^inverted[0])
		if at < 0 || at+keySize > len(memory) {
			return times
		}
		same := 0
		for same < keySize && memory[at+same] == ^inverted[same] {
			same++
		}
		if same == keySize {
			times++
		}
		memory = memory[at+1:]
	}
}

// After Lock the data key is nowhere in the memory of the program: not in ours,
// and not in what the libraries that unwrapped it left behind.
func TestLockTakesTheKeyOutOfMemory(t *testing.T) {
	made, _ := newKeys(t)
	ring := made.Ring().Bytes()
	made.Lock()
	k := must(must(ParseRing(ring))(t).Unlock(samplePhrase))(t)
	var inverted [keySize]byte
	for i := range inverted {
		inverted[i] = ^k.keys[0].key[i]
	}
	for range 100 {
		sealed := must(k.Seal("t", "r", "c", 1, []byte("body")))(t)
		must(k.Open("t", "r", "c", 1, sealed))(t)
	}
	sealedContainer(t, k, someBytes(100_000))
	if timesInMemory(t, &inverted) == 0 {
		t.Fatal("an open key is not found: the search shows nothing")
	}
	k.Lock()
	if times := timesInMemory(t, &inverted); times > 0 {
		t.Errorf("the key is in memory %d times after Lock", times)
	}
}
