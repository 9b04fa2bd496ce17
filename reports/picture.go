package reports

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"sync"

	drawn "handbreadth/assets/hand"
	"handbreadth/domain/hand"
)

// picture is one drawing of a hand measure, kept once a document and placed as
// often as it is needed.
type picture struct {
	name       string
	wide, high float64 // millimetres of the drawing itself
	stream     []byte  // its paths as PDF operators, y downwards, deflated
}

type pictureKey struct {
	kind  hand.Kind
	half  bool
	large bool // with every line
	bare  bool // without the food beside it
	alone bool // the thumb without the fist
}

// largeFrom is the height in millimetres from which every line is drawn.
const largeFrom = 26

// measureOf is the drawing of a measure.
func measureOf(k hand.Kind) drawn.Measure {
	return [...]drawn.Measure{drawn.Palm, drawn.Fist, drawn.CuppedHand, drawn.Thumb}[k]
}

func drawingOf(key pictureKey, of drawn.Dimensions) drawn.Drawing {
	detail := drawn.Medium
	if key.large {
		detail = drawn.Full
	}
	return drawn.Draw(measureOf(key.kind), of,
		drawn.Options{Half: key.half, WithFood: !key.bare, Detail: detail, Alone: key.alone})
}

func newPicture(key pictureKey, of drawn.Dimensions, wash colour) *picture {
	d := drawingOf(key, of)
	palette := [...]colour{drawn.Paper: white, drawn.Wash: wash, drawn.Ink: ink}
	var o ops
	for i, path := range d.Paths {
		if i == 0 || d.Paths[i-1].Fill != path.Fill {
			o.fillColour(palette[path.Fill])
		}
		for _, s := range path.Segments {
			o.segment(s)
		}
		o.op("f")
	}
	return &picture{
		name: fmt.Sprintf("Hand%d%t%t%t%t", key.kind, key.half, key.large, key.bare, key.alone),
		wide: d.Width, high: d.Height, stream: deflated(o.Bytes()),
	}
}

// packers are kept, as making one takes longer than packing a page.
// They pack fast: a page's operators are short, and text and fonts weigh more.
var packers = sync.Pool{New: func() any {
	w, _ := zlib.NewWriterLevel(nil, zlib.BestSpeed) // a known level does not fail
	return w
}}

// deflated packs a stream as the filter FlateDecode has it.
func deflated(content []byte) []byte {
	var out bytes.Buffer
	w := packers.Get().(*zlib.Writer)
	defer packers.Put(w)
	w.Reset(&out)
	// Writing to memory does not fail.
	_, _ = w.Write(content)
	_ = w.Close()
	return out.Bytes()
}

func (o *ops) segment(s drawn.Segment) {
	switch s.Op {
	case drawn.MoveTo:
		o.num(s.P[0].X, s.P[0].Y).op("m")
	case drawn.LineTo:
		o.num(s.P[0].X, s.P[0].Y).op("l")
	case drawn.CubicTo:
		o.num(s.P[0].X, s.P[0].Y, s.P[1].X, s.P[1].Y, s.P[2].X, s.P[2].Y).op("c")
	case drawn.Close:
		o.op("h")
	}
}

// kept are the pictures that were drawn for earlier papers: while one client's
// plan is worked on, the same eight come again and again.
var kept struct {
	lock     sync.Mutex
	pictures map[keptKey]*picture
}

type keptKey struct {
	pictureKey
	of   drawn.Dimensions
	wash colour
}

// mostKept is reached by a program that goes through many hands or colours.
const mostKept = 64

// picture returns a drawing in the document's own colours.
func (s *sheet) picture(key pictureKey) *picture {
	key.bare = key.bare || s.opt.bare[key.kind]
	if p, ok := s.pictures[key]; ok {
		return p
	}
	kept.lock.Lock()
	defer kept.lock.Unlock()
	full := keptKey{key, s.opt.hand, s.wash}
	p, ok := kept.pictures[full]
	if !ok {
		if kept.pictures == nil || len(kept.pictures) >= mostKept {
			kept.pictures = map[keptKey]*picture{}
		}
		p = newPicture(key, s.opt.hand, s.wash)
		kept.pictures[full] = p
	}
	s.pictures[key] = p
	return p
}

// aspect is the width of a drawing over its height.
func (p *picture) aspect() float64 { return p.wide / p.high }

// place puts a drawing at a height in millimetres, its top left at x and y.
func (c canvas) place(p *picture, x, y, high float64) {
	k := high / p.high * pointsPerMM
	px, py := c.at(x, y)
	o := c.vectors()
	o.op("q")
	fmt.Fprintf(o, "%.5f 0 0 %.5f ", k, -k)
	o.num(px, py).op("cm").op("/" + p.name + " Do").op("Q")
}

// placeLifeSize puts a drawing at 1:1, its top left at x and y, and shows only
// what lies within a box.
func (c canvas) placeLifeSize(p *picture, x, y float64, within frameBox) {
	o := c.vectors()
	o.op("q")
	c.box(o, within.x, within.y, within.w, within.h)
	o.op("W n")
	c.place(p, x, y, p.high)
	o.op("Q")
}

// frameBox is a box on the page in millimetres from its top left.
type frameBox struct{ x, y, w, h float64 }
