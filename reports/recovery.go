package reports

import (
	"fmt"
	"strings"

	"handbreadth/domain"
	"handbreadth/domain/unit"
)

// Recovery is what a recovery sheet is about: a code that opens the practice
// when the passphrase is lost.
type Recovery struct {
	Groups []string // of the code, as it is shown
	Made   unit.Date
}

const (
	wordsRecoveryUnder = "This code opens the practice in Handbreadth when the passphrase is forgotten."
	wordsRecoverySafe  = "Whoever has this sheet and the computer, or a backup, can read everything in it."
	wordsRecoveryFoot  = "Keep this sheet locked away from the computer."
)

var wordsRecoveryUse = []string{
	"Start Handbreadth. Where it asks for the passphrase, choose “Use the recovery code”.",
	"Type the eight groups. Small letters and blanks do not matter. There are no figures in it.",
	"Choose a new passphrase. A new code follows: print its sheet, which takes the place of this one.",
	"On another computer, restore a backup first; it asks for this code, too.",
}

var wordsRecoveryKeep = []string{
	"Keep it with important papers, not beside the computer and not in its bag.",
	"Do not photograph it and do not send it. Do not write the passphrase on it.",
	"Keep an old sheet as long as there are backups from its time: they open with it.",
}

// RecoverySheet returns the sheet with a recovery code as a PDF. The error is
// [unit.Problems] where the options or the code cannot be used, and wraps
// [ErrPaper] where the engine failed.
func RecoverySheet(r Recovery, opt Options) ([]byte, error) {
	h, err := newHouse("Recovery sheet", domain.Plan{Intake: domain.Intake{Date: r.Made}}, opt)
	if err != nil {
		return nil, err
	}
	h.reader, h.version = "", "" // it is about no client
	groups := cleanAll(r.Groups)
	if len(groups) == 0 {
		return nil, unit.Problem{Field: "recovery_code", Given: "", Accepted: "the groups of a code"}
	}
	s := newSheet(opt.Paper, h)
	if err := s.frame(letterhead{h}, pagefoot{house: h, always: wordsRecoveryFoot}); err != nil {
		return nil, err
	}
	if err := s.add(recoveryBlocks(h, s.inner(), groups)...); err != nil {
		return nil, err
	}
	return s.finish()
}

func recoveryBlocks(h house, inner float64, groups []string) []block {
	const between = 8
	blocks := []block{
		title("Recovery sheet", wordsRecoveryUnder),
		beside{
			left: recoveryPractice(h), right: labelled{"Made on", h.date, h.hue},
			leftWide: 0.62 * inner, between: between,
		},
		gap(6),
		codeGroups{groups: groups, hue: h.hue},
		gap(7),
		heading("If the passphrase is forgotten", h.hue),
	}
	for i, words := range wordsRecoveryUse {
		blocks = append(blocks, numbered{i + 1, words})
	}
	blocks = append(blocks, gap(4), heading("Keep it safe", h.hue), body(wordsRecoverySafe))
	for _, words := range wordsRecoveryKeep {
		blocks = append(blocks, listed{words})
	}
	return blocks
}

// recoveryPractice names the practice, or leaves a line to write it on.
func recoveryPractice(h house) block {
	if h.practice == "" {
		return toWrite{label: "Practice", lines: 1, hue: h.hue}
	}
	return labelled{"Practice", h.practice, h.hue}
}

// codeGroups sets the groups of a code large, each under its number, in rows of
// four within a frame.
type codeGroups struct {
	groups []string
	hue    colour
}

const (
	sizeCode     = 26
	groupsAcross = 4
	codeInset    = 6.0
	codeGap      = 4.0 // between rows
)

func (codeGroups) rowHeight() float64 { return lineHeight(sizeSmall) + lineHeight(sizeCode) }

func (g codeGroups) height(float64) float64 {
	rows := float64((len(g.groups) + groupsAcross - 1) / groupsAcross)
	return 2*codeInset + rows*g.rowHeight() + (rows-1)*codeGap
}

func (g codeGroups) draw(c canvas) {
	c.frame(c.x, c.y, c.w, g.height(c.w), 0.4, g.hue)
	across := (c.w - 2*codeInset) / groupsAcross
	for i, group := range g.groups {
		x := c.x + codeInset + float64(i%groupsAcross)*across
		y := c.y + codeInset + float64(i/groupsAcross)*(g.rowHeight()+codeGap)
		c.text(regular, sizeSmall, muted, x, y+ascent(sizeSmall), fmt.Sprint(i+1))
		size := fitting(bold, sizeCode, across-2, group)
		c.text(bold, size, ink, x, y+lineHeight(sizeSmall)+ascent(sizeCode), strings.ToUpper(group))
	}
}

// numbered is a sentence with its number before it.
type numbered struct {
	number int
	text   string
}

func (n numbered) height(w float64) float64 { return listed{n.text}.height(w) }

func (n numbered) draw(c canvas) {
	c.text(bold, sizeBody, ink, c.x, c.y+ascent(sizeBody), fmt.Sprintf("%d.", n.number))
	c.paragraph(regular, sizeBody, ink, c.x+listIndent, c.y, wrap(regular, sizeBody, c.w-listIndent, n.text))
}
