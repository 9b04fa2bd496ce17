package clients

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/domain/unit"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

var monday = unit.Date{Year: 2026, Month: time.March, Day: 2}

// fakeBook is a book in memory.
type fakeBook struct {
	rows    []Row
	glances map[string]Glance
	read    int // how often glances were read
	trouble error
}

func (b *fakeBook) Find(query string, archived bool) []string {
	var ids []string
	for _, r := range b.rows {
		if r.Archived == archived && strings.Contains(strings.ToLower(r.Name), strings.ToLower(query)) {
			ids = append(ids, r.ID)
		}
	}
	return ids
}

func (b *fakeBook) at(id string) int {
	return slices.IndexFunc(b.rows, func(r Row) bool { return r.ID == id })
}

func (b *fakeBook) Row(id string) (Row, bool) {
	i := b.at(id)
	if i < 0 {
		return Row{}, false
	}
	return b.rows[i], true
}

func (b *fakeBook) Today() unit.Date        { return monday }
func (b *fakeBook) RetentionNotice() string { return "The law may require you to keep records." }

func (b *fakeBook) Glances(_ context.Context, ids []string) (map[string]Glance, error) {
	b.read += len(ids)
	found := map[string]Glance{}
	for _, id := range ids {
		found[id] = b.glances[id]
	}
	return found, b.trouble
}

func (b *fakeBook) Create(_ context.Context, name string) (string, error) {
	if b.trouble != nil {
		return "", b.trouble
	}
	b.rows = append(b.rows, Row{ID: "new", Name: name})
	return "new", nil
}

func (b *fakeBook) Archive(_ context.Context, id string) error   { return b.set(id, true) }
func (b *fakeBook) Unarchive(_ context.Context, id string) error { return b.set(id, false) }

func (b *fakeBook) set(id string, archived bool) error {
	b.rows[b.at(id)].Archived = archived
	return nil
}

func (b *fakeBook) Delete(_ context.Context, id string) error {
	b.rows = slices.Delete(b.rows, b.at(id), b.at(id)+1)
	return nil
}

// desk is the screen in a window without a display, and what it said upwards.
type desk struct {
	t      *testing.T
	book   *fakeBook
	screen *Screen
	window fyne.Window

	opened, said, offered string
	undo                  func()
	asked                 Question
}

func newTestDesk(t *testing.T, book *fakeBook) *desk {
	t.Helper()
	widgets.ResetNames()
	app := test.NewTempApp(t)
	d := &desk{t: t, book: book}
	words := func(err error) string { return "plainly: " + err.Error() }
	d.screen = New(book, task.Inline{Words: words}, Ways{
		Open: func(id string) { d.opened = id },
		Ask:  func(q Question) { d.asked = q },
		Say:  func(text string) { d.said = text },
		Offer: func(text, _ string, act func()) {
			d.offered, d.undo = text, act
		},
	})
	d.window = app.NewWindow("")
	d.window.SetContent(d.screen.Object())
	d.window.Resize(fyne.NewSize(1200, 700))
	return d
}

func people() *fakeBook {
	return &fakeBook{
		rows: []Row{
			{ID: "wren", Name: "Wren Applecart", Born: unit.Date{Year: 1984, Month: time.May, Day: 17}, NextVisit: monday.AddDays(1)},
			{ID: "oskar", Name: "Oskar Tidewater"},
			{ID: "jun", Name: "Jun Paperkite", Archived: true},
		},
		glances: map[string]Glance{"wren": {LastVisit: monday.AddDays(-9), Status: Kept, Plan: 2}},
	}
}

func (d *desk) key(key fyne.KeyName) {
	d.window.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: key})
}

func TestARowTellsWhatIsKnown(t *testing.T) {
	d := newTestDesk(t, people())
	row := newLine(d.screen)
	d.screen.fill(0, row) // asks for the glance
	d.screen.fill(0, row)
	got := []string{row.name.Text(), row.age.Text(), row.last.Text(), row.next.Text(), row.stat.Text()}
	if want := []string{"Wren Applecart", "41", "21 February", "Tomorrow", "Plan 2 kept"}; !slices.Equal(got, want) {
		t.Errorf("row %q, want %q", got, want)
	}
}

func TestOnlyRowsInViewAreRead(t *testing.T) {
	book := &fakeBook{}
	for i := range 10000 {
		book.rows = append(book.rows, Row{ID: fmt.Sprint(i), Name: fmt.Sprintf("Client %d", i)})
	}
	d := newTestDesk(t, book)
	if book.read == 0 || book.read > 100 {
		t.Errorf("%d of 10000 were read", book.read)
	}
	if got := d.screen.count.Text(); got != "10000 clients" {
		t.Errorf("the count says %q", got)
	}
}

func TestSearchingAndOpeningByKeyboard(t *testing.T) {
	d := newTestDesk(t, people())
	d.screen.FocusSearch()
	test.Type(d.window.Canvas().Focused(), "tide")
	if got := d.screen.count.Text(); got != "1 client by that name" {
		t.Errorf("the count says %q", got)
	}
	d.key(fyne.KeyReturn)
	if d.opened != "oskar" {
		t.Errorf("opened %q", d.opened)
	}
}

func TestANewClientNeedsAName(t *testing.T) {
	d := newTestDesk(t, people())
	d.screen.AskName()
	d.key(fyne.KeyReturn)
	if d.opened != "" || d.screen.name.Problem() == "" {
		t.Errorf("opened %q, problem %q", d.opened, d.screen.name.Problem())
	}
	test.Type(d.window.Canvas().Focused(), "  Amina Lantern ")
	d.key(fyne.KeyReturn)
	if row, ok := d.book.Row("new"); d.opened != "new" || !ok || row.Name != "Amina Lantern" {
		t.Errorf("opened %q, %+v", d.opened, row)
	}
}

func TestANewClientThatCannotBeMadeSaysWhy(t *testing.T) {
	d := newTestDesk(t, people())
	d.book.trouble = errors.New("disk is full")
	d.screen.AskName()
	test.Type(d.window.Canvas().Focused(), "Amina")
	d.key(fyne.KeyReturn)
	if got := d.screen.name.Problem(); got != "plainly: disk is full" {
		t.Errorf("problem %q", got)
	}
}

func TestArchivingCanBeUndone(t *testing.T) {
	d := newTestDesk(t, people())
	d.screen.PutAway("wren")
	if !slices.Equal(d.screen.ids, []string{"oskar"}) || d.offered == "" {
		t.Fatalf("list %v, offered %q", d.screen.ids, d.offered)
	}
	d.undo()
	if !slices.Equal(d.screen.ids, []string{"wren", "oskar"}) {
		t.Errorf("after undo: %v", d.screen.ids)
	}
}

func TestArchivedOnesAreBroughtBack(t *testing.T) {
	d := newTestDesk(t, people())
	test.Tap(d.screen.archive)
	if !slices.Equal(d.screen.ids, []string{"jun"}) {
		t.Fatalf("archived: %v", d.screen.ids)
	}
	d.screen.PutAway("jun")
	test.Tap(d.screen.archive)
	if !slices.Contains(d.screen.ids, "jun") {
		t.Errorf("list %v", d.screen.ids)
	}
}

func TestDeletingAsksAndSaysWhatTheLawMayRequire(t *testing.T) {
	d := newTestDesk(t, people())
	d.screen.AskDelete("wren")
	if !strings.Contains(d.asked.Words, "law") || !strings.Contains(d.asked.Title, "Wren Applecart") {
		t.Fatalf("asked %+v", d.asked)
	}
	if len(d.book.rows) != 3 {
		t.Fatal("deleted without an answer")
	}
	d.asked.Do()
	if _, there := d.book.Row("wren"); there || slices.Contains(d.screen.ids, "wren") {
		t.Error("still there")
	}
}

func TestTheListFollowsTheNamesAsTheyAreRead(t *testing.T) {
	d := newTestDesk(t, people())
	d.screen.list.SetCursor(1)
	d.book.rows = append(d.book.rows, Row{ID: "amina", Name: "Amina Lantern"})
	d.screen.Again()
	if !slices.Equal(d.screen.ids, []string{"wren", "oskar", "amina"}) || d.screen.list.Cursor() != 1 {
		t.Errorf("list %v, highlight at %d", d.screen.ids, d.screen.list.Cursor())
	}
}

func TestAnEmptyListSaysWhatToDo(t *testing.T) {
	d := newTestDesk(t, &fakeBook{})
	if !d.screen.empty.Visible() || d.screen.headings.Visible() {
		t.Error("the empty state does not show")
	}
	full := newTestDesk(t, people())
	if full.screen.empty.Visible() {
		t.Error("the empty state shows over a list")
	}
}

func TestDaysAreToldAsPeopleSayThem(t *testing.T) {
	for days, want := range map[int]string{-1: "Yesterday", 0: "Today", 1: "Tomorrow", 2: "4 March", -400: "26 Jan 2025"} {
		if got := day(monday.AddDays(days), monday); got != want {
			t.Errorf("%d days: %q, want %q", days, got, want)
		}
	}
}
