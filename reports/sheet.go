package reports

import (
	"fmt"
	"math"

	"github.com/johnfercher/go-tree/node"
	"github.com/johnfercher/maroto/v2"
	"github.com/johnfercher/maroto/v2/pkg/components/col"
	"github.com/johnfercher/maroto/v2/pkg/components/page"
	"github.com/johnfercher/maroto/v2/pkg/components/row"
	"github.com/johnfercher/maroto/v2/pkg/config"
	"github.com/johnfercher/maroto/v2/pkg/core"
	"github.com/johnfercher/maroto/v2/pkg/core/entity"
	"github.com/johnfercher/maroto/v2/pkg/props"
)

// block is a part of a page that stays in one piece.
type block interface {
	// height returns the height at a width, both in millimetres.
	height(w float64) float64
	// draw draws the block from the canvas' top left.
	draw(c canvas)
}

// The margins of a page in millimetres. Page number and date stand in the lower
// margin, 11 mm from the edge.
const (
	marginSide   = 18
	marginTop    = 12
	marginBottom = 14
)

// sheet is one document: its pages while they are made. It is used once.
type sheet struct {
	wide, high float64 // of the paper
	left, top  float64 // margins
	engine     core.Maroto
	opt        house
	head, foot block
	pages      []*ops // the vectors of each page
	pictures   map[pictureKey]*picture
	wash       colour
}

func newSheet(paper Paper, h house) *sheet {
	s := &sheet{
		wide: 210, high: 297, left: marginSide, top: marginTop,
		opt: h, pictures: map[pictureKey]*picture{}, wash: tint(h.hue, 0.20),
	}
	if paper == Letter {
		s.wide, s.high = 8.5*mmPerInch, 11*mmPerInch
	}
	var fonts []*entity.CustomFont
	for _, f := range []face{regular, bold, italic} {
		fonts = append(fonts, &entity.CustomFont{Family: family, Style: f.style(), Bytes: f.file()})
	}
	s.engine = maroto.New(config.NewBuilder().
		WithDimensions(s.wide, s.high).
		WithLeftMargin(s.left).WithRightMargin(s.left).
		WithTopMargin(s.top).WithBottomMargin(marginBottom).
		WithCustomFonts(fonts).
		WithDefaultFont(&props.Font{Family: family, Size: sizeBody, Color: &props.Color{Red: int(ink.R), Green: int(ink.G), Blue: int(ink.B)}}).
		WithPageNumber(props.PageNumber{
			Pattern: "Page {current} of {total}", Place: props.RightBottom,
			Family: family, Style: regular.style(), Size: sizeSmall,
			Color: &props.Color{Red: int(muted.R), Green: int(muted.G), Blue: int(muted.B)},
		}).
		Build())
	return s
}

// inner is the width between the margins.
func (s *sheet) inner() float64 { return s.wide - 2*s.left }

// room is the height that a page has for its blocks.
func (s *sheet) room() float64 {
	return s.high - s.top - marginBottom - s.head.height(s.inner()) - s.foot.height(s.inner())
}

// vectors returns the operators of the page that is being drawn.
func (s *sheet) vectors() *ops { return s.pages[len(s.pages)-1] }

// frame sets what stands at the head and foot of every page.
func (s *sheet) frame(head, foot block) error {
	s.head, s.foot = pageStart{head}, foot
	const leastRoom = 0.6 // of the paper's height
	if s.room() < leastRoom*s.high {
		return tooLong("brand", "practice, contact and footer of a few lines in all")
	}
	if err := s.engine.RegisterHeader(s.row(s.head)); err != nil {
		return paperError(err)
	}
	if err := s.engine.RegisterFooter(s.rowOf(s.foot, grain(s.foot.height(s.inner()))+slack)); err != nil {
		return paperError(err)
	}
	return nil
}

// add puts blocks on pages of their own, in order, as many as they need. A
// block that no page can hold is refused.
func (s *sheet) add(blocks ...block) error {
	rows := make([]core.Row, 0, len(blocks))
	for _, b := range blocks {
		if h := b.height(s.inner()); h > s.room() {
			return paperError(fmt.Errorf("a block of %.0f mm is taller than the page, which has %.0f mm", h, s.room()))
		}
		rows = append(rows, s.row(b))
	}
	s.engine.AddPages(page.New().Add(rows...))
	return nil
}

func (s *sheet) row(b block) core.Row { return s.rowOf(b, grain(b.height(s.inner()))) }

func (s *sheet) rowOf(b block, height float64) core.Row {
	return row.New(height).Add(col.New().Add(&component{sheet: s, block: b}))
}

// The engine fills a page up to nine decimals of a millimetre and lets the
// writer begin another where the sum of its rows passes the margin by any
// rounding. Heights in millionths and a foot that is a little more than one
// leave the sum short by most of the ninth decimal, on every page.
const (
	grains = 1e6
	slack  = 3e-10
)

func grain(height float64) float64 { return math.Ceil(height*grains-1e-3) / grains }

// finish renders the pages and lays the vectors beneath their text. A panic of
// the engine comes back as an error.
func (s *sheet) finish() (pdf []byte, err error) {
	defer func() {
		if fault := recover(); fault != nil {
			pdf, err = nil, paperError(fmt.Errorf("the engine gave up: %v", fault))
		}
	}()
	document, err := s.engine.Generate()
	if err != nil {
		return nil, paperError(err)
	}
	return s.bind(document.GetBytes())
}

func paperError(err error) error { return fmt.Errorf("%w: %w", ErrPaper, err) }

// component shows a block to maroto.
type component struct {
	sheet *sheet
	block block
}

// SetConfig does nothing: a block knows its own look.
func (*component) SetConfig(*entity.Config) {}

// GetStructure names the block's type.
func (c *component) GetStructure() *node.Node[core.Structure] {
	return node.New(core.Structure{Type: fmt.Sprintf("%T", c.block)})
}

// GetHeight returns the block's height.
func (c *component) GetHeight(_ core.Provider, cell *entity.Cell) float64 {
	return c.block.height(cell.Width)
}

// Render draws the block where maroto puts it.
func (c *component) Render(provider core.Provider, cell *entity.Cell) {
	s := c.sheet
	c.block.draw(canvas{provider: provider, sheet: s, x: s.left + cell.X, y: s.top + cell.Y, w: cell.Width})
}

// pageStart is the head of a page, whose drawing begins a page.
type pageStart struct{ block }

func (p pageStart) draw(c canvas) {
	c.sheet.pages = append(c.sheet.pages, &ops{})
	p.block.draw(c)
}
