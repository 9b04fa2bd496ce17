package reports

import (
	"fmt"
	"math"
	"strings"
	"sync"

	"github.com/johnfercher/maroto/v2/pkg/consts/fontstyle"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"handbreadth/assets"
)

// face is one of the faces that papers use.
type face int

const (
	regular face = iota
	bold
	italic
)

const family = "go"

func (f face) style() fontstyle.Type {
	return [...]fontstyle.Type{fontstyle.Normal, fontstyle.Bold, fontstyle.Italic}[f]
}

func (f face) file() []byte {
	switch f {
	case bold:
		return assets.Bold()
	case italic:
		return assets.Italic()
	}
	return assets.Regular()
}

// Sizes of type in points. Body text is 12 pt, as clear-print guidance asks
// (design of the papers); small type is for sources and the foot of the page.
const (
	sizeTitle   = 23
	sizeFigure  = 30
	sizeValue   = 17
	sizeHeading = 14
	sizeBody    = 12
	sizeSmall   = 9
)

const (
	pointsPerMM  = 72 / 25.4
	bodyLeading  = 1.32 // line height over type size
	smallLeading = 1.17
)

// lineHeight is the height of a line of type in millimetres.
func lineHeight(size float64) float64 {
	if size < sizeBody {
		return size * smallLeading / pointsPerMM
	}
	return size * bodyLeading / pointsPerMM
}

// ascent is how far the baseline lies under the top of a line, in millimetres.
func ascent(size float64) float64 {
	const capAndLead = 0.98 // of the type size; leaves room for accents
	return size * capAndLead / pointsPerMM
}

// metrics holds the advance of each character of a face in thousandths of the
// type size, as a PDF counts it.
type metrics struct {
	lock sync.Mutex
	font *sfnt.Font
	buf  sfnt.Buffer
	wide [manyRunes]float64 // looked up before: the advance and one, else nought
}

// manyRunes covers every character that a cleaned text can hold.
const manyRunes = 0x10000

var faceMetrics = sync.OnceValue(func() [3]*metrics {
	var all [3]*metrics
	for _, f := range []face{regular, bold, italic} {
		parsed, err := sfnt.Parse(f.file())
		if err != nil {
			panic(fmt.Sprintf("reports: face %d cannot be read: %v", f, err))
		}
		all[f] = &metrics{font: parsed}
	}
	return all
})

func (m *metrics) advance(r rune) float64 {
	if r >= manyRunes {
		return 0
	}
	if kept := m.wide[r]; kept > 0 {
		return kept - 1
	}
	units := m.font.UnitsPerEm()
	w := 0.0
	if index, err := m.font.GlyphIndex(&m.buf, r); err == nil {
		if a, err := m.font.GlyphAdvance(&m.buf, index, fixed.Int26_6(units)<<6, font.HintingNone); err == nil {
			w = math.Round(float64(a) / 64 * 1000 / float64(units))
		}
	}
	m.wide[r] = w + 1
	return w
}

// width returns the width of a line of text in millimetres.
func width(f face, size float64, text string) float64 {
	m := faceMetrics()[f]
	m.lock.Lock()
	defer m.lock.Unlock()
	sum := 0.0
	for _, r := range text {
		sum += m.advance(r)
	}
	return sum / 1000 * size / pointsPerMM
}

// wrapped keeps the lines of the texts of the papers that are being made: each is
// asked for several times, to find its height and to draw it.
var wrapped struct {
	lock  sync.Mutex
	lines map[wrapKey][]string
}

type wrapKey struct {
	face       face
	size, most float64
	text       string
}

// forgetWraps lets go of the texts once a paper is made.
func forgetWraps() {
	wrapped.lock.Lock()
	defer wrapped.lock.Unlock()
	wrapped.lines = nil
}

// wrap breaks a text into lines no wider than most millimetres. A word that is
// wider by itself is broken. An empty text has no lines. The lines are shared and
// must not be changed.
func wrap(f face, size, most float64, text string) []string {
	key := wrapKey{f, size, most, text}
	wrapped.lock.Lock()
	defer wrapped.lock.Unlock()
	lines, known := wrapped.lines[key]
	if !known {
		lines = broken(f, size, most, text)
		if wrapped.lines == nil {
			wrapped.lines = map[wrapKey][]string{}
		}
		wrapped.lines[key] = lines
	}
	return lines[:len(lines):len(lines)]
}

// broken is [wrap] without keeping the lines.
func broken(f face, size, most float64, text string) []string {
	const rounding = 1e-9
	var lines []string
	line, wide := "", 0.0
	space := width(f, size, " ")
	for word := range strings.SplitSeq(text, " ") {
		if word == "" {
			continue
		}
		own := width(f, size, word)
		if line != "" && wide+space+own <= most+rounding {
			line, wide = line+" "+word, wide+space+own
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		line, wide = word, own
		if own > most {
			var full []string
			full, line = breakWord(f, size, most, word)
			lines, wide = append(lines, full...), width(f, size, line)
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// breakWord cuts a word into full lines and a rest.
func breakWord(f face, size, most float64, word string) (full []string, rest string) {
	for _, r := range word {
		if rest != "" && width(f, size, rest+string(r)) > most {
			full = append(full, rest)
			rest = ""
		}
		rest += string(r)
	}
	return full, rest
}

// fitting returns the size of type at which a line fits a width: the one given,
// or a smaller one.
func fitting(f face, size, most float64, line string) float64 {
	if wide := width(f, size, line); wide > most {
		return size * most / wide
	}
	return size
}

// together keeps a quantity such as "1880 kcal" on one line.
func together(text string) string { return strings.ReplaceAll(text, " ", string(noBreakSpace)) }
