package handout

import (
	"errors"
	"reflect"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"handbreadth/ui/draft"
	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

var errDisk = &task.Failure{Words: "The disk is full. Make room, then save again."}

func tap(t *testing.T, name string) {
	t.Helper()
	button, ok := widgets.Named()[name].(*widgets.Button)
	if !ok {
		t.Fatalf("there is no button %q", name)
	}
	test.Tap(button)
}

// pick clicks an option of a choice.
func pick(object fyne.CanvasObject, index int) {
	switch c := object.(type) {
	case *widgets.MultiChoice:
		c.Tapped(&fyne.PointEvent{Position: c.Spot(index)})
	case *widgets.Choice:
		c.Tapped(&fyne.PointEvent{Position: c.Spot(index)})
	}
}

func TestNamesForTheProbe(t *testing.T) {
	sit(t, answers(), task.Inline{})
	named := widgets.Named()
	for _, name := range []string{"save", "print", "paper", "without_numbers", "next_step", "next_visit", "preview", "pages"} {
		if named["handout."+name] == nil {
			t.Errorf("nothing is called handout.%s", name)
		}
	}
}

func TestBeginsWithTheUsualPagesOnA4(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	want := Choice{Paper: A4, Pages: []string{"glance", "why", "foods"}}
	if len(d.papers.previews) != 1 || !reflect.DeepEqual(d.papers.previews[0], want) {
		t.Errorf("%+v", d.papers.previews)
	}
	if d.pages() != 3 || d.previewed() != "" {
		t.Errorf("%d pages, %q", d.pages(), d.previewed())
	}
}

func TestEveryChoiceReachesThePaper(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	pick(d.screen.choices.pages, 1)
	pick(d.screen.choices.paper, 1)
	pick(d.screen.choices.without, 0)
	test.Type(d.screen.choices.step.FocusTarget(), "Fruit at breakfast")
	test.Type(d.screen.choices.visit.FocusTarget(), "30/3/2026")
	if len(d.papers.previews) != 1 {
		t.Fatalf("%d previews before the pause", len(d.papers.previews))
	}
	d.pause()
	want := Choice{
		Paper: Letter, WithoutNumbers: true, Pages: []string{"glance", "foods"},
		NextStep: "Fruit at breakfast", NextVisit: "30 March 2026",
	}
	if len(d.papers.previews) != 2 || !reflect.DeepEqual(d.papers.previews[1], want) {
		t.Errorf("%+v", d.papers.previews)
	}
	if d.session.Get(draft.NextStep) != "Fruit at breakfast" || d.session.Get(draft.NextVisit) != "30/3/2026" {
		t.Errorf("the form has %q and %q", d.session.Get(draft.NextStep), d.session.Get(draft.NextVisit))
	}
	tap(t, "handout.save")
	tap(t, "handout.print")
	if !reflect.DeepEqual(d.papers.saved, []Choice{want}) || !reflect.DeepEqual(d.papers.printed, []Choice{want}) {
		t.Errorf("saved %+v, printed %+v", d.papers.saved, d.papers.printed)
	}
}

func TestUndoIsFollowed(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	test.Type(d.screen.choices.step.FocusTarget(), "Walk")
	d.session.Undo()
	if text := d.screen.choices.step.Text(); text != "" {
		t.Errorf("%q is left", text)
	}
}

func TestNoPageIsNoPaper(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	for i := range 3 {
		pick(d.screen.choices.pages, i)
	}
	d.pause()
	if d.pages() != 0 || d.previewed() != wordsNoPages || !d.screen.choices.save.Disabled() || !d.screen.choices.print.Disabled() {
		t.Errorf("%d pages, %q", d.pages(), d.previewed())
	}
	d.screen.onSave()
	if len(d.asked) != 0 || len(d.papers.previews) != 1 {
		t.Error("a paper without pages was asked for")
	}
	pick(d.screen.choices.pages, 2)
	d.pause()
	if d.pages() != 1 || d.screen.choices.save.Disabled() {
		t.Errorf("%d pages after one was chosen", d.pages())
	}
}

func TestSaveProposesANameAndTellsTheFile(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	tap(t, "handout.save")
	if !reflect.DeepEqual(d.asked, []string{"Robin plan 2026-03-02.pdf"}) || !reflect.DeepEqual(d.papers.paths, []string{"/papers/robin.pdf"}) {
		t.Errorf("asked %q, saved %q", d.asked, d.papers.paths)
	}
	if d.said() != "Saved as robin.pdf in the folder papers." {
		t.Errorf("%q", d.said())
	}
	if len(d.papers.previews) != 2 {
		t.Errorf("%d previews: the number of the plan that was kept is not shown", len(d.papers.previews))
	}
	d.session.Set(draft.NextStep, "Walk")
	if d.said() != "" {
		t.Errorf("after a change it says still %q", d.said())
	}
}

func TestClosedDialogSavesNothing(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	d.path = ""
	tap(t, "handout.save")
	if len(d.asked) != 1 || len(d.papers.saved) != 0 || d.said() != "" {
		t.Errorf("asked %q, saved %v, said %q", d.asked, d.papers.saved, d.said())
	}
	d.screen.saveTo("")
	if len(d.papers.saved) != 0 {
		t.Error("saved without a path")
	}
}

func TestPrintTellsThatItIsHandedOver(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	tap(t, "handout.print")
	if len(d.papers.printed) != 1 || d.said() != wordsPrinted || len(d.asked) != 0 {
		t.Errorf("printed %v, said %q", d.papers.printed, d.said())
	}
}

func TestFailuresInPlainWords(t *testing.T) {
	for _, c := range []struct {
		err  error
		want string
	}{{errDisk, errDisk.Words}, {errors.New("x509: 0xdead"), task.Words(errors.New("x"))}} {
		d := sit(t, answers(), task.Inline{})
		d.papers.err = c.err
		for _, name := range []string{"handout.save", "handout.print"} {
			tap(t, name)
			if d.said() != c.want || d.screen.choices.save.Disabled() {
				t.Errorf("%s: %q", name, d.said())
			}
		}
		d.session.Set(draft.NextStep, "Walk")
		d.pause()
		if d.previewed() != c.want || d.pages() != 0 {
			t.Errorf("preview: %q beside %d pages", d.previewed(), d.pages())
		}
		d.papers.err = nil
		tap(t, "handout.again")
		if d.pages() != 3 || d.previewed() != "" {
			t.Errorf("tried again: %d pages, %q", d.pages(), d.previewed())
		}
	}
}

func TestPreviewCanBeStopped(t *testing.T) {
	slow := &slowRunner{}
	d := sit(t, answers(), slow)
	if d.previewed() != wordsDrawing || d.screen.preview.told.button.Text() != "Stop" {
		t.Errorf("%q, %q", d.previewed(), d.screen.preview.told.button.Text())
	}
	tap(t, "handout.again")
	slow.next(t)
	if d.pages() != 0 || d.previewed() != wordsStopped {
		t.Errorf("%d pages, %q", d.pages(), d.previewed())
	}
	tap(t, "handout.again")
	slow.next(t)
	if d.pages() != 3 || d.previewed() != "" {
		t.Errorf("%d pages, %q", d.pages(), d.previewed())
	}
}

func TestPagesStayWhileNewOnesAreMade(t *testing.T) {
	slow := &slowRunner{}
	d := sit(t, answers(), slow)
	slow.next(t)
	pick(d.screen.choices.pages, 0)
	d.pause()
	if d.pages() != 3 || d.previewed() != "" {
		t.Errorf("at once: %d pages, %q", d.pages(), d.previewed())
	}
	d.clock.Advance(task.ProgressAfter)
	if d.pages() != 3 || d.previewed() != wordsDrawing {
		t.Errorf("after a while: %d pages, %q", d.pages(), d.previewed())
	}
	slow.next(t)
	if d.pages() != 2 || d.previewed() != "" {
		t.Errorf("in the end: %d pages, %q", d.pages(), d.previewed())
	}
}

func TestOnlyTheNewestPreviewIsShown(t *testing.T) {
	slow := &slowRunner{}
	d := sit(t, answers(), slow)
	pick(d.screen.choices.pages, 0)
	d.pause()
	slow.next(t) // the older one, stopped by the newer
	if d.pages() != 0 || d.previewed() != wordsDrawing {
		t.Errorf("the older one: %d pages, %q", d.pages(), d.previewed())
	}
	slow.next(t)
	if d.pages() != 2 {
		t.Errorf("%d pages", d.pages())
	}
}

func TestSavingCanBeStopped(t *testing.T) {
	slow := &slowRunner{}
	d := sit(t, answers(), slow)
	slow.next(t)
	tap(t, "handout.save")
	if d.said() != wordsSaving || !d.screen.choices.save.Disabled() || !d.screen.choices.print.Disabled() {
		t.Errorf("%q", d.said())
	}
	d.screen.onPrint()
	if len(slow.jobs) != 1 {
		t.Error("printing began beside saving")
	}
	d.session.Set(draft.NextStep, "Walk")
	if d.said() != wordsSaving {
		t.Errorf("typing took away the way to stop: %q", d.said())
	}
	tap(t, "handout.stop")
	slow.next(t)
	if len(d.papers.saved) != 0 || !strings.HasPrefix(d.said(), "Stopped") || d.screen.choices.save.Disabled() {
		t.Errorf("saved %v, said %q", d.papers.saved, d.said())
	}
}

func TestHeldSaysWhatIsMissing(t *testing.T) {
	d := sit(t, with("screening.lithium", "yes"), task.Inline{})
	if len(d.papers.previews) != 0 || d.screen.preview.object.Visible() || !d.screen.choices.save.Disabled() {
		t.Error("a plan on hold is shown")
	}
	tap(t, "handout.hold1")
	if d.gone != (way{Section: "screening", Field: draft.Reason("lithium", draft.ReasonText)}) {
		t.Errorf("%+v", d.gone)
	}
	d.screen.onSave()
	d.screen.onPrint()
	if len(d.asked)+len(d.papers.printed) != 0 {
		t.Error("a plan on hold leaves the desk")
	}
	d.session.Set(draft.Reason("lithium", draft.ReasonText), "Agreed with the prescriber")
	d.pause()
	if d.pages() != 3 || d.screen.choices.save.Disabled() || d.screen.notice.object.Visible() {
		t.Errorf("with a reason: %d pages", d.pages())
	}
}

func TestHoldTakesThePagesAway(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	d.session.Set(draft.Screening("lithium"), draft.AnswerYes)
	d.pause()
	if d.pages() != 0 || len(d.papers.previews) != 1 {
		t.Errorf("%d pages of a plan on hold", d.pages())
	}
}

func TestReferralNoteIsThePaper(t *testing.T) {
	d := sit(t, with("screening.type_1_diabetes", "yes", "next_visit", "soon"), task.Inline{})
	if !d.papers.previewReferred || d.screen.choices.plan.Visible() || d.screen.notice.object.Hidden {
		t.Error("the note is not shown as such")
	}
	tap(t, "handout.save")
	tap(t, "handout.print")
	if !reflect.DeepEqual(d.asked, []string{"Robin referral 2026-03-02.pdf"}) || len(d.papers.saved) != 1 || len(d.papers.printed) != 1 {
		t.Errorf("asked %q, saved %v, printed %v", d.asked, d.papers.saved, d.papers.printed)
	}
}

func TestIncompleteLeadsToWhatIsMissing(t *testing.T) {
	d := sit(t, with("height", ""), task.Inline{})
	tap(t, "handout.way")
	if d.gone != (way{Section: "intake", Field: draft.Height}) || len(d.papers.previews) != 0 || !d.screen.choices.print.Disabled() {
		t.Errorf("%+v", d.gone)
	}
}

func TestNextVisitThatCannotBeReadIsNotLeftOut(t *testing.T) {
	for _, text := range []string{"soon", "2026-03-02", "2026-02-01"} {
		d := sit(t, with("next_visit", text), task.Inline{})
		tap(t, "handout.save")
		tap(t, "handout.print")
		if len(d.papers.saved)+len(d.papers.printed)+len(d.asked) != 0 || d.said() != wordsNoVisit {
			t.Errorf("%q: said %q", text, d.said())
		}
		if d.screen.choices.visit.Problem() == "" {
			t.Errorf("%q: the field says nothing", text)
		}
		if d.window.Canvas().Focused() != d.screen.choices.visit.FocusTarget() {
			t.Errorf("%q: the field has not the focus", text)
		}
	}
}

func TestHiddenSectionMakesNoPages(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	d.screen.Object().Hide()
	d.session.Set(draft.Weight, "80 kg")
	d.pause()
	if len(d.papers.previews) != 1 {
		t.Errorf("%d previews", len(d.papers.previews))
	}
	d.screen.Object().Show()
	d.screen.Object().Show()
	if len(d.papers.previews) != 2 {
		t.Errorf("shown again: %d previews", len(d.papers.previews))
	}
}

func TestPaperOfThePractice(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	d.screen.SetPaper("A3")
	d.screen.SetPaper(Letter)
	d.pause()
	if last := d.papers.previews[len(d.papers.previews)-1]; last.Paper != Letter || len(d.papers.previews) != 2 {
		t.Errorf("%+v", d.papers.previews)
	}
}

func TestFocusFindsItsFields(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	d.screen.Focus(draft.NextVisit)
	if d.window.Canvas().Focused() != d.screen.choices.visit.FocusTarget() {
		t.Error("next visit has not the focus")
	}
	d.screen.Focus(draft.NextStep)
	d.screen.Focus(draft.Weight)
	if d.window.Canvas().Focused() != d.screen.choices.step.FocusTarget() {
		t.Error("next step has not the focus")
	}
}

func TestWithoutNumbersStaysWithTheClient(t *testing.T) {
	d := sit(t, answers(), task.Inline{})
	pick(d.screen.choices.without, 0)
	if d.session.Get(WithoutNumbers) != draft.AnswerYes {
		t.Fatal("the switch is not in the form")
	}
	again := sit(t, d.session.Form(), task.Inline{})
	if got := again.papers.previews[0]; !got.WithoutNumbers || len(again.screen.choices.without.Selected()) != 1 {
		t.Errorf("opened again: %+v", got)
	}
	again.session.Set(WithoutNumbers, "")
	if len(again.screen.choices.without.Selected()) != 0 {
		t.Error("the switch does not follow the form")
	}
}
