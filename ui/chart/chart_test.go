package chart

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/unit"
	"handbreadth/ui/theme"
)

func program(t testing.TB) {
	t.Helper()
	test.NewTempApp(t).Settings().SetTheme(theme.New(theme.Light, 1))
}

// opened is a panel with the straight course, in a window.
func opened(t *testing.T) (*Panel, fyne.Window) {
	t.Helper()
	program(t)
	p := NewPanel(unit.Style{}, func() {})
	c := straight(100)
	c.Reached = 63
	p.SetCourse(c)
	w := shown(t, container.NewVBox(p.Object), 600, 500)
	return p, w
}

func press(p *Panel, keys ...fyne.KeyName) {
	for _, key := range keys {
		p.Chart.TypedKey(&fyne.KeyEvent{Name: key})
	}
}

func TestTheGoalIsReadFirst(t *testing.T) {
	p, _ := opened(t)
	if got := p.Said(); got.Date != "4 May 2026" || got.Expected != "73.7 kg" || got.Static != "70 kg" {
		t.Errorf("%+v", got)
	}
	if p.Chart.drawn.marks.line.Visible() {
		t.Error("a mark without the pointer or the focus")
	}
}

func TestKeysReadWeekByWeek(t *testing.T) {
	p, w := opened(t)
	w.Canvas().Focus(p.Chart.FocusTarget())
	if !p.Chart.drawn.marks.line.Visible() || !p.Chart.Focused() {
		t.Fatal("the focus is not shown")
	}
	for _, c := range []struct {
		key  fyne.KeyName
		want int
	}{
		{fyne.KeyLeft, 56},
		{fyne.KeyLeft, 49},
		{fyne.KeyRight, 56},
		{fyne.KeyHome, 0},
		{fyne.KeyLeft, 0},
		{fyne.KeyEnd, 100},
		{fyne.KeyRight, 100},
		{fyne.KeyPageUp, 72},
		{fyne.KeyPageDown, 100},
	} {
		press(p, c.key)
		if p.Chart.Day() != c.want {
			t.Errorf("%s leads to day %d, want %d", c.key, p.Chart.Day(), c.want)
		}
		if got, want := p.Said(), p.Chart.Course().Say(c.want, unit.Style{}); got != want {
			t.Errorf("%s: says %+v", c.key, got)
		}
		if got, want := p.Chart.drawn.marks.line.Position().X, p.Chart.drawn.plot.days.at(float64(c.want))-markStroke/2; got != want {
			t.Errorf("%s: the mark lies at %v, want %v", c.key, got, want)
		}
	}
	w.Canvas().Unfocus()
	if p.Chart.drawn.marks.line.Visible() {
		t.Error("the mark stays without the focus")
	}
}

func TestPointerReadsTheDayBelowIt(t *testing.T) {
	p, _ := opened(t)
	at := fyne.NewPos(p.Chart.drawn.plot.days.at(21), 100)
	p.Chart.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: at}})
	if p.Said().Date != "23 March 2026" || !p.Chart.drawn.marks.dot.Visible() {
		t.Errorf("%+v", p.Said())
	}
	p.Chart.MouseOut()
	if p.Said().Date != "4 May 2026" || p.Chart.drawn.marks.dot.Visible() {
		t.Errorf("after the pointer has left: %+v", p.Said())
	}
	p.Chart.Tapped(&fyne.PointEvent{Position: at})
	p.Chart.MouseOut()
	if p.Said().Date != "23 March 2026" || !p.Chart.Focused() {
		t.Errorf("a click does not stay: %+v", p.Said())
	}
}

func TestTableHasTheSameData(t *testing.T) {
	p, _ := opened(t)
	if p.TableShown() {
		t.Fatal("the table is open")
	}
	test.Tap(p.Toggle())
	if !p.TableShown() || p.Toggle().Text() != "Hide the table" {
		t.Fatal("the table does not open")
	}
	c := p.Chart.Course()
	for i, day := range c.tableDays() {
		w := c.Say(day, unit.Style{})
		cells := p.table.rows[i+1].cells
		for n, want := range []string{w.Date, w.Expected, w.Range, w.Static} {
			if got := cells[n].Text(); got != want {
				t.Errorf("row %d: %q, want %q", i, got, want)
			}
		}
	}
	p.SetCourse(straight(20))
	if shown := p.table.rows[len(p.table.rows)-1]; shown.object.Visible() {
		t.Error("rows of a longer course are left")
	}
	if got := p.table.rows[4].cells[0].Text(); got != "22 March 2026" {
		t.Errorf("the last row says %q", got)
	}
}

func TestAShorterCourseForgetsADayThatItHasNot(t *testing.T) {
	p, _ := opened(t)
	press(p, fyne.KeyEnd)
	p.SetCourse(straight(50))
	if p.Chart.Day() != 50 || p.Said().Expected != "75 kg" {
		t.Errorf("day %d: %+v", p.Chart.Day(), p.Said())
	}
}

func TestAChartWithoutACourseIsCalm(t *testing.T) {
	program(t)
	p := NewPanel(unit.Style{}, func() {})
	shown(t, container.NewVBox(p.Object), 500, 400)
	press(p, fyne.KeyLeft, fyne.KeyEnd)
	p.Chart.MouseMoved(&desktop.MouseEvent{})
	p.Chart.FocusGained()
	p.Chart.FocusLost()
}

// What is not painted in pixels stays where it is.
func TestLayoutStays(t *testing.T) {
	for name, style := range map[string]unit.Style{"kilograms": {}, "stones": {System: unit.UKCustomary}} {
		program(t)
		p := NewPanel(style, func() {})
		c := straight(180)
		c.Reached = 100
		c.Phases = []Phase{{0, 100, []string{"Lose, eating 1800 kcal a day"}}, {100, 180, []string{"Hold"}}}
		p.SetCourse(c)
		w := shown(t, container.NewVBox(p.Object), 560, 400)
		w.Canvas().Focus(p.Chart.FocusTarget())
		test.AssertRendersToMarkup(t, name+".xml", w.Canvas())
	}
}

// Large text takes its room, and no word is cut.
func TestLargeTextIsNotCut(t *testing.T) {
	for _, scale := range []float32{1, 1.5, 2} {
		test.NewTempApp(t).Settings().SetTheme(theme.New(theme.Light, scale))
		_, c := planned(t, intake(), unit.Style{System: unit.UKCustomary})
		chart := New(unit.Style{System: unit.UKCustomary})
		chart.SetCourse(c)
		shown(t, container.NewVBox(chart.Surface), 640, 700)
		for _, text := range chart.drawn.labels {
			if need := text.MinSize(); text.Visible() && need.Width > text.Size().Width+1 {
				t.Errorf("scale %v: %q needs %v, has %v", scale, text.Text(), need.Width, text.Size().Width)
			}
		}
		if chart.drawn.plot.area.W < 150 || chart.drawn.plot.area.H < 80 {
			t.Errorf("scale %v: the words leave %v", scale, chart.drawn.plot.area)
		}
	}
}
