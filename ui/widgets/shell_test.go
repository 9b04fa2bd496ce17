package widgets

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
)

func TestButton(t *testing.T) {
	program(t, theme.Light)
	pressed := 0
	b := NewPrimaryButton("Go on", func() { pressed++ })
	c := open(t, Row(b), 300, 100).Canvas()
	test.Tap(b)
	press(b, fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace, fyne.KeyA)
	if pressed != 4 {
		t.Errorf("pressed %d times, want 4", pressed)
	}
	if c.Focused() != fyne.Focusable(b) || !b.Focused() || !b.ring.Visible() {
		t.Error("a click does not give the focus, or it is not shown")
	}
	c.Unfocus()
	if b.ring.Visible() {
		t.Error("the ring stays")
	}
	b.Disable()
	test.Tap(b)
	press(b, fyne.KeyReturn)
	if pressed != 4 || b.Cursor() != desktop.DefaultCursor {
		t.Error("a button that is switched off was pressed, or looks as if it could be")
	}
	NewQuietButton("nothing to do", nil).Tapped(nil)
}

func TestButtonGrowsWithTextAndIcon(t *testing.T) {
	program(t, theme.Light)
	b := NewQuietButton("Print", nil)
	before := b.MinSize().Width
	b.SetIcon(IconPrint)
	withIcon := b.MinSize().Width
	b.SetText("Print the handout")
	if withIcon <= before || b.MinSize().Width <= withIcon || b.Text() != "Print the handout" {
		t.Error("the button does not grow")
	}
	b.SetIcon("")
	if b.icon != nil {
		t.Error("the icon stays")
	}
}

func TestButtonShowsThePointer(t *testing.T) {
	program(t, theme.Light)
	for _, b := range []*Button{NewPrimaryButton("a", nil), NewQuietButton("b", nil), NewTextButton("c", nil)} {
		open(t, b, 100, 50)
		before := b.box.FillColor
		b.MouseIn(&desktop.MouseEvent{})
		if b.box.FillColor == before {
			t.Errorf("%s does not show the pointer", b.Text())
		}
		b.MouseOut()
		if b.box.FillColor != before {
			t.Errorf("%s stays lit", b.Text())
		}
	}
}

func TestRail(t *testing.T) {
	program(t, theme.Light)
	var told []int
	r := NewRail([]RailItem{{"Clients", IconClients, "rail.clients"}, {"Kitchen", IconKitchen, "rail.kitchen"}, {"Help", IconHelp, ""}},
		func(i int) { told = append(told, i) })
	c := open(t, r, 100, 400).Canvas()
	r.Select(0)
	if r.Selected() != 0 || !r.Button(0).Selected() || len(told) > 0 {
		t.Error("choosing by code failed or called back")
	}
	test.Tap(r.Button(1))
	press(r.Button(1), fyne.KeyDown)
	press(c.Focused(), fyne.KeySpace)
	if !slices.Equal(told, []int{1, 2}) || r.Button(1).Selected() || !r.Button(2).Selected() {
		t.Errorf("told %v", told)
	}
	press(c.Focused(), fyne.KeyUp)
	if c.Focused() != fyne.Focusable(r.Button(1)) {
		t.Error("up does not go to the place above")
	}
	if Named()["rail.kitchen"] != r.Button(1) || r.Button(1).Text() != "Kitchen" {
		t.Error("the button has not its name")
	}
	r.Button(0).Disable()
	test.Tap(r.Button(0))
	press(r.Button(0), fyne.KeyReturn)
	if len(told) != 2 {
		t.Error("a place that is switched off was chosen")
	}
}

func TestSectionStrip(t *testing.T) {
	program(t, theme.Light)
	var told []int
	s := NewSectionStrip([]string{"Intake", "Screening", "Targets"}, func(i int) { told = append(told, i) })
	c := open(t, s, 500, 60).Canvas()
	c.FocusNext()
	if c.Focused() != fyne.Focusable(s) {
		t.Fatal("Tab does not reach the sections")
	}
	press(s, fyne.KeyLeft, fyne.KeyRight, fyne.KeyDown, fyne.KeyRight, fyne.KeyUp, fyne.KeyEnd, fyne.KeyHome)
	if want := []int{1, 2, 1, 2, 0}; !slices.Equal(told, want) {
		t.Errorf("told %v, want %v", told, want)
	}
	test.TapAt(s, s.Spot(2))
	test.TapAt(s, fyne.NewPos(499, 5))
	if s.Selected() != 2 || len(told) != 6 {
		t.Errorf("at %d, told %v", s.Selected(), told)
	}
	s.Select(99)
	if s.Selected() != 2 || len(told) != 6 {
		t.Error("choosing by code called back or went beyond the last")
	}
}

func TestSectionStripMarksAndWraps(t *testing.T) {
	program(t, theme.Light)
	s := NewSectionStrip([]string{"Intake", "Screening", "Targets"}, nil)
	open(t, s, 500, 60)
	before := s.Spot(2)
	s.SetMark(1, "12 to ask")
	if s.Spot(2).X <= before.X || !strings.Contains(textsIn(s), "12 to ask") {
		t.Error("the mark has no place")
	}
	if s.HeightFor(200) <= s.HeightFor(500) {
		t.Error("the sections do not wrap in a narrow window")
	}
	s.MouseIn(&desktop.MouseEvent{})
	s.MouseMoved(&desktop.MouseEvent{PointEvent: fyne.PointEvent{Position: s.Spot(1)}})
	if s.tabs[1].box.FillColor != theme.Colour(theme.Hover) {
		t.Error("the section under the pointer is not shown")
	}
	s.MouseOut()
	if s.tabs[1].box.FillColor == theme.Colour(theme.Hover) {
		t.Error("the section stays lit")
	}
}

func TestToast(t *testing.T) {
	program(t, theme.Light)
	clock := &task.ManualClock{}
	toast := NewToast(clock)
	open(t, Over(NewText("content", Body), toast), 700, 400)
	if toast.Visible() || toast.Act() {
		t.Fatal("a toast before anything was said")
	}
	toast.Say("Saved.")
	if !toast.Visible() || toast.Text() != "Saved." || toast.button.Visible() {
		t.Error("not said, or with a button")
	}
	clock.Advance(sayFor)
	if toast.Visible() {
		t.Error("it stays")
	}
	undone := 0
	toast.Offer("Deleted.", "Undo", func() { undone++ })
	clock.Advance(sayFor)
	test.Tap(toast.button)
	if undone != 1 || toast.Visible() || toast.Act() {
		t.Errorf("undone %d times", undone)
	}
}

func TestToastOfferEndsAndWarningStays(t *testing.T) {
	program(t, theme.Light)
	clock := &task.ManualClock{}
	toast := NewToast(clock)
	open(t, Over(NewText("content", Body), toast), 700, 400)
	toast.Offer("Deleted.", "Undo", func() { t.Error("undone though the time was over") })
	clock.Advance(offerFor)
	if toast.Visible() || toast.Act() {
		t.Error("the offer stays")
	}
	toast.Say("passing")
	toast.Warn("The disk is full.")
	clock.Advance(offerFor)
	if !toast.Visible() {
		t.Error("a problem went by itself")
	}
	test.Tap(toast.shut)
	if toast.Visible() {
		t.Error("it cannot be closed")
	}
}

func TestToastGrowsWithItsText(t *testing.T) {
	program(t, theme.Light)
	toast := NewToast(&task.ManualClock{})
	open(t, Over(NewText("content", Body), toast), 500, 400)
	toast.Say("Short.")
	short := toast.Size().Height
	toast.Say(strings.Repeat("A long text that wraps. ", 8))
	if toast.Size().Height <= short {
		t.Error("a long text is cut")
	}
	if bottom := toast.Position().Y + toast.Size().Height; bottom > 400 {
		t.Errorf("the toast ends at %v, below the window", bottom)
	}
}

func TestEmptyState(t *testing.T) {
	program(t, theme.Light)
	pressed := false
	e := NewEmptyState("No clients yet", "Add the first.", "Add a client", func() { pressed = true })
	open(t, e, 500, 300)
	FocusOn(e)
	press(e.FocusTarget(), fyne.KeyReturn)
	if !pressed {
		t.Error("the button does nothing")
	}
	e.SetText("Nothing found", "Try fewer letters.")
	if !strings.Contains(textsIn(e), "Nothing found") {
		t.Error("the text is not set")
	}
	if NewEmptyState("a", "b", "", nil).Button() != nil {
		t.Error("a button without a label")
	}
}

func TestCard(t *testing.T) {
	program(t, theme.Light)
	c := NewCard("", NewText("old", Body))
	open(t, c, 300, 200)
	low := c.HeightFor(300)
	c.SetTitle("Energy")
	c.SetContent(NewText("new", Body))
	settle(c)
	if shown := textsIn(c); shown != "Energy\nnew" || c.HeightFor(300) <= low {
		t.Errorf("shown %q", shown)
	}
}

// The page scrolls to what has the focus, with its label above.
func TestPageKeepsTheFocusInView(t *testing.T) {
	program(t, theme.Light)
	column := Column()
	var fields []*Field
	for i := range 30 {
		f := NewField(fmt.Sprintf("Field %d", i), "")
		fields = append(fields, f)
		column.Add(f)
	}
	page := NewPage(column)
	c := open(t, page, 300, 300).Canvas()
	for _, i := range []int{29, 15, 0, 20} {
		c.Focus(fields[i].FocusTarget())
		at, _ := offsetIn(page.scroll.Content, fields[i], fyne.NewPos(0, 0))
		top, bottom := page.scroll.Offset.Y, page.scroll.Offset.Y+page.scroll.Size().Height
		if at.Y < top || at.Y+fields[i].Size().Height > bottom {
			t.Errorf("field %d at %v is out of view (%v to %v)", i, at.Y, top, bottom)
		}
	}
	page.scroll.ScrollToOffset(fyne.NewPos(0, 0))
	c.Focus(fields[1].FocusTarget())
	if page.scroll.Offset.Y != 0 {
		t.Error("scrolled though the field was in view")
	}
}

func TestFocusOn(t *testing.T) {
	program(t, theme.Light)
	f, b := NewField("a", ""), NewQuietButton("b", nil)
	text := NewText("c", Body)
	c := open(t, Column(f, b, text), 300, 200).Canvas()
	if !FocusOn(f) || c.Focused() != f.FocusTarget() || !FocusOn(b) || c.Focused() != fyne.Focusable(b) {
		t.Error("the focus did not go there")
	}
	if FocusOn(text) {
		t.Error("a text took the focus")
	}
}

func TestHairlineFollowsTheLook(t *testing.T) {
	app := program(t, theme.Light)
	h := NewHairline()
	open(t, h, 100, 9)
	app.Settings().SetTheme(theme.New(theme.Dark, 1))
	h.Refresh()
	line := test.WidgetRenderer(h).Objects()[0].(*canvas.Rectangle)
	if line.FillColor != theme.Colour(theme.Rule) || line.Size().Height != 1 {
		t.Error("the line has not the colour of the dark look, or is not thin")
	}
}
