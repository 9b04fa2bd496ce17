package vault

import (
	"bytes"
	"encoding/hex"
	"encoding/json"
	"errors"
	"os"
	"testing"

	"golang.org/x/crypto/chacha20poly1305"
	"pgregory.net/rapid"
)

func unhex(t testing.TB, text string) []byte {
	t.Helper()
	return must(hex.DecodeString(text))(t)
}

// The vector of draft-irtf-cfrg-xchacha-03, appendix A.3.1 (seen second-hand, as
// several libraries quote it, golang.org/x/crypto among them), in the envelope
// of a sealed value. Its associated data stands where a place would.
func TestTheDraftsVectorInASealedValue(t *testing.T) {
	key := [keySize]byte(unhex(t, "808182838485868788898a8b8c8d8e8f909192939495969798999a9b9c9d9e9f"))
	nonce := [nonceSize]byte(unhex(t, "404142434445464748494a4b4c4d4e4f5051525354555657"))
	place := unhex(t, "50515253c0c1c2c3c4c5c6c7")
	plain := []byte("Ladies and Gentlemen of the class of '99: If I could offer you only one tip for the future, sunscreen would be it.")
	id := KeyID{0xde, 0xad, 0xbe, 0xef}
	want := unhex(t, "02"+"deadbeef"+"404142434445464748494a4b4c4d4e4f5051525354555657"+
		"bd6d179d3e83d43b9576579493c0e939572a1700252bfaccbed2902c21396cbb"+
		"731c7f1b0b4aa6440bf3a82f4eda7e39ae64c6708c54c216cb96b72e1213b452"+
		"2f8c9ba40db5d945b11b69b982c1bb9e3f3fac2bc369488f76b2383565d3fff9"+
		"21f9664c97637da9768812f615c68b13b52e"+"c0875924c1c7987947deafd8780acf49")
	if got := must(sealWith(&key, id, nonce, place, plain))(t); !bytes.Equal(got, want) {
		t.Errorf("sealed as %x\nwant      %x", got, want)
	}
	if got := must(openValue(&key, place, want))(t); !bytes.Equal(got, plain) {
		t.Errorf("opened as %q", got)
	}
	if named, ok := KeyOf(want); !ok || named != id {
		t.Errorf("the key is %v", named)
	}
}

// Values that libsodium 1.0.18 sealed (through PyNaCl 1.5), at places written
// by another program from the description of the format.
func TestValuesThatLibsodiumSealed(t *testing.T) {
	var cases []struct {
		Table, Row, Column     string
		Version                int
		Plain, Key, ID, Sealed string
	}
	if err := json.Unmarshal(must(os.ReadFile("testdata/libsodium.json"))(t), &cases); err != nil {
		t.Fatal(err)
	}
	if len(cases) < 5 {
		t.Fatalf("%d cases", len(cases))
	}
	for _, c := range cases {
		key := &dataKey{KeyID(unhex(t, c.ID)), [keySize]byte(unhex(t, c.Key))}
		k := &Keys{keys: []*dataKey{key}}
		plain := must(k.Open(c.Table, c.Row, c.Column, c.Version, unhex(t, c.Sealed)))(t)
		if !bytes.Equal(plain, unhex(t, c.Plain)) {
			t.Errorf("%s %s: opened as %x", c.Table, c.Row, plain)
		}
		nonce := [nonceSize]byte(unhex(t, c.Sealed)[headSize:])
		place := placeOf(key.id, c.Table, c.Row, c.Column, c.Version)
		if got := must(sealWith(&key.key, key.id, nonce, place, plain))(t); hex.EncodeToString(got) != c.Sealed {
			t.Errorf("%s %s: sealed as %x", c.Table, c.Row, got)
		}
	}
}

// The composition is the one of golang.org/x/crypto.
func TestComposedAsTheLibraryDoes(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		key := [keySize]byte(rapid.SliceOfN(rapid.Byte(), keySize, keySize).Draw(rt, "key"))
		nonce := [nonceSize]byte(rapid.SliceOfN(rapid.Byte(), nonceSize, nonceSize).Draw(rt, "nonce"))
		place, plain := rapid.SliceOf(rapid.Byte()).Draw(rt, "place"), rapid.SliceOf(rapid.Byte()).Draw(rt, "plain")
		whole := must(chacha20poly1305.NewX(key[:]))(t)
		sealed := must(sealWith(&key, KeyID{}, nonce, place, plain))(t)
		if want := whole.Seal(nil, nonce[:], plain, place); !bytes.Equal(sealed[headSize+nonceSize:], want) {
			rt.Errorf("sealed as %x, want %x", sealed, want)
		}
	})
}

type where struct {
	table, row, column string
	version            int
}

func drawPlace(rt *rapid.T, label string) where {
	text := rapid.SampledFrom([]string{"", "a", "ab", "b", "abc", "c", "record", "rec", "ord"})
	return where{
		text.Draw(rt, label+" table"), text.Draw(rt, label+" row"), text.Draw(rt, label+" column"),
		rapid.SampledFrom([]int{0, 1, 2, -1, 1 << 40}).Draw(rt, label+" version"),
	}
}

func TestAValueOpensAtItsPlaceOnly(t *testing.T) {
	k, _ := newKeys(t)
	rapid.Check(t, func(rt *rapid.T) {
		here, there := drawPlace(rt, "here"), drawPlace(rt, "there")
		plain := rapid.SliceOf(rapid.Byte()).Draw(rt, "plain")
		sealed := must(k.Seal(here.table, here.row, here.column, here.version, plain))(t)
		if len(sealed) != len(plain)+Overhead {
			rt.Errorf("%d bytes became %d", len(plain), len(sealed))
		}
		got, err := k.Open(there.table, there.row, there.column, there.version, sealed)
		switch {
		case here == there && (err != nil || !bytes.Equal(got, plain)):
			rt.Errorf("%x came back as %x, %v", plain, got, err)
		case here != there && !errors.Is(err, ErrValue):
			rt.Errorf("sealed for %+v, opened for %+v: %x, %v", here, there, got, err)
		}
	})
}

func TestChangedValuesAreRefused(t *testing.T) {
	k, _ := newKeys(t)
	sealed := must(k.Seal("t", "r", "c", 1, []byte("the answer")))(t)
	for bit := range len(sealed) * 8 {
		changed := bytes.Clone(sealed)
		changed[bit/8] ^= 1 << (bit % 8)
		if _, err := k.Open("t", "r", "c", 1, changed); !errors.Is(err, ErrValue) && !errors.Is(err, ErrKey) {
			t.Errorf("bit %d flipped: %v", bit, err)
		}
	}
	for n := range len(sealed) {
		if _, err := k.Open("t", "r", "c", 1, sealed[:n]); !errors.Is(err, ErrValue) {
			t.Errorf("cut to %d bytes: %v", n, err)
		}
	}
	if _, err := k.Open("t", "r", "c", 1, append(bytes.Clone(sealed), 0)); !errors.Is(err, ErrValue) {
		t.Errorf("made longer: %v", err)
	}
	other, _ := newKeys(t)
	_, err := other.Open("t", "r", "c", 1, sealed)
	wantErr(t, err, ErrKey)
}

func TestEqualValuesAreSealedDifferently(t *testing.T) {
	k, _ := newKeys(t)
	seen := map[string]bool{}
	for range 1000 {
		sealed := must(k.Seal("t", "r", "c", 1, []byte("same")))(t)
		seen[string(sealed[headSize:headSize+nonceSize])] = true
	}
	if len(seen) != 1000 {
		t.Errorf("%d nonces for 1000 values", len(seen))
	}
}

func FuzzOpenValue(f *testing.F) {
	k, _ := newKeys(f)
	sealed := must(k.Seal("t", "r", "c", 1, []byte("body")))(f)
	f.Add(sealed)
	f.Add(sealed[:Overhead])
	f.Add([]byte{Mark})
	f.Add([]byte{})
	f.Fuzz(func(t *testing.T, in []byte) {
		plain, err := k.Open("t", "r", "c", 1, in)
		if err == nil && !bytes.Equal(in, sealed) {
			t.Errorf("%x opened as %x, and nobody sealed it", in, plain)
		}
		if err != nil && !errors.Is(err, ErrValue) && !errors.Is(err, ErrKey) {
			t.Errorf("%x: %v", in, err)
		}
	})
}

func BenchmarkSeal(b *testing.B)    { benchmarkSealer(b, 4000, false) }
func BenchmarkOpen(b *testing.B)    { benchmarkSealer(b, 4000, true) }
func BenchmarkOpen100(b *testing.B) { benchmarkSealer(b, 100, true) }

// benchmarkSealer seals or opens a body of so many bytes: a form has about 4000,
// an identity about 100.
func benchmarkSealer(b *testing.B, size int, open bool) {
	k, _ := newKeys(b)
	plain := make([]byte, size)
	sealed := must(k.Seal("record", "client/kind/id", "body", 1, plain))(b)
	b.SetBytes(int64(size))
	for b.Loop() {
		if open {
			must(k.Open("record", "client/kind/id", "body", 1, sealed))(b)
		} else {
			must(k.Seal("record", "client/kind/id", "body", 1, plain))(b)
		}
	}
}
