package hand

import (
	"bytes"
	"fmt"
	"strconv"
)

// Palette holds the colours of the roles as "#RRGGBB".
type Palette struct{ Ink, Wash, Paper string }

// colour returns the colour of a role.
func (p Palette) colour(r Role) string {
	switch r {
	case Ink:
		return p.Ink
	case Wash:
		return p.Wash
	}
	return p.Paper
}

// SVG writes the drawing as a picture whose longer side is sizePx pixels. It
// uses only paths with hex fills, which every SVG reader understands.
func SVG(d Drawing, p Palette, sizePx float64) []byte {
	k := 1.0
	if longer := max(d.Width, d.Height); longer > 0 {
		k = sizePx / longer
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%s" height="%s" viewBox="0 0 %s %s">`,
		num(d.Width*k), num(d.Height*k), num(d.Width), num(d.Height))
	for i, path := range d.Paths {
		if i == 0 || d.Paths[i-1].Fill != path.Fill || path.Fill != Ink {
			if i > 0 {
				b.WriteString(`"/>`)
			}
			fmt.Fprintf(&b, `<path fill="%s" d="`, p.colour(path.Fill))
		}
		writePath(&b, path)
	}
	if len(d.Paths) > 0 {
		b.WriteString(`"/>`)
	}
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// writePath adds one shape to the path data. Neighbouring lines share one
// element: all run the same way round, so that their crossings stay filled.
func writePath(b *bytes.Buffer, path Path) {
	for _, seg := range path.Segments {
		b.WriteByte("MLCZ"[seg.Op])
		for i, q := range seg.points() {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(num(q.X) + "," + num(q.Y))
		}
	}
}

// num writes a length with two decimals at most: a hundredth of a millimetre.
func num(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	if s == "-0" {
		return "0"
	}
	return s
}
