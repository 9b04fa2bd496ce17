package reports

import (
	"context"
	"fmt"
	"image"
	"math"
	"strings"
	"testing"

	"handbreadth/domain"
	"handbreadth/domain/hand"
	"handbreadth/domain/unit"
	"handbreadth/reports/preview"
)

// measureDPI is how fine the sheets are drawn to be measured.
const measureDPI = 200

// scan is a page as it was rendered, measured in millimetres.
type scan struct {
	image.Image
	name string
}

func px(mm float64) int { return int(math.Round(mm / mmPerInch * measureDPI)) }

func mm(px float64) float64 { return px * mmPerInch / measureDPI }

func (s scan) inked(x, y int) bool {
	r, g, b, _ := s.At(x, y).RGBA()
	const half = 0x7000
	return r < half && g < half && b < half
}

// across returns the middles of the lines that a level crosses between two
// places, in millimetres.
func (s scan) across(y, from, to float64) []float64 {
	return runs(px(from), px(to), func(x int) bool { return s.inked(x, px(y)) })
}

// down returns the middles of the lines that an upright crosses.
func (s scan) down(x, from, to float64) []float64 {
	return runs(px(from), px(to), func(y int) bool { return s.inked(px(x), y) })
}

func runs(from, to int, inked func(int) bool) (middles []float64) {
	start := -1
	for i := from; i <= to; i++ {
		switch on := i < to && inked(i); {
		case on && start < 0:
			start = i
		case !on && start >= 0:
			middles = append(middles, mm(float64(start+i)/2))
			start = -1
		}
	}
	return middles
}

// sized is a client with a hand, on a paper.
type sized struct {
	name  string
	size  hand.Size
	paper Paper
}

var hands = []sized{
	{"estimated", hand.Size{}, A4},
	{"small", hand.Size{PalmBreadth: 7.1, PalmLength: 9.6, HandLength: 16.1}, A4},
	{"large", hand.Size{PalmBreadth: 9.7, PalmLength: 12.6, HandLength: 21}, A4},
	{"estimated on Letter", hand.Size{}, Letter},
}

// lifeSizeOf renders the sheets of a client and returns them with the writer
// that knows where the drawings stand.
func lifeSizeOf(t *testing.T, h sized) (plan domain.Plan, w writer, pages []scan) {
	t.Helper()
	in := woman()
	in.Hand.Size = h.size
	plan = planOf(t, in)
	opt := options(t)
	opt.Paper, opt.Pages = h.paper, []Page{PageLifeSize}
	pdf, err := Handout(plan, opt)
	if err != nil {
		t.Fatal(err)
	}
	pictures, err := preview.Pages(context.Background(), pdf, measureDPI)
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range pictures[:len(pictures)-1] { // the last holds the cautions
		pages = append(pages, scan{p, fmt.Sprintf("%s, sheet %d", h.name, i+1)})
	}
	look, err := newHouse("Test", plan, opt)
	if err != nil {
		t.Fatal(err)
	}
	w = writer{house: look, sheet: newSheet(opt.Paper, look), plan: plan, targets: plan.Targets}
	if err := w.sheet.frame(letterhead{look}, pagefoot{house: look, always: wordsFoot}); err != nil {
		t.Fatal(err)
	}
	return plan, w, pages
}

// within checks a length to a hundredth, which is the accuracy that a life-size
// sheet promises.
func within(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.01*want {
		t.Errorf("%s measures %.1f mm, want %.1f mm", what, got, want)
	}
}

// TestLifeSizeMeasuresRight measures the rendered sheets: a centimetre is ten
// millimetres and an inch 25.4 (definition of 1959), the card of ISO/IEC 7810
// ID-1 85.6 mm, and the hand as large as the client's.
func TestLifeSizeMeasuresRight(t *testing.T) {
	for _, h := range hands {
		plan, w, pages := lifeSizeOf(t, h)
		want := 2
		if h.size.HandLength > 20 {
			want = 3
		}
		if len(pages) != want {
			t.Fatalf("%s: %d sheets, want %d", h.name, len(pages), want)
		}
		top := w.sheet.top + w.sheet.head.height(w.inner())
		right := w.sheet.left + w.inner()
		for _, page := range pages[:2] {
			checkRule(t, page, right-ruleWide/2, top)
		}
		size := plan.Targets.Calibration.Size
		checkOpenHand(t, w, pages[0], top, 10*float64(size.PalmBreadth), 10*float64(size.HandLength))
		checkFist(t, w, pages[1], top, 10*float64(size.PalmBreadth))
		checkThumb(t, w, pages[1], top)
		checkCup(t, w, pages, top, 10*float64(size.PalmBreadth))
	}
}

func checkRule(t *testing.T, page scan, axis, top float64) {
	t.Helper()
	const beyondHalves = 3.4 // from the axis: only whole marks reach so far
	cms := page.down(axis-beyondHalves, top+ruleHead-1, top+210)
	inches := page.down(axis+beyondHalves, top+ruleHead-1, top+210)
	var all []float64
	card := 0.0
	for _, y := range cms {
		if len(all) > 0 && y-all[len(all)-1] < 7 { // the mark of the card lies between two centimetres
			card = y - cms[0]
			continue
		}
		if len(all) > 0 && y-all[len(all)-1] > 15 { // below the rule
			break
		}
		all = append(all, y)
	}
	inches = inches[:min(len(inches), 1+int((all[len(all)-1]-all[0])/25.4))]
	if len(all) < 9 || len(inches) < 4 {
		t.Fatalf("%s: %d centimetres and %d inches are marked", page.name, len(all), len(inches))
	}
	for i := 1; i < len(all); i++ {
		within(t, fmt.Sprintf("%s: centimetre %d", page.name, i), all[i]-all[0], 10*float64(i))
	}
	for i := 1; i < len(inches); i++ {
		within(t, fmt.Sprintf("%s: inch %d", page.name, i), inches[i]-inches[0], 25.4*float64(i))
	}
	within(t, page.name+": a bank card", card, 85.6)
}

// checkOpenHand measures across the knuckles and from the wrist's crease to the
// tip of the middle finger.
func checkOpenHand(t *testing.T, w writer, page scan, top, breadth, length float64) {
	t.Helper()
	sheet := openHand{w}
	d, _ := w.atSize(hand.Palm)
	x, y := sheet.place(d, w.inner())
	x, y = x+w.sheet.left, y+top
	knuckles := spanOf(d, "palm breadth")
	lines := page.across(y+knuckles.From.Y, x, x+d.Width)
	if len(lines) < 4 {
		t.Fatalf("%s: %d lines cross the knuckles", page.name, len(lines))
	}
	// The thumb has two edges, then come the palm's edge, creases, and its other edge.
	within(t, page.name+": palm breadth", lines[len(lines)-1]-lines[2], breadth)
	middle := x + spanOf(d, "hand length").From.X
	tip := math.Inf(1)
	for at := -20.0; at < 10; at++ { // around the tip of the middle finger
		tip = min(tip, page.down(middle+at, y-2, y+d.Height/2)[0])
	}
	crease := nearest(page.down(middle, y+d.Height/2, y+d.Height), y+spanOf(d, "hand length").From.Y)
	within(t, page.name+": hand length", crease-tip, length)
}

func nearest(values []float64, to float64) float64 {
	best := values[0]
	for _, v := range values {
		if math.Abs(v-to) < math.Abs(best-to) {
			best = v
		}
	}
	return best
}

func checkFist(t *testing.T, w writer, page scan, top, breadth float64) {
	t.Helper()
	d, _ := w.atSize(hand.Fist)
	span := spanOf(d, "palm breadth")
	lines := page.across(top+span.From.Y, w.sheet.left, w.sheet.left+d.Width)
	within(t, page.name+": fist", lines[len(lines)-1]-lines[0], breadth)
}

// checkThumb measures the thumb from the top of its drawing, which is its tip,
// along its lean of 14 degrees.
func checkThumb(t *testing.T, w writer, page scan, top float64) {
	t.Helper()
	f := fistAtSize{writer: w}
	at, wide := f.beside(w.inner())
	d, _ := w.atSize(hand.Thumb)
	y := top + f.label(hand.Fist).height(wide) + labelToThumb
	span := spanOf(d, "thumb length")
	tip := page.down(w.sheet.left+at+span.To.X, y-1, y+15)[0]
	const lean = 14 * math.Pi / 180
	base := y + span.From.Y
	within(t, page.name+": thumb", (base-tip)/math.Cos(lean), 0.34*10*float64(w.targets.Calibration.Size.HandLength))
}

// checkCup measures the cupped hand from the top of its fingers to its lower
// edge. Its lines were drawn for a palm 83.2 mm broad and reach from -13.7 to 87.0.
func checkCup(t *testing.T, w writer, pages []scan, top, breadth float64) {
	t.Helper()
	page, from := pages[len(pages)-1], top
	if len(pages) == 2 {
		from += w.lifeSize()[1][0].height(w.inner())
	}
	d, _ := w.atSize(hand.CuppedHand)
	least, most := math.Inf(1), math.Inf(-1)
	words, _ := fistAtSize{writer: w}.beside(w.inner())
	for x := w.sheet.left; x < w.sheet.left+min(0.65*d.Width, words-1); x++ {
		for _, y := range page.down(x, from-1, from+d.Height+1) {
			least, most = min(least, y), max(most, y)
		}
	}
	within(t, page.name+": cupped hand", most-least, (13.7+87)*breadth/83.205)
}

func TestLifeSizeTellsWhoseHandItIs(t *testing.T) {
	in := woman()
	opt := options(t)
	opt.Pages = []Page{PageLifeSize}
	pdf, err := Handout(planOf(t, in), opt)
	path := written(t, pdf, err)
	text := strings.ReplaceAll(flow(t, path), "\u00a0", " ")
	mustHold(t, text, "Your hand, life size", "Print at 100%", "85.6 mm", wordsEstimated, "Your palm may hold ",
		"Palm: protein foods", "Fist: vegetables", "Cupped hand: starch and fruit", "Thumb: oils and nuts", " ml or ", wordsCare)
	checkBoxes(t, path, "estimated")

	in.Hand.Size = hand.Size{PalmBreadth: 7.1, PalmLength: 9.6, HandLength: 16.1}
	opt.Paper, opt.Style.System = Letter, unit.USCustomary
	pdf, err = Handout(planOf(t, in), opt)
	path = written(t, pdf, err)
	text = flow(t, path)
	mustHold(t, text, wordsMeasured)
	if strings.Contains(text, wordsEstimated) {
		t.Error("a measured hand is told as estimated")
	}
	checkBoxes(t, path, "measured")

	opt.WithoutNumbers = true
	pdf, err = Handout(planOf(t, in), opt)
	path = written(t, pdf, err)
	checkNoNumbers(t, flow(t, path))
	checkBoxes(t, path, "without numbers")
}

// The life-size sheets come only where they are chosen.
func TestLifeSizeIsOffByDefault(t *testing.T) {
	pdf, err := Handout(planOf(t, woman()), options(t))
	if strings.Contains(flow(t, written(t, pdf, err)), "actual size") {
		t.Error("the sheets are there unasked")
	}
}

// Every paper tells the amounts of the client's own hand. By hand: this palm is
// 7.1 × 9.6 cm beside 8.3205 × 11.258 cm, which is 0.728 of it.
func TestPapersTellTheClientsOwnAmounts(t *testing.T) {
	in := woman()
	in.Hand.Size = hand.Size{PalmBreadth: 7.1, PalmLength: 9.6, HandLength: 16.1}
	pdf, err := Handout(planOf(t, in), options(t))
	text := plain(flow(t, written(t, pdf, err)))
	// Chicken breast: 85 g in the reference palm (3 oz), so 61.9 g, told to fives.
	mustHold(t, text, "Your palm is about 0.7 of the usual one.", "Chicken breast 60 g")

	in.Hand.Size = hand.ReferenceSize()
	pdf, err = Handout(planOf(t, in), options(t))
	text = plain(flow(t, written(t, pdf, err)))
	if strings.Contains(text, "of the usual one") {
		t.Error("the usual hand is told as another")
	}
	mustHold(t, text, "Chicken breast 85 g")
}

// Measures are told as ranges where that was wished for.
func TestPapersTellRanges(t *testing.T) {
	in := woman()
	in.Hand.Ranges = true
	plan := planOf(t, in)
	pdf, err := Handout(plan, options(t))
	path := written(t, pdf, err)
	text := plain(flow(t, path))
	for _, meal := range plan.Targets.Allotment.Meals {
		for _, k := range hand.Kinds() {
			if n := meal.Measures.Of(k); n > 0 {
				mustHold(t, text, plan.Targets.Contents[k].Between(n).Words(k))
			}
		}
	}
	checkBoxes(t, path, "ranges")
}
