package reports

import (
	"strings"

	"handbreadth/domain/food"
	"handbreadth/domain/hand"
)

// foods is the page of foods to build meals from: what fills each measure,
// after the eating pattern and without what is avoided.
func (w writer) foods() []block {
	blocks := []block{title(PageFoods.Name(w.withoutNumbers), w.foodsWords())}
	baskets := w.plan.Baskets()
	for _, k := range hand.Kinds() {
		blocks = append(blocks, stack{beside{
			left:     handBlock{sheet: w.sheet, kind: k, high: 19},
			right:    stack{heading(sentence(k.Foods()), w.hue), w.foodsOf(k, baskets[k])},
			leftWide: 25, between: 5,
		}, gap(5)})
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
	list := foodList{lead: "One " + k.Name() + " of any of these:"}
	for _, f := range basket {
		entry := foodEntry{name: sentence(clean(f.Name))}
		if !w.withoutNumbers {
			entry.amount = w.style.Grams(f.Portion)
		}
		list.entries = append(list.entries, entry)
	}
	return list
}

type foodEntry struct{ name, amount string }

// foodList is foods in columns, down first, with the grams of one measure.
type foodList struct {
	lead    string
	entries []foodEntry
}

const foodBetween = 7.0 // between columns

// columns returns how many columns fit: three, or two where a name is long.
func (l foodList) columns(w float64) int {
	for count := 3; count > 1; count-- {
		if l.fits(w, count) {
			return count
		}
	}
	return 1
}

func (foodList) columnWide(w float64, count int) float64 {
	return (w - float64(count-1)*foodBetween) / float64(count)
}

func (l foodList) fits(w float64, count int) bool {
	each := l.columnWide(w, count)
	for _, e := range l.entries {
		if width(regular, sizeBody, strings.TrimSpace(e.name+"  "+e.amount)) > each {
			return false
		}
	}
	return true
}

func (l foodList) rows(count int) int { return (len(l.entries) + count - 1) / count }

func (l foodList) height(w float64) float64 {
	return float64(1+l.rows(l.columns(w)))*lineHeight(sizeBody) + 1
}

func (l foodList) draw(c canvas) {
	c.text(regular, sizeBody, muted, c.x, c.y+ascent(sizeBody), l.lead)
	count := l.columns(c.w)
	rows, each := l.rows(count), l.columnWide(c.w, count)
	for i, e := range l.entries {
		x := c.x + float64(i/rows)*(each+foodBetween)
		baseline := c.y + float64(1+i%rows)*lineHeight(sizeBody) + 1 + ascent(sizeBody)
		c.text(regular, sizeBody, ink, x, baseline, shortened(regular, sizeBody, each, e.name))
		if e.amount != "" {
			c.textRight(regular, sizeBody, muted, x+each, baseline, e.amount)
		}
	}
}
