package reports

import (
	"fmt"
	"strings"
)

// letterhead stands at the head of each page: logo, practice and practitioner.
type letterhead struct{ house }

const (
	sizePractice = 13
	headGap      = 5.5 // under the letterhead's rule
	dot          = "  ·  "
)

func (l letterhead) lines(w float64) (practice, person []string) {
	if l.logo != nil {
		w -= l.logo.wide + 6
	}
	practice = wrap(bold, sizePractice, w, l.practice)
	person = wrap(regular, sizeSmall+1, w, joined(l.practitioner, l.registration))
	return practice, person
}

func joined(parts ...string) string { return strings.Join(cleanAll(parts), dot) }

func (l letterhead) textHeight(w float64) float64 {
	practice, person := l.lines(w)
	return float64(len(practice))*lineHeight(sizePractice) + float64(len(person))*lineHeight(sizeSmall+1)
}

func (l letterhead) bodyHeight(w float64) float64 {
	h := l.textHeight(w)
	if l.logo != nil {
		h = max(h, l.logo.high)
	}
	return max(h, lineHeight(sizePractice))
}

func (l letterhead) height(w float64) float64 { return l.bodyHeight(w) + 2.5 + headGap }

func (l letterhead) draw(c canvas) {
	h := l.bodyHeight(c.w)
	x := c.x
	if l.logo != nil {
		px, py := c.at(x, c.y+(h+l.logo.high)/2)
		o := c.vectors()
		o.op("q").num(l.logo.wide*pointsPerMM, 0, 0, l.logo.high*pointsPerMM, px, py).op("cm /" + logoName + " Do").op("Q")
		x += l.logo.wide + 6
	}
	practice, person := l.lines(c.w)
	y := c.y + (h-l.textHeight(c.w))/2
	y = c.paragraph(bold, sizePractice, l.hue, x, y, practice)
	c.paragraph(regular, sizeSmall+1, muted, x, y, person)
	c.line(c.x, c.y+h+2.5, c.x+c.w, c.y+h+2.5, 0.5, l.hue)
}

// pagefoot stands at the foot of each page. Its last line lies in the lower
// margin, beside the page number that maroto writes there.
type pagefoot struct {
	house
	always string // a sentence that stands on every page
}

func (p pagefoot) lines(w float64) []string {
	return wrap(regular, sizeSmall, w, strings.Join(append(append([]string{}, p.contact...), cleanAll([]string{p.footer})...), dot))
}

const (
	footGap    = 5.0  // over the foot's rule and under it
	numberWide = 24.0 // of the page number
)

func (p pagefoot) height(w float64) float64 {
	return footGap + float64(len(p.lines(w)))*lineHeight(sizeSmall)
}

func (p pagefoot) draw(c canvas) {
	y := c.y + footGap - 2.5
	c.line(c.x, y, c.x+c.w, y, 0.2, hairline)
	c.paragraph(regular, sizeSmall, muted, c.x, y+1.6, p.lines(c.w))
	baseline := c.y + p.height(c.w) + sizeSmall/pointsPerMM
	always := c.x + c.w - numberWide - width(italic, sizeSmall, p.always)
	c.text(regular, sizeSmall, muted, c.x, baseline, p.about(always-c.x-4))
	c.text(italic, sizeSmall, muted, always, baseline, p.always)
}

// about names the reader, the date and the version. A long name is cut.
func (p pagefoot) about(w float64) string {
	when := joined(p.date, p.version)
	if p.reader == "" {
		return when
	}
	return shortened(regular, sizeSmall, w-width(regular, sizeSmall, dot+when), p.reader) + dot + when
}

// shortened cuts a line that is too wide and says so with three dots.
func shortened(f face, size, most float64, line string) string {
	if width(f, size, line) <= most {
		return line
	}
	letters := []rune(line)
	for len(letters) > 0 && width(f, size, string(letters)+"…") > most {
		letters = letters[:len(letters)-1]
	}
	return fmt.Sprintf("%s…", strings.TrimRight(string(letters), " "))
}
