package reports

import (
	drawn "handbreadth/assets/hand"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// lifeSize is the client's own hand at 1:1 on two sheets, of which each has a rule
// that shows whether the printer kept the size. A very large hand takes a third
// for the cupped hand.
func (w writer) lifeSize() [][]block {
	cup := cupAtSize{writer: w}
	fist := fistAtSize{writer: w}
	fist.most = max(w.room()-rounding-cup.height(w.inner()), fist.least())
	if fist.height(w.inner())+cup.height(w.inner()) <= w.room() {
		cup.below = max(0, fist.besideHigh(w.inner())-fist.height(w.inner()))
	} else {
		fist.most = w.room()
	}
	return [][]block{{openHand{w}}, {fist, cup}}
}

// rounding is what a page that is full is left for the engine, in millimetres.
const rounding = 0.1

// atSize is a drawing at 1:1, bare and with every line, and the same as it is
// placed on paper.
func (w writer) atSize(k hand.Kind) (drawn.Drawing, *picture) {
	key := pictureKey{kind: k, large: true, bare: true, alone: k == hand.Thumb}
	return drawingOf(key, w.house.hand), w.sheet.picture(key)
}

// spanOf returns a marked distance of a drawing.
func spanOf(d drawn.Drawing, name string) drawn.Span {
	for _, s := range d.Spans {
		if s.Name == name {
			return s
		}
	}
	return drawn.Span{}
}

// columnOf is a stack of texts at a width.
type columnOf struct {
	x, y, w float64
	texts   stack
}

func (t columnOf) draw(c canvas) {
	c.x, c.y, c.w = t.x, t.y, t.w
	t.texts.draw(c)
}

func plainPara(text string) para { return para{text: text, size: sizeBody, colour: ink, after: 1.6} }

// label names a measure, its foods and how much one is.
func (w writer) label(k hand.Kind) stack {
	texts := stack{para{text: sentence(k.Name()) + ": " + k.Foods(), face: bold, size: sizeBody, colour: w.hue, after: 0.4}}
	if w.withoutNumbers {
		return texts
	}
	return append(texts, plainPara(fill(wordsOneIs, w.massAndVolume(k))))
}

// massAndVolume is how much one measure is in this client's hand.
func (w writer) massAndVolume(k hand.Kind) string {
	content := w.targets.Contents[k]
	grams := w.gramsAbout(content.Grams.Value)
	if content.Volume == 0 {
		return grams
	}
	return w.volumeAbout(content.Volume) + " or " + grams
}

// openHand is the whole hand with the palm washed. The title and how to print
// stand over its thumb, what the palm holds under it, and the rule at its right.
type openHand struct{ writer }

func (h openHand) height(float64) float64 { return h.room() - rounding }

const (
	handToRule = 2.0
	mostLeft   = 8.0 // that a broad hand may reach into the margin
	creaseRoom = 3.5 // of the wrist that stays under its crease
)

// place returns where the drawing's top left lies, relative to the block's.
func (h openHand) place(d drawn.Drawing, w float64) (x, y float64) {
	x = max(w-ruleWide-handToRule-d.Width, -mostLeft)
	wrist := spanOf(d, "hand length").From.Y
	over := d.Height - h.height(w)
	underCrease := d.Height - wrist - creaseRoom
	return x, -max(0, over-max(0, underCrease)) // the wrist gives way first, then the fingertips
}

func (h openHand) draw(c canvas) {
	d, p := h.atSize(hand.Palm)
	x, y := h.place(d, c.w)
	c.placeLifeSize(p, c.x+x, c.y+y, frameBox{c.x - mostLeft, c.y, c.w + mostLeft, h.height(c.w)})
	middle := x + spanOf(d, "hand length").From.X
	crease := y + spanOf(d, "hand length").From.Y
	const beside, under = 0.64, 0.65 // of the palm's breadth: clear of the index finger, and of the thumb's ball
	breadth := h.house.hand.PalmBreadth
	columnOf{c.x, c.y, middle - beside*breadth, h.howToPrint()}.draw(c)
	foot := columnOf{x: c.x, w: middle - under*breadth, texts: append(append(h.label(hand.Palm), plainPara(wordsLay)), h.measured()...)}
	foot.y = c.y + min(crease-0.37*h.house.hand.PalmLength, h.height(c.w)-foot.texts.height(foot.w))
	foot.draw(c)
	c.rule(c.x+c.w-ruleWide, c.y+ruleHead, h.height(c.w)-ruleHead)
}

func (h openHand) howToPrint() stack {
	texts := stack{para{text: PageLifeSize.Name(h.withoutNumbers), face: bold, size: sizeValue, colour: ink, after: 2}}
	print := wordsPrint
	if h.withoutNumbers {
		print = wordsPrintPlain
	}
	for _, words := range []string{print, wordsCard} {
		texts = append(texts, plainPara(words))
	}
	return texts
}

// measured tells whether the hand was measured or comes from the height, and how
// much a palm may hold.
func (w writer) measured() stack {
	calibration := w.targets.Calibration
	words := wordsMeasured
	if calibration.Estimated {
		words = wordsEstimated
	}
	if w.withoutNumbers {
		return stack{plainPara(words)}
	}
	of, grams := calibration.Factors[hand.Palm], w.targets.Contents[hand.Palm].Grams.Value
	low, high := grams*unit.Gram(of.Low/of.Value), grams*unit.Gram(of.High/of.Value)
	return stack{plainPara(words + " " + fill(wordsMayHold, w.gramsAbout(low), w.gramsAbout(high)))}
}

// fistAtSize is the fist and the thumb side by side with a rule. Where the page
// is short, the wrist under the fist gives way.
type fistAtSize struct {
	writer
	most float64 // of its height
}

const (
	sizeBetween  = 5.0  // between drawings
	wristShare   = 0.14 // of the fist's drawing
	labelToThumb = 2.0
	mostBelow    = 6.0
	thumbToLabel = 1.0
)

func (f fistAtSize) least() float64 {
	d, _ := f.atSize(hand.Fist)
	return (1-wristShare)*d.Height + sizeBetween
}

// height is that of the fist. What stands beside it may reach down a little into
// the corner over the wrist of the cupped hand, which is empty.
func (f fistAtSize) height(w float64) float64 {
	return max(f.fistHigh()+sizeBetween, f.besideHigh(w)-mostBelow)
}

func (f fistAtSize) fistHigh() float64 {
	d, _ := f.atSize(hand.Fist)
	return min(d.Height, f.most-sizeBetween)
}

// beside is where the thumb and the words stand, from the block's left.
func (f fistAtSize) beside(w float64) (x, wide float64) {
	d, _ := f.atSize(hand.Fist)
	x = d.Width + sizeBetween
	return x, w - ruleWide - handToRule - x
}

func (f fistAtSize) besideHigh(w float64) float64 {
	_, wide := f.beside(w)
	t, _ := f.atSize(hand.Thumb)
	return f.label(hand.Fist).height(wide) + labelToThumb + t.Height + thumbToLabel + f.label(hand.Thumb).height(wide)
}

func (f fistAtSize) draw(c canvas) {
	d, p := f.atSize(hand.Fist)
	high := f.fistHigh()
	c.placeLifeSize(p, c.x, c.y, frameBox{c.x, c.y, d.Width, high})
	right, wide := f.beside(c.w)
	x, y := c.x+right, c.y
	above, under := f.label(hand.Fist), f.label(hand.Thumb)
	columnOf{x, y, wide, above}.draw(c)
	y += above.height(wide) + labelToThumb
	t, thumb := f.atSize(hand.Thumb)
	c.placeLifeSize(thumb, x, y, frameBox{x, y, min(t.Width, wide+handToRule), t.Height})
	columnOf{x, y + t.Height + thumbToLabel, wide, under}.draw(c)
	c.rule(c.x+c.w-ruleWide, c.y+ruleHead, high-ruleHead)
}

// cupAtSize is the cupped hand; its words stand over the wrist.
type cupAtSize struct {
	writer
	below float64 // what reaches into its corner from above
}

func (k cupAtSize) height(float64) float64 {
	d, _ := k.atSize(hand.CuppedHand)
	return d.Height
}

func (k cupAtSize) draw(c canvas) {
	d, p := k.atSize(hand.CuppedHand)
	c.placeLifeSize(p, c.x, c.y, frameBox{c.x, c.y, c.w + mostLeft, d.Height})
	const clear = 0.73 // of the drawing's width: beyond the heap
	x := clear * min(d.Width, c.w)
	columnOf{c.x + x, c.y + k.below + 3, c.w - x, k.label(hand.CuppedHand)}.draw(c)
}
