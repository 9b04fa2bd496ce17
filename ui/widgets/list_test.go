package widgets

import (
	"fmt"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/theme"
)

// people shows a list of so many rows under a search field that steers it.
func people(t *testing.T, count int) (*List, *SearchField, fyne.Canvas) {
	t.Helper()
	program(t, theme.Light)
	list := NewList(func() int { return count },
		func() fyne.CanvasObject { return NewListLine() },
		func(i int, row fyne.CanvasObject) { row.(*ListLine).Set(fmt.Sprintf("Client %d", i), "", "") })
	search := NewSearchField("Find")
	body := &fyne.Container{Layout: belowLayout{}, Objects: []fyne.CanvasObject{search, list}}
	c := open(t, body, 400, 440).Canvas()
	return list, search, c
}

// belowLayout lets the second object have what the first leaves.
type belowLayout struct{}

func (belowLayout) MinSize([]fyne.CanvasObject) fyne.Size { return fyne.NewSize(100, 100) }

func (belowLayout) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	height := objects[0].MinSize().Height
	place(objects[0], 0, 0, size.Width, height)
	place(objects[1], 0, height, size.Width, size.Height-height)
}

func TestListKeys(t *testing.T) {
	list, _, c := people(t, 100)
	var moved, chosen []int
	list.OnMoved = func(i int) { moved = append(moved, i) }
	list.OnChosen = func(i int) { chosen = append(chosen, i) }
	c.Focus(list)
	page := list.pageRows()
	if page < 3 || page > 10 {
		t.Fatalf("a page of %d rows in 400 units", page)
	}
	press(list, fyne.KeyUp, fyne.KeyDown, fyne.KeyPageDown, fyne.KeyReturn, fyne.KeyEnd, fyne.KeyDown, fyne.KeySpace, fyne.KeyPageUp, fyne.KeyHome)
	if want := []int{1, 1 + page, 99, 99 - page, 0}; !slices.Equal(moved, want) {
		t.Errorf("moved %v, want %v", moved, want)
	}
	if want := []int{1 + page, 99}; !slices.Equal(chosen, want) {
		t.Errorf("chosen %v, want %v", chosen, want)
	}
}

func TestListEmpty(t *testing.T) {
	list, _, c := people(t, 0)
	list.OnMoved = func(int) { t.Error("moved in an empty list") }
	list.OnChosen = func(int) { t.Error("chosen from an empty list") }
	c.Focus(list)
	press(list, fyne.KeyDown, fyne.KeyEnd, fyne.KeySpace, fyne.KeyPageUp)
	list.SetCursor(3)
	if list.Cursor() != 0 {
		t.Errorf("cursor at %d", list.Cursor())
	}
}

// rowsIn returns the rows that a list shows, by their titles.
func rowsIn(list *List) map[string]*listRow {
	rows := map[string]*listRow{}
	each(list, func(o fyne.CanvasObject) {
		if row, is := o.(*listRow); is {
			rows[row.content.(*ListLine).title.Text()] = row
		}
	})
	return rows
}

func TestListMakesOnlyRowsInView(t *testing.T) {
	list, _, _ := people(t, 10000)
	if rows := rowsIn(list); len(rows) < 5 || len(rows) > 20 {
		t.Errorf("%d rows made for 400 units", len(rows))
	}
}

func TestListClickChooses(t *testing.T) {
	list, _, _ := people(t, 100)
	var chosen []int
	list.OnChosen = func(i int) { chosen = append(chosen, i) }
	list.Select(2)
	list.Select(2)
	if !slices.Equal(chosen, []int{2, 2}) || list.Cursor() != 2 {
		t.Errorf("chosen %v, cursor %d", chosen, list.Cursor())
	}
}

func TestListShowsItsHighlight(t *testing.T) {
	list, search, c := people(t, 100)
	list.SetCursor(1)
	lit := func() bool { return rowsIn(list)["Client 1"].lit }
	if lit() {
		t.Error("highlighted without the focus")
	}
	c.Focus(list)
	if row := rowsIn(list)["Client 1"]; !lit() || !row.ring.Visible() {
		t.Error("no highlight with the focus")
	}
	c.Unfocus()
	search.Steer(list)
	list.Refresh()
	if row := rowsIn(list)["Client 1"]; !lit() || row.ring.Visible() {
		t.Error("no highlight while a search steers, or a ring without the focus")
	}
}

func TestSearchSteersTheList(t *testing.T) {
	list, search, c := people(t, 100)
	var chosen []int
	list.OnChosen = func(i int) { chosen = append(chosen, i) }
	search.Steer(list)
	var typed []string
	search.OnChanged = func(text string) { typed = append(typed, text) }
	c.Focus(search.FocusTarget())
	test.Type(search.FocusTarget(), "fa")
	press(search.FocusTarget(), fyne.KeyDown, fyne.KeyDown, fyne.KeyUp, fyne.KeyPageDown, fyne.KeyPageUp, fyne.KeyDown, fyne.KeyReturn)
	if !slices.Equal(chosen, []int{2}) || !slices.Equal(typed, []string{"f", "fa"}) {
		t.Errorf("chosen %v, typed %v", chosen, typed)
	}
	if c.Focused() != search.FocusTarget() {
		t.Error("the focus left the search")
	}
}

func TestSearchEscape(t *testing.T) {
	_, search, c := people(t, 3)
	back := 0
	HandleEscape(func() { back++ })
	t.Cleanup(func() { HandleEscape(nil) })
	last := "?"
	search.OnChanged = func(text string) { last = text }
	c.Focus(search.FocusTarget())
	test.Type(search.FocusTarget(), "far")
	press(search.FocusTarget(), fyne.KeyEscape)
	if search.Text() != "" || last != "" || back != 0 {
		t.Errorf("text %q, told %q, back %d", search.Text(), last, back)
	}
	press(search.FocusTarget(), fyne.KeyEscape)
	if back != 1 {
		t.Error("Escape in an empty search does not go back")
	}
}

func TestSearchAlone(t *testing.T) {
	_, search, c := people(t, 0)
	entered := ""
	search.OnEnter = func(text string) { entered = text }
	search.OnChanged = func(string) { t.Error("called back by code") }
	search.SetText("oats")
	c.Focus(search.FocusTarget())
	press(search.FocusTarget(), fyne.KeyReturn)
	if entered != "oats" {
		t.Errorf("entered %q", entered)
	}
	if !search.ring.Visible() {
		t.Error("the focus is not shown")
	}
}
