// Package icons draws the program's small line icons and its own icon.
//
// Each icon is made of strokes on a grid of 24 units, 1.75 wide, turned into
// filled outlines in one colour: the screen's picture reader does not scale
// line widths, and its themed pictures recolour fills only.
package icons

import (
	"fmt"
	"sort"
	"strconv"
	"strings"

	"handbreadth/assets/internal/curve"
)

// Name is the name of an icon.
type Name string

// The icons.
const (
	Clients      Name = "clients"
	Practice     Name = "practice"
	Kitchen      Name = "kitchen"
	Help         Name = "help"
	Intake       Name = "intake"
	Screening    Name = "screening"
	Targets      Name = "targets"
	Measures     Name = "measures"
	Meals        Name = "meals"
	Handout      Name = "handout"
	Visits       Name = "visits"
	Search       Name = "search"
	Add          Name = "add"
	Check        Name = "check"
	Edit         Name = "edit"
	Lock         Name = "lock"
	ChevronRight Name = "chevron-right"
	ChevronDown  Name = "chevron-down"
	Print        Name = "print"
	Save         Name = "save"
	Moon         Name = "moon"
	Sun          Name = "sun"
	Note         Name = "note"
	Caution      Name = "caution"
	Hold         Name = "hold"
	Refer        Name = "refer"
	Undo         Name = "undo"
	Folder       Name = "folder"
	Close        Name = "close"
)

const (
	grid   = 24.0
	stroke = 1.75
	colour = "#22302E" // recoloured by the theme
)

// Names lists all icons in alphabetical order.
func Names() []Name {
	names := make([]Name, 0, len(shapes))
	for n := range shapes {
		names = append(names, n)
	}
	sort.Slice(names, func(i, j int) bool { return names[i] < names[j] })
	return names
}

// Icon returns the icon as an SVG picture with one filled path, or nil for a
// name that does not exist.
func Icon(name Name) []byte {
	shape, ok := shapes[name]
	if !ok {
		return nil
	}
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24"><path fill="%s" d="`, colour)
	for _, line := range shape {
		writeOutline(&b, line)
	}
	b.WriteString(`"/></svg>` + "\n")
	return []byte(b.String())
}

// writeOutline adds the outline of one stroke to the path data.
func writeOutline(b *strings.Builder, line curve.Curve) {
	half := stroke / 2
	c := curve.Ribbon(curve.Sample(line, 0.1), func(int) (float64, float64) { return half, half })
	b.WriteString("M" + xy(c[0]))
	for i := 1; i+2 < len(c); i += 3 {
		b.WriteString("C" + xy(c[i]) + " " + xy(c[i+1]) + " " + xy(c[i+2]))
	}
	b.WriteString("Z")
}

// xy writes a point to a hundredth of a unit.
func xy(p curve.Point) string {
	num := func(v float64) string { return strconv.FormatFloat(float64(int(v*100+0.5))/100, 'f', -1, 64) }
	return num(p.X) + "," + num(p.Y)
}
