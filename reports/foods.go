package reports

import (
	"strings"

	"handbreadth/domain/food"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
)

// foodGaps are the spaces between the groups of foods, in millimetres: the
// widest with which the page ends in the cautions is taken.
var foodGaps = []float64{9, 7, 5.5, 4, 2.8, 2, 1.2}

// foods is the page of foods to build meals from: what fills each measure,
// after the eating pattern and without what is avoided. The closing words follow
// on it where they do not stand on an earlier page.
func (w writer) foods(closed bool) []block {
	closing := 0.0
	if !closed {
		closing = stack(w.closing()).height(w.inner())
	}
	for _, between := range foodGaps {
		if blocks := w.foodGroups(between); stack(blocks).height(w.inner())+closing <= w.room() {
			return blocks
		}
	}
	return w.foodGroups(foodGaps[0])
}

func (w writer) foodGroups(between float64) []block {
	blocks := []block{title(PageFoods.Name(w.withoutNumbers), w.foodsWords())}
	baskets := w.plan.Baskets()
	for _, k := range hand.Kinds() {
		blocks = append(blocks, stack{beside{
			left:     handBlock{sheet: w.sheet, kind: k, high: 19},
			right:    w.foodsOf(k, baskets[k]),
			leftWide: 22, between: 4,
		}, gap(between)})
	}
	return blocks
}

func (w writer) foodsWords() string {
	words := wordsFoods
	if w.withoutNumbers {
		words = wordsFoodsPlain
	}
	if len(w.plan.Intake.Avoid) == 0 {
		return words
	}
	var names []string
	for _, a := range w.plan.Intake.Avoid {
		names = append(names, a.Name())
	}
	return words + " " + fill(wordsAvoid, listWords(names))
}

func (w writer) foodsOf(k hand.Kind, basket []food.Food) block {
	list := foodList{head: sentence(k.Foods()), lead: "one " + k.Name() + " of any of these", hue: w.hue}
	for _, f := range basket {
		entry := foodEntry{name: sentence(clean(f.Name))}
		if !w.withoutNumbers {
			entry.amount = w.gramsAbout(f.Portion * unit.Gram(w.targets.Calibration.Factors[k].Value))
		}
		list.entries = append(list.entries, entry)
	}
	return list
}

type foodEntry struct{ name, amount string }

func (e foodEntry) wide() float64 {
	return width(regular, sizeBody, strings.TrimSpace(e.name+"   "+e.amount))
}

// foodList is foods in columns, down first, with the grams of one measure.
type foodList struct {
	head, lead string
	entries    []foodEntry
	hue        colour
}

const foodBetween = 5.0 // between columns, at least

func (l foodList) rows(columns int) int { return (len(l.entries) + columns - 1) / columns }

// layout returns the widths of the columns, as many as fit side by side up to
// three; what is left of the width is shared out.
func (l foodList) layout(w float64) (wides []float64) {
	for columns := 3; ; columns-- {
		rows := l.rows(columns)
		wides = make([]float64, columns)
		left := w + foodBetween
		for i, e := range l.entries {
			wides[i/rows] = max(wides[i/rows], e.wide())
		}
		for _, wide := range wides {
			left -= wide + foodBetween
		}
		if left >= 0 || columns == 1 {
			for i := range wides {
				wides[i] += max(0, left) / float64(columns)
			}
			return wides
		}
	}
}

const headToFoods = 0.9

func (l foodList) height(w float64) float64 {
	return lineHeight(sizeHeading) + headToFoods + float64(l.rows(len(l.layout(w))))*lineHeight(sizeBody)
}

func (l foodList) draw(c canvas) {
	c.text(bold, sizeHeading, l.hue, c.x, c.y+ascent(sizeHeading), l.head)
	c.text(regular, sizeBody, muted, c.x+width(bold, sizeHeading, l.head+" "), c.y+ascent(sizeHeading), l.lead)
	wides := l.layout(c.w)
	rows := l.rows(len(wides))
	x := c.x
	for column, wide := range wides {
		for i := column * rows; i < min(len(l.entries), (column+1)*rows); i++ {
			e := l.entries[i]
			baseline := c.y + lineHeight(sizeHeading) + headToFoods + float64(i%rows)*lineHeight(sizeBody) + ascent(sizeBody)
			c.text(regular, sizeBody, ink, x, baseline, shortened(regular, sizeBody, c.w, e.name))
			if e.amount != "" {
				c.textRight(regular, sizeBody, muted, x+wide, baseline, e.amount)
			}
		}
		x += wide + foodBetween
	}
}
