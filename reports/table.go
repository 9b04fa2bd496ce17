package reports

import (
	"math"
	"strings"

	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// tableSize is how large the drawings of the table of meals are, in millimetres
// of height, and the space between rows.
type tableSize struct{ key, row, between float64 }

// tableSizes: the roomiest that fits is taken.
var tableSizes = []tableSize{{34, 20, 7}, {29, 16, 6}, {24, 13, 5}, {21, 12, 4}, {18, 11, 3}, {16, 10, 2.6}, {14, 9, 2.2}}

const (
	mealWide = 25.0 // the column of the meals' names
	drawnGap = 1.2  // between drawings
	// leastDrawn is the height of the smallest palm that still reads well.
	leastDrawn = 8.0
)

// tableHead says whose hands the table counts in.
func (w writer) tableHead() stack {
	head := stack{heading("Your meals, hand by hand", w.hue)}
	if own := w.ownHand(); own != "" && !w.withoutNumbers {
		head = append(head, body(own))
	}
	return head
}

// table is the whole allotment in one block.
func (w writer) table(size tableSize) block {
	rows := append(w.tableHead(), gap(1),
		keyRow{writer: w, high: size.key, namesOnly: true})
	for _, m := range w.targets.Allotment.Meals {
		rows = append(rows, w.mealRow(m, size, w.shrink(size)))
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
	blocks := []block{append(w.tableHead(), keyRow{writer: w, high: size.key, namesOnly: true})}
	for _, m := range meals {
		blocks = append(blocks, w.mealRow(m, size, w.shrink(size)))
	}
	return append(blocks, w.dayRow())
}

func (w writer) mealRow(m hand.Meal, size tableSize, shrink float64) block {
	return measureRow{writer: w, name: clean(m.Name), measures: m.Measures, high: shrink * size.row, between: size.between}
}

// shrink is the share of its size that every drawing of the table gets, so that
// the fullest cell keeps its drawings on one line, within reason.
func (w writer) shrink(size tableSize) float64 {
	share := 1.0
	for _, m := range w.targets.Allotment.Meals {
		for _, k := range hand.Kinds() {
			count := math.Ceil(float64(m.Measures.Of(k)))
			if count == 0 {
				continue
			}
			wide := size.row * squat[k] * w.sheet.picture(pictureKey{kind: k}).aspect()
			share = math.Min(share, (columnWide(k, w.inner())-(count-1)*drawnGap)/(count*wide))
		}
	}
	return math.Max(share, leastDrawn/size.row)
}

func (w writer) dayRow() block {
	return measureRow{writer: w, name: "Whole day", measures: w.targets.Allotment.Day, total: true, between: 2.5}
}

// columnShares are the parts of the width that the measures' columns get: the
// cupped hand is the widest drawing.
var columnShares = [...]float64{hand.Palm: 0.225, hand.Fist: 0.255, hand.CuppedHand: 0.305, hand.Thumb: 0.215}

const columnBetween = 4.0

func columnWide(k hand.Kind, w float64) float64 {
	return (w-mealWide)*columnShares[k] - columnBetween
}

// columnAt is where a measure's column begins.
func columnAt(k hand.Kind, w float64) float64 {
	x := mealWide
	for before := range k {
		x += columnWide(before, w) + columnBetween
	}
	return x
}

// keyRow names the foods of each measure and shows one of it.
type keyRow struct {
	writer
	high      float64 // of the drawings
	namesOnly bool    // the foods' names and, with ranges, the size; else also how a measure is taken
}

func (r keyRow) texts(k hand.Kind, w float64) (foods, size []string) {
	foods = wrap(bold, sizeBody, w, sentence(k.Foods()))
	switch {
	case r.namesOnly && r.plan.Intake.Hand.Ranges && !r.withoutNumbers:
		return foods, wrap(regular, sizeBody, w, "one is "+together(r.amountAbout(k, 1)))
	case r.namesOnly:
		return foods, nil
	}
	size = wrap(regular, sizeBody, w, together(k.Counted(1)))
	if !r.withoutNumbers {
		size = append(size, wrap(regular, sizeBody, w, together(r.amountAbout(k, 1)))...)
	}
	return foods, append(size, wrap(regular, sizeBody, w, wordsMeasure[k])...)
}

// place returns where a measure stands: over its column of the table, or in a
// quarter of the width where the row stands alone.
func (r keyRow) place(k hand.Kind, w float64) (x, wide float64) {
	if !r.namesOnly {
		each := w / float64(len(hand.Kinds()))
		return float64(k) * each, each - columnBetween
	}
	return columnAt(k, w), columnWide(k, w)
}

func (r keyRow) height(w float64) float64 {
	most := 0
	for _, k := range hand.Kinds() {
		_, wide := r.place(k, w)
		foods, size := r.texts(k, wide)
		most = max(most, len(foods)+len(size))
	}
	return r.high + 1.5 + float64(most)*lineHeight(sizeBody) + 2.5
}

func (r keyRow) draw(c canvas) {
	for _, k := range hand.Kinds() {
		x, wide := r.place(k, c.w)
		x += c.x
		p := c.sheet.picture(pictureKey{kind: k, large: r.high >= largeFrom})
		high := math.Min(r.high, wide/p.aspect())
		c.place(p, x, c.y+r.high-high, high)
		foods, size := r.texts(k, wide)
		y := c.paragraph(bold, sizeBody, r.hue, x, c.y+r.high+1.5, foods)
		c.paragraph(regular, sizeBody, ink, x, y, size)
	}
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

// cell lays a count of drawings out in a width: wholes first, then the half, on
// a second line where the first is full.
func (r measureRow) cell(k hand.Kind, w float64) (places []drawnPlace, high float64) {
	halves := int(math.Round(2 * float64(r.measures.Of(k))))
	if r.total || halves <= 0 {
		return nil, 0
	}
	one := r.high * squat[k]
	wide := one * r.sheet.picture(pictureKey{kind: k}).aspect()
	x, y := 0.0, 0.0
	for i := range (halves + 1) / 2 {
		if x > 0 && x+wide > w+0.01 {
			x, y = 0, y+one+drawnGap
		}
		places = append(places, drawnPlace{half: i == halves/2, x: x, y: y, high: one})
		x += wide + drawnGap
	}
	return places, y + one
}

// squat makes the lower drawings as large to the eye as the palm.
var squat = [...]float64{hand.Palm: 1, hand.Fist: 0.7, hand.CuppedHand: 0.68, hand.Thumb: 0.85}

func (r measureRow) pictures(w float64) float64 {
	high := 0.0
	for _, k := range hand.Kinds() {
		_, h := r.cell(k, columnWide(k, w))
		high = max(high, h)
	}
	return high
}

func (r measureRow) texts(k hand.Kind, w float64) []string {
	n := r.measures.Of(k)
	if n == 0 {
		return []string{"–"}
	}
	lines := wrap(r.face(), sizeBody, w, r.counted(k, n))
	if r.withoutNumbers || r.plan.Intake.Hand.Ranges { // the key tells what one is
		return lines
	}
	return append(lines, wrap(regular, sizeBody, w, together(r.amountAbout(k, n)))...)
}

// counted tells a count, or the range that serves as well where the client is
// told ranges: "1 to 2 palms".
func (w writer) counted(k hand.Kind, n unit.Measure) string {
	if !w.plan.Intake.Hand.Ranges {
		return together(k.Counted(n))
	}
	words := w.targets.Contents[k].Between(n).Words(k)
	count, _, _ := strings.Cut(words, " "+k.Name())
	return together(count) + words[len(count):]
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
		lines = max(lines, len(r.texts(k, columnWide(k, w))))
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
	for _, k := range hand.Kinds() {
		x, w := c.x+columnAt(k, c.w), columnWide(k, c.w)
		places, high := r.cell(k, w)
		for _, p := range places {
			c.place(c.sheet.picture(pictureKey{kind: k, half: p.half}), x+p.x, top+pictures-high+p.y, p.high)
		}
		for i, line := range r.texts(k, w) {
			f, hue := r.face(), ink
			if i > 0 && !r.plan.Intake.Hand.Ranges {
				f, hue = regular, muted
			}
			c.text(f, sizeBody, hue, x, under+float64(i)*lineHeight(sizeBody)+ascent(sizeBody), line)
		}
	}
}
