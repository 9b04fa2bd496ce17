package widgets

import (
	"bytes"
	"fmt"
	"log"
	"os"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"handbreadth/ui/theme"
)

// sheets are all parts of the kit, as the picture book shows them.
var sheets = map[string]func() fyne.CanvasObject{
	"controls": controlsSheet, "choices": choicesSheet, "numbers": numbersSheet, "measures": measuresSheet, "lists": listsSheet,
}

// Tab reaches everything that can be used, and nothing else.
func TestTabReachesEverything(t *testing.T) {
	for name, build := range sheets {
		program(t, theme.Light)
		root := build()
		c := open(t, root, 1100, 2400).Canvas()
		wanted := map[fyne.Focusable]bool{}
		each(root, func(o fyne.CanvasObject) {
			usable, is := o.(fyne.Tappable)
			if ofFyne(o) {
				return
			}
			if off, can := o.(fyne.Disableable); !is || can && off.Disabled() {
				return
			}
			target, focusable := usable.(fyne.Focusable)
			if !focusable {
				t.Errorf("%s: a %T can be clicked but not reached by Tab", name, o)
				return
			}
			wanted[target] = true
		})
		if len(wanted) == 0 && name != "measures" {
			t.Errorf("%s: nothing to reach", name)
		}
		c.Unfocus()
		for range len(wanted) + 2 {
			c.FocusNext()
			delete(wanted, c.Focused())
		}
		for target := range wanted {
			t.Errorf("%s: Tab does not reach a %T", name, target)
		}
	}
}

// ofFyne reports whether an object is a part of Fyne's own that keys do without:
// a row of a list, which the arrows reach, or a scroll bar.
func ofFyne(o fyne.CanvasObject) bool {
	name := fmt.Sprintf("%T", o)
	return strings.HasSuffix(name, "widget.listItem") || strings.HasSuffix(name, "widget.scrollBarArea")
}

// Source: WCAG 2.2, success criterion 2.5.8: 24 by 24 CSS pixels.
func TestTargetsAreLargeEnough(t *testing.T) {
	for name, build := range sheets {
		program(t, theme.Light)
		root := build()
		open(t, root, 1100, 2400)
		each(root, func(o fyne.CanvasObject) {
			if _, is := o.(fyne.Tappable); !is || ofFyne(o) {
				return
			}
			if size := o.Size(); size.Width < theme.Target || size.Height < theme.Target {
				t.Errorf("%s: a %T is %v", name, o, size)
			}
			group, is := o.(interface{ boxSizes() []fyne.Size })
			if !is {
				return
			}
			for _, size := range group.boxSizes() {
				if size.Width < theme.Target || size.Height < theme.Target {
					t.Errorf("%s: an option of a %T is %v", name, o, size)
				}
			}
		})
	}
}

func (o *options) boxSizes() []fyne.Size {
	var sizes []fyne.Size
	for _, b := range o.boxes {
		sizes = append(sizes, b.size)
	}
	return sizes
}

func (s *SectionStrip) boxSizes() []fyne.Size {
	var sizes []fyne.Size
	for _, tab := range s.tabs {
		sizes = append(sizes, tab.size)
	}
	return sizes
}

// lengthen makes every text a third longer, as another language may.
func lengthen(root fyne.CanvasObject) {
	each(root, func(o fyne.CanvasObject) {
		text, is := o.(*Text)
		if !is || text.Text() == "" || strings.ContainsAny(text.Text(), "0123456789½") && text.single {
			return
		}
		text.SetText(text.Text() + " " + strings.Repeat("longer ", 1+len(text.Text())/20)[:len(text.Text())/3+1])
	})
}

// Nothing is cut or pushed out: each text fits in its place, and its place lies
// within its widget, in wide and narrow windows, with large text and with texts
// that are a third longer.
func TestNothingIsCut(t *testing.T) {
	for name, build := range sheets {
		for _, width := range []float32{380, 700, 1366} {
			for _, scale := range []float32{1, 1.5} {
				for _, long := range []bool{false, true} {
					app := program(t, theme.Light)
					app.Settings().SetTheme(theme.New(theme.Light, scale))
					root := build()
					open(t, root, width, 768)
					if long {
						lengthen(root)
					}
					settle(root)
					what := fmt.Sprintf("%s at %v, text %v, longer %v", name, width, scale, long)
					checkFits(t, what, root, root.Size().Width)
				}
			}
		}
	}
}

// checkFits looks at all texts below an object. The least width of the window is
// taken as given: what needs more than that makes the window wider.
func checkFits(t *testing.T, what string, root fyne.CanvasObject, width float32) {
	t.Helper()
	var walk func(o fyne.CanvasObject, at fyne.Position, room fyne.Size)
	walk = func(o fyne.CanvasObject, at fyne.Position, room fyne.Size) {
		if !o.Visible() {
			return
		}
		if text, is := o.(*canvas.Text); is {
			if need := text.MinSize(); text.Text != "" && (need.Width > text.Size().Width+1 || need.Height > text.Size().Height+1) {
				t.Errorf("%s: %q needs %v and has %v", what, text.Text, need, text.Size())
			}
			return
		}
		var children []fyne.CanvasObject
		switch c := o.(type) {
		case *fyne.Container:
			children = c.Objects
		case *container.Scroll, *widget.Entry, *entry, *List:
			if page, is := o.(*container.Scroll); is {
				walk(page.Content, fyne.NewPos(0, 0), page.Content.Size())
			}
			return
		case fyne.Widget:
			children = test.WidgetRenderer(c).Objects()
		}
		for _, child := range children {
			if inner, is := child.(*Text); is && inner.Visible() && inner.Text() != "" {
				end := inner.Position().Add(inner.Size())
				if end.X > o.Size().Width+1 || end.Y > o.Size().Height+1 {
					t.Errorf("%s: %q ends at %v, outside of a %T of %v", what, inner.Text(), end, o, o.Size())
				}
			}
			walk(child, child.Position(), o.Size())
		}
	}
	walk(root, fyne.NewPos(0, 0), root.Size())
}

// All parts are drawn in both looks without a word in the log: no picture that
// cannot be read, no call from the wrong thread.
func TestDrawingLogsNothing(t *testing.T) {
	var logged bytes.Buffer
	log.SetOutput(&logged)
	t.Cleanup(func() { log.SetOutput(os.Stderr) })
	for name, build := range sheets {
		for _, variant := range []theme.Variant{theme.Light, theme.Dark} {
			program(t, variant)
			window := open(t, build(), 900, 700)
			if img := window.Canvas().Capture(); img.Bounds().Dx() < 900 {
				t.Errorf("%s: a picture of %v", name, img.Bounds())
			}
		}
	}
	if strings.Contains(logged.String(), "rror") {
		t.Errorf("the log has:\n%s", logged.String())
	}
}

// The layout of what a practitioner looks at all day stays as it is.
func TestLayoutStays(t *testing.T) {
	for name, build := range map[string]func() fyne.CanvasObject{
		"field":      func() fyne.CanvasObject { return wrongField() },
		"yesno":      func() fyne.CanvasObject { y := NewYesNo("Pregnant?", nil); y.FocusGained(); return y },
		"finding":    func() fyne.CanvasObject { return oneFinding() },
		"disclosure": func() fyne.CanvasObject { return openNumber() },
		"balance": func() fyne.CanvasObject {
			s := NewBalanceSlider(nil)
			s.SetWall(68, "fat is at least 20 % of energy.")
			return s
		},
	} {
		program(t, theme.Light)
		window := open(t, Column(build()), 640, 200)
		test.AssertRendersToMarkup(t, name+".xml", window.Canvas())
	}
}
