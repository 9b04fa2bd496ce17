package reports

import (
	"math"

	"handbreadth/domain/hand"
)

// tableSize is how large the drawings of the table of meals are, in millimetres
// of height, and the space between rows.
type tableSize struct{ key, row, between float64 }

// tableSizes: the roomiest that fits is taken.
var tableSizes = []tableSize{{21, 12, 5}, {18, 11, 4}, {16, 10, 3}, {14, 9, 2.4}}

const (
	mealWide = 25.0 // the column of the meals' names
	drawnGap = 1.2  // between drawings
)

// table is the whole allotment in one block.
func (w writer) table(size tableSize) block {
	rows := stack{
		heading("Your meals, hand by hand", w.hue),
		gap(1),
		keyRow{writer: w, high: size.key},
	}
	for _, m := range w.targets.Allotment.Meals {
		rows = append(rows, w.mealRow(m, size))
	}
	return append(rows, w.dayRow())
}

// tablePages is the allotment with a row a block, so that it may run on.
func (w writer) tablePages() []block {
	meals := w.targets.Allotment.Meals
	for _, size := range tableSizes {
		if whole := w.table(size); whole.height(w.inner()) <= w.room() {
			return []block{whole}
		}
	}
	size := tableSizes[len(tableSizes)-1]
	blocks := []block{stack{heading("Your meals, hand by hand", w.hue), keyRow{writer: w, high: size.key}}}
	for _, m := range meals {
		blocks = append(blocks, w.mealRow(m, size))
	}
	return append(blocks, w.dayRow())
}

func (w writer) mealRow(m hand.Meal, size tableSize) block {
	return measureRow{writer: w, name: clean(m.Name), measures: m.Measures, high: size.row, between: size.between}
}

func (w writer) dayRow() block {
	return measureRow{writer: w, name: "Whole day", measures: w.targets.Allotment.Day, total: true, between: 2.5}
}

// columns calls f with the place of each measure's column.
func columns(c canvas, f func(k hand.Kind, x, w float64)) {
	each := (c.w - mealWide) / float64(len(hand.Kinds()))
	for i, k := range hand.Kinds() {
		f(k, c.x+mealWide+float64(i)*each, each-2.5)
	}
}

func columnWide(w float64) float64 { return (w-mealWide)/float64(len(hand.Kinds())) - 2.5 }

// keyRow names the foods of each measure and shows one of it.
type keyRow struct {
	writer
	high      float64 // of the drawings
	explained bool    // say how the measure is taken
}

func (r keyRow) texts(k hand.Kind, w float64) (foods, size []string) {
	foods = wrap(bold, sizeBody, w, sentence(k.Foods()))
	size = wrap(regular, sizeBody, w, together(k.Counted(1)))
	if !r.withoutNumbers {
		size = append(size, wrap(regular, sizeBody, w, together(r.amountAbout(k, 1)))...)
	}
	if r.explained {
		size = append(size, wrap(regular, sizeBody, w, wordsMeasure[k])...)
	}
	return foods, size
}

func (r keyRow) height(w float64) float64 {
	most := 0
	for _, k := range hand.Kinds() {
		foods, size := r.texts(k, columnWide(w))
		most = max(most, len(foods)+len(size))
	}
	return r.high + 1.5 + float64(most)*lineHeight(sizeBody) + 2.5
}

func (r keyRow) draw(c canvas) {
	columns(c, func(k hand.Kind, x, w float64) {
		p := c.sheet.picture(pictureKey{kind: k, large: r.high >= 20})
		high := math.Min(r.high, w/p.aspect())
		c.place(p, x, c.y+r.high-high, high)
		foods, size := r.texts(k, w)
		y := c.paragraph(bold, sizeBody, r.hue, x, c.y+r.high+1.5, foods)
		c.paragraph(regular, sizeBody, ink, x, y, size)
	})
}

// measureRow is the measures of a meal, drawn and counted, or of the day,
// counted only.
type measureRow struct {
	writer
	name     string
	measures hand.Measures
	high     float64 // of one line of drawings
	between  float64 // over and under the row's rule
	total    bool
}

// drawnPlace is one drawing of a cell, relative to its top left.
type drawnPlace struct {
	half bool
	x, y float64
	high float64
}

// cell lays a count of drawings out in a width: wholes first, then the half.
func (r measureRow) cell(k hand.Kind, w float64) (places []drawnPlace, high float64) {
	halves := int(math.Round(2 * float64(r.measures.Of(k))))
	if r.total || halves <= 0 {
		return nil, 0
	}
	p := r.sheet.picture(pictureKey{kind: k})
	one := math.Min(r.high, w/p.aspect())
	if k == hand.Thumb || k == hand.CuppedHand || k == hand.Fist {
		one *= squat[k]
	}
	x, y := 0.0, 0.0
	for i := 0; i < (halves+1)/2; i++ {
		half := i == halves/2
		wide := one * p.aspect()
		if x > 0 && x+wide > w {
			x, y = 0, y+one+drawnGap
		}
		places = append(places, drawnPlace{half: half, x: x, y: y, high: one})
		x += wide + drawnGap
	}
	return places, y + one
}

// squat makes the lower drawings as large to the eye as the palm.
var squat = map[hand.Kind]float64{hand.Fist: 0.68, hand.CuppedHand: 0.68, hand.Thumb: 0.85}

func (r measureRow) pictures(w float64) float64 {
	high := 0.0
	for _, k := range hand.Kinds() {
		_, h := r.cell(k, columnWide(w))
		high = max(high, h)
	}
	return high
}

func (r measureRow) texts(k hand.Kind, w float64) []string {
	n := r.measures.Of(k)
	if n == 0 {
		return []string{"–"}
	}
	lines := wrap(r.face(), sizeBody, w, together(k.Counted(n)))
	if r.withoutNumbers {
		return lines
	}
	return append(lines, wrap(regular, sizeBody, w, together(r.amountAbout(k, n)))...)
}

func (r measureRow) face() face {
	if r.total {
		return bold
	}
	return regular
}

func (r measureRow) height(w float64) float64 {
	lines := len(wrap(bold, sizeBody, mealWide-2, r.name))
	for _, k := range hand.Kinds() {
		lines = max(lines, len(r.texts(k, columnWide(w))))
	}
	h := r.between + r.pictures(w) + float64(lines)*lineHeight(sizeBody)
	if !r.total {
		h += 1 + 0.4*r.between
	}
	return h
}

func (r measureRow) draw(c canvas) {
	weight, hue := 0.2, hairline
	if r.total {
		weight, hue = 0.5, r.hue
	}
	c.line(c.x, c.y+0.4*r.between, c.x+c.w, c.y+0.4*r.between, weight, hue)
	top := c.y + r.between
	pictures := r.pictures(c.w)
	under := top + pictures
	if !r.total {
		under++
	}
	nameTop := under
	c.paragraph(bold, sizeBody, ink, c.x, nameTop, wrap(bold, sizeBody, mealWide-2, r.name))
	columns(c, func(k hand.Kind, x, w float64) {
		places, high := r.cell(k, w)
		for _, p := range places {
			c.place(c.sheet.picture(pictureKey{kind: k, half: p.half}), x+p.x, top+pictures-high+p.y, p.high)
		}
		for i, line := range r.texts(k, w) {
			f, hue := r.face(), ink
			if i > 0 {
				f, hue = regular, muted
			}
			c.text(f, sizeBody, hue, x, under+float64(i)*lineHeight(sizeBody)+ascent(sizeBody), line)
		}
	})
}
