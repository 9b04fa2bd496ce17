// Package assets holds what the program shows but does not compute: the type
// family, the icons and (in assets/hand) the drawings of the hand measures.
package assets

import (
	"fmt"
	"sync"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/gomedium"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
)

// Regular is the upright face of the type family, as a TrueType file.
func Regular() []byte { return goregular.TTF }

// Medium is the slightly heavier face, for labels.
func Medium() []byte { return gomedium.TTF }

// Bold is the heavy face, for headings.
func Bold() []byte { return gobold.TTF }

// Italic is the slanted face, for sources and remarks.
func Italic() []byte { return goitalic.TTF }

// faces are the four faces by name.
func faces() map[string][]byte {
	return map[string][]byte{"regular": Regular(), "medium": Medium(), "bold": Bold(), "italic": Italic()}
}

// Missing returns the characters of text that at least one face of the family
// cannot show, each once, in the order of the text. Line breaks and tabs count
// as shown.
func Missing(text string) []rune {
	var missing []rune
	seen := map[rune]bool{'\n': true, '\r': true, '\t': true}
	fonts := parsed()
	for _, r := range text {
		if seen[r] {
			continue
		}
		seen[r] = true
		for _, f := range fonts {
			if !has(f, r) {
				missing = append(missing, r)
				break
			}
		}
	}
	return missing
}

func has(f *sfnt.Font, r rune) bool {
	var buf sfnt.Buffer
	i, err := f.GlyphIndex(&buf, r)
	return err == nil && i != 0
}

// parsed reads the faces once. They are compiled in, so one that cannot be read
// is a fault of the build, not of the user.
var parsed = sync.OnceValue(func() []*sfnt.Font {
	var out []*sfnt.Font
	for name, data := range faces() {
		f, err := sfnt.Parse(data)
		if err != nil {
			panic(fmt.Sprintf("assets: the %s face cannot be read: %v", name, err))
		}
		out = append(out, f)
	}
	return out
})
