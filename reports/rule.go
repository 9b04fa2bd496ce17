package reports

import "fmt"

// The rule is a scale in centimetres and inches, drawn upright. It begins at a
// mark under its head, which names the two units.
const (
	ruleWide      = 17.0 // with its numbers on both sides
	ruleHead      = 5.0
	mmPerCM       = 10
	inchParts     = 8
	bankCard      = 85.6 // mm wide: ISO/IEC 7810, ID-1
	rulePen       = 0.25
	tickWhole     = 4.0
	tickHalf      = 2.8
	tickPart      = 1.6
	mostRule      = 200.0 // mm
	numberFromAxe = 4.6
)

// ruleLength is the length of a rule in a height: whole centimetres.
func ruleLength(high float64) float64 {
	const label = 2.0 // half of the last number
	return float64(int(min(high-label, mostRule)/mmPerCM)) * mmPerCM
}

// rule draws a scale from a height down, as long as fits.
func (c canvas) rule(x, y, high float64) {
	axis, long := x+ruleWide/2, ruleLength(high)
	c.textRight(regular, sizeSmall, muted, axis-1, y-1.6, "cm")
	c.text(regular, sizeSmall, muted, axis+1, y-1.6, "in")
	c.line(axis, y, axis, y+long, rulePen, ink)
	for mm := 0; float64(mm) <= long; mm++ {
		at := y + float64(mm)
		switch {
		case mm%mmPerCM == 0:
			c.line(axis-tickWhole, at, axis, at, rulePen, ink)
			c.textRight(regular, sizeSmall, ink, axis-numberFromAxe, at+middle(sizeSmall), fmt.Sprint(mm/mmPerCM))
		case mm%(mmPerCM/2) == 0:
			c.line(axis-tickHalf, at, axis, at, rulePen, ink)
		default:
			c.line(axis-tickPart, at, axis, at, rulePen, ink)
		}
	}
	for part := 0; float64(part)*mmPerInch/inchParts <= long; part++ {
		at := y + float64(part)*mmPerInch/inchParts
		switch {
		case part%inchParts == 0:
			c.line(axis, at, axis+tickWhole, at, rulePen, ink)
			c.text(regular, sizeSmall, ink, axis+numberFromAxe, at+middle(sizeSmall), fmt.Sprint(part/inchParts))
		case part%(inchParts/2) == 0:
			c.line(axis, at, axis+tickHalf, at, rulePen, ink)
		default:
			c.line(axis, at, axis+tickPart, at, rulePen, ink)
		}
	}
	if long >= bankCard {
		c.line(axis-2*tickWhole, y+bankCard, axis, y+bankCard, 2*rulePen, ink)
		c.textRight(regular, sizeSmall, ink, axis-2*tickWhole-0.8, y+bankCard+middle(sizeSmall), wordsCardMark)
	}
}
