package reports

// gap is empty space.
type gap float64

func (g gap) height(float64) float64 { return float64(g) }
func (gap) draw(canvas)              {}

// para is a paragraph of running text.
type para struct {
	text   string
	face   face
	size   float64
	colour colour
	after  float64 // space under it
}

func body(text string) para { return para{text: text, size: sizeBody, colour: ink, after: 2.2} }

func (p para) height(w float64) float64 {
	return float64(len(wrap(p.face, p.size, w, p.text)))*lineHeight(p.size) + p.after
}

func (p para) draw(c canvas) {
	c.paragraph(p.face, p.size, p.colour, c.x, c.y, wrap(p.face, p.size, c.w, p.text))
}

// title opens a kind of page.
func title(text, under string) block {
	head := para{text: text, face: bold, size: sizeTitle, colour: ink, after: 0.5}
	if under == "" {
		return stack{head, gap(4)}
	}
	return stack{head, para{text: under, size: sizeBody, colour: muted, after: 3.5}}
}

func heading(text string, hue colour) para {
	return para{text: text, face: bold, size: sizeHeading, colour: hue, after: 1.2}
}

// stack is blocks that stay together, one under the other.
type stack []block

func (s stack) height(w float64) float64 {
	sum := 0.0
	for _, b := range s {
		sum += b.height(w)
	}
	return sum
}

func (s stack) draw(c canvas) {
	for _, b := range s {
		b.draw(c)
		c.y += b.height(c.w)
	}
}

// beside is two blocks side by side, the left one of a set width.
type beside struct {
	left, right block
	leftWide    float64
	between     float64
}

func (b beside) height(w float64) float64 {
	return max(b.left.height(b.leftWide), b.right.height(w-b.leftWide-b.between))
}

func (b beside) draw(c canvas) {
	left, right := c, c
	left.w = b.leftWide
	right.x, right.w = c.x+b.leftWide+b.between, c.w-b.leftWide-b.between
	b.left.draw(left)
	b.right.draw(right)
}

// listed is a sentence with a dash before it.
type listed struct{ text string }

const listIndent = 6.0

func (l listed) height(w float64) float64 {
	return float64(len(wrap(regular, sizeBody, w-listIndent, l.text)))*lineHeight(sizeBody) + 0.9
}

func (l listed) draw(c canvas) {
	c.text(regular, sizeBody, ink, c.x, c.y+ascent(sizeBody), "–")
	c.paragraph(regular, sizeBody, ink, c.x+listIndent, c.y, wrap(regular, sizeBody, c.w-listIndent, l.text))
}

// ruled is a block with a thick line to its left.
type ruled struct {
	block
	hue colour
}

const ruleIndent = 6.0

func (r ruled) height(w float64) float64 { return r.block.height(w-ruleIndent) + 1 }

func (r ruled) draw(c canvas) {
	h := r.height(c.w)
	c.line(c.x+0.6, c.y+0.6, c.x+0.6, c.y+h-1.5, 1.1, r.hue)
	c.x, c.w = c.x+ruleIndent, c.w-ruleIndent
	r.block.draw(c)
}

// toWrite is a label with what was agreed, or with lines to write it on.
type toWrite struct {
	label, text string
	lines       int
	hue         colour
}

const writingLine = 9.5

func (t toWrite) height(w float64) float64 {
	h := lineHeight(sizeBody) + 1
	if t.text == "" {
		return h + float64(t.lines)*writingLine + 2
	}
	return h + float64(len(wrap(regular, sizeBody, w, t.text)))*lineHeight(sizeBody) + 2
}

func (t toWrite) draw(c canvas) {
	c.text(bold, sizeBody, t.hue, c.x, c.y+ascent(sizeBody), t.label)
	y := c.y + lineHeight(sizeBody) + 1
	if t.text != "" {
		c.paragraph(regular, sizeBody, ink, c.x, y, wrap(regular, sizeBody, c.w, t.text))
		return
	}
	for i := 1; i <= t.lines; i++ {
		at := y + float64(i)*writingLine - 1
		c.line(c.x, at, c.x+c.w, at, 0.25, muted)
	}
}
