package reports

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/johnfercher/maroto/v2"
	"github.com/johnfercher/maroto/v2/pkg/components/col"
	"github.com/johnfercher/maroto/v2/pkg/components/page"
	"github.com/johnfercher/maroto/v2/pkg/components/row"
	"github.com/johnfercher/maroto/v2/pkg/components/text"
	"github.com/johnfercher/maroto/v2/pkg/config"
	"github.com/johnfercher/maroto/v2/pkg/core"
	"github.com/johnfercher/maroto/v2/pkg/core/entity"
	"github.com/johnfercher/maroto/v2/pkg/props"
	"github.com/pdfcpu/pdfcpu/pkg/api"
)

func BenchmarkHandout(b *testing.B) {
	plan, opt := planOf(b, woman()), options(b)
	opt.Brand.Logo = nil
	for b.Loop() {
		if _, err := Handout(plan, opt); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBareLibrary writes as many pages as BenchmarkHandout with the same
// fonts and about as many texts, with maroto alone and nothing drawn.
func BenchmarkBareLibrary(b *testing.B) {
	plan, opt := planOf(b, woman()), options(b)
	opt.Brand.Logo = nil
	pdf, err := Handout(plan, opt)
	if err != nil {
		b.Fatal(err)
	}
	pages, err := api.PageCount(bytes.NewReader(pdf), nil)
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if got := bare(b, pages); len(got) == 0 {
			b.Fatal("nothing was written")
		}
	}
}

// bare writes pages of 25 rows, each with a bold label, running text and a
// source, which breaks: 101 lines of text a page, 404 on four pages, where the
// handout has 405.
func bare(t testing.TB, pages int) []byte {
	var fonts []*entity.CustomFont
	for _, f := range []face{regular, bold, italic} {
		fonts = append(fonts, &entity.CustomFont{Family: family, Style: f.style(), Bytes: f.file()})
	}
	m := maroto.New(config.NewBuilder().WithDimensions(210, 297).
		WithLeftMargin(marginSide).WithRightMargin(marginSide).WithTopMargin(marginTop).WithBottomMargin(marginBottom).
		WithCustomFonts(fonts).WithDefaultFont(&props.Font{Family: family, Size: sizeBody}).
		WithPageNumber(props.PageNumber{Pattern: "Page {current} of {total}", Place: props.RightBottom, Family: family, Size: sizeSmall}).
		Build())
	const rows, high = 25, 9.3
	for p := range pages {
		var all []core.Row
		for i := range rows {
			all = append(all, row.New(high).Add(
				text.NewCol(2, fmt.Sprintf("Meal %d", i+1), props.Text{Style: bold.style()}),
				text.NewCol(7, fmt.Sprintf("Page %d: this builds and mends your body and helps", p+1)),
				col.New(3).Add(text.New("Source: Leidy 2015, Am J Clin", props.Text{Style: italic.style(), Size: sizeSmall})),
			))
		}
		m.AddPages(page.New().Add(all...))
	}
	document, err := m.Generate()
	if err != nil {
		t.Fatal(err)
	}
	return document.GetBytes()
}
