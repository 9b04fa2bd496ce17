package unlock

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

// sealing is a page to choose a passphrase on, and what it led to.
type sealing struct {
	*bench
	set    string
	code   Code
	err    error
	sealed int
	back   int
	seal   func(progress Progress) (Code, error)
}

func newSealing(t *testing.T) *sealing {
	s := &sealing{bench: newBench(t)}
	s.seal = func(Progress) (Code, error) { return someCode, nil }
	s.show(NewChoose(WordsFirst, fakeAdvise, s.tools(), ChooseWays{
		Seal: func(_ context.Context, passphrase string, progress Progress) (Code, error) {
			s.set = passphrase
			return s.seal(progress)
		},
		Sealed: func(code Code, err error) { s.code, s.err, s.sealed = code, err, s.sealed+1 },
		Back:   func() { s.back++ },
	}))
	return s
}

func TestAPassphraseIsChosenByKeyboard(t *testing.T) {
	s := newSealing(t)
	if got := s.focused(); got != "unlock.first" {
		t.Fatalf("focus on %q", got)
	}
	s.typing(goodPhrase)
	s.key(fyne.KeyReturn)
	if got := s.focused(); got != "unlock.again" {
		t.Fatalf("focus on %q", got)
	}
	s.typing(goodPhrase)
	s.key(fyne.KeyReturn)
	if s.set != goodPhrase || s.sealed != 1 || s.code.String() != someCode.String() {
		t.Errorf("set %q, led on %d times with %v", s.set, s.sealed, s.code)
	}
}

func TestAdviceFollowsTheTyping(t *testing.T) {
	s := newSealing(t)
	s.typing("abc")
	if f := field(t, "unlock.first"); f.Problem() != "" {
		t.Errorf("complains while typing: %q", f.Problem())
	}
	s.key(fyne.KeyReturn)
	if got := field(t, "unlock.first").Problem(); got != "Too short: at least 8 letters." {
		t.Errorf("once left it says %q", got)
	}
	s.fill("unlock.first", "defghijklmnopq")
	if got := field(t, "unlock.first").Problem(); got != "" {
		t.Errorf("mended, it still says %q", got)
	}
}

func TestAPassphraseWithASlipIsNotSet(t *testing.T) {
	s := newSealing(t)
	s.fill("unlock.first", goodPhrase)
	s.fill("unlock.again", goodPhrase+"x")
	widgettest.Press(t, "unlock.do")
	if s.set != "" || field(t, "unlock.again").Problem() != wordsDiffers || s.focused() != "unlock.again" {
		t.Errorf("set %q, says %q, focus on %q", s.set, field(t, "unlock.again").Problem(), s.focused())
	}
}

func TestWhatIsTypedCanBeShown(t *testing.T) {
	s := newSealing(t)
	if !field(t, "unlock.first").Hidden() {
		t.Fatal("shown at first")
	}
	widgettest.Press(t, "unlock.show")
	if field(t, "unlock.first").Hidden() || field(t, "unlock.again").Hidden() {
		t.Error("still hidden")
	}
	widgettest.Press(t, "unlock.show")
	if !field(t, "unlock.first").Hidden() || s.set != "" {
		t.Error("not hidden again")
	}
}

func TestASealingThatFailsSaysWhyAndKeepsWhatWasTyped(t *testing.T) {
	s := newSealing(t)
	s.seal = func(Progress) (Code, error) { return Code{}, errors.New("disk is full") }
	s.fill("unlock.first", goodPhrase)
	s.fill("unlock.again", goodPhrase)
	widgettest.Press(t, "unlock.do")
	if s.sealed != 0 || said(t) != "plainly: disk is full" || field(t, "unlock.first").Text() != goodPhrase {
		t.Errorf("led on %d times, says %q", s.sealed, said(t))
	}
	s.seal = func(Progress) (Code, error) { return someCode, nil }
	widgettest.Press(t, "unlock.do")
	if s.sealed != 1 {
		t.Error("cannot be tried again")
	}
}

func TestTheCodeIsShownWhereTheSealingWasStopped(t *testing.T) {
	s := newSealing(t)
	s.seal = func(Progress) (Code, error) { return someCode, context.Canceled }
	s.fill("unlock.first", goodPhrase)
	s.fill("unlock.again", goodPhrase)
	widgettest.Press(t, "unlock.do")
	if s.code.IsZero() || !task.Canceled(s.err) {
		t.Errorf("code %v, error %v", s.code, s.err)
	}
}

// laterRunner lets a job wait, so that what is shown meanwhile can be looked at.
type laterRunner struct {
	job     task.Job
	stopped bool
}

func (r *laterRunner) Start(job task.Job) func() {
	r.job = job
	return func() { r.stopped = true }
}

func TestSealingShowsHowFarItIsAndCanBeStopped(t *testing.T) {
	b := newBench(t)
	later := &laterRunner{}
	var report Progress
	back := 0
	b.show(NewChoose(WordsLater, fakeAdvise, Tools{Run: later, Clock: b.clock}, ChooseWays{
		Seal: func(_ context.Context, _ string, progress Progress) (Code, error) {
			report = progress
			report(20, 400)
			return someCode, nil
		},
		Sealed: func(Code, error) {}, Back: func() { back++ },
	}))
	b.fill("unlock.first", goodPhrase)
	b.fill("unlock.again", goodPhrase)
	widgettest.Press(t, "unlock.do")
	err := later.job.Work(context.Background())
	b.clock.Advance(time.Second)
	if said(t) != "Sealing: 20 of 400 entries" {
		t.Errorf("says %q", said(t))
	}
	widgettest.Press(t, "unlock.stop")
	if !later.stopped {
		t.Error("not stopped")
	}
	if widgets.Named()["unlock.back"].(*widgets.Button).Tapped(nil); back != 0 {
		t.Error("went back while it runs")
	}
	later.job.Done(err)
	report(30, 400)
	if b.clock.Advance(time.Second); said(t) != "Sealing: 20 of 400 entries" {
		t.Errorf("after the end it counts on: %q", said(t))
	}
}

// confirming is the page that asks for two groups, here the second and the
// fifth.
func confirming(t *testing.T) (b *bench, guard *fakeGuard, went map[string]int) {
	b, guard, went = newBench(t), &fakeGuard{code: someCode}, map[string]int{}
	picks := []int{4, 1}
	b.show(NewConfirm(someCode, guard, b.tools(), ConfirmWays{
		Done: func() { went["done"]++ }, Later: func() { went["later"]++ }, Back: func() { went["back"]++ },
	}, func(int) int {
		next := picks[0]
		picks = picks[1:]
		return next
	}))
	return b, guard, went
}

func TestTwoGroupsAreTypedBack(t *testing.T) {
	b, guard, went := confirming(t)
	if shown := widgettest.Outline(b.window); strings.Contains(shown, "EFGH") || strings.Contains(shown, "STUW") {
		t.Error("the groups are on the page that asks for them")
	}
	b.typing("efgh")
	b.key(fyne.KeyReturn)
	b.typing("stuw")
	b.key(fyne.KeyReturn)
	if went["done"] != 1 || !guard.confirmed {
		t.Errorf("led on %v, confirmed %v", went, guard.confirmed)
	}
}

func TestAWrongGroupIsNamed(t *testing.T) {
	b, guard, went := confirming(t)
	b.typing("efgh")
	b.key(fyne.KeyReturn)
	b.typing("stux")
	b.key(fyne.KeyReturn)
	if went["done"] != 0 || guard.confirmed || field(t, "unlock.asked5").Problem() != "This is not group 5. Compare it with the sheet." {
		t.Errorf("led on %v, says %q", went, field(t, "unlock.asked5").Problem())
	}
	widgettest.Press(t, "unlock.later")
	widgettest.Press(t, "unlock.back")
	if went["later"] != 1 || went["back"] != 1 || guard.confirmed {
		t.Errorf("led on %v", went)
	}
}

func TestThePassphraseIsChanged(t *testing.T) {
	b, guard, changed := newBench(t), &fakeGuard{passphrase: "the former one"}, 0
	b.show(NewChange(guard, fakeAdvise, b.tools(), ChangeWays{Changed: func() { changed++ }}))
	b.fill("unlock.first", goodPhrase)
	b.fill("unlock.again", goodPhrase)
	widgettest.Press(t, "unlock.do")
	if changed != 0 || field(t, "unlock.old").Problem() != wordsOld {
		t.Errorf("without the old one it says %q", field(t, "unlock.old").Problem())
	}
	b.fill("unlock.old", "no")
	widgettest.Press(t, "unlock.do")
	if changed != 0 || field(t, "unlock.old").Problem() != errWrong.Words {
		t.Errorf("with a wrong one it says %q", field(t, "unlock.old").Problem())
	}
	field(t, "unlock.old").SetText("the former one")
	widgettest.Press(t, "unlock.do")
	if changed != 1 || guard.passphrase != goodPhrase {
		t.Errorf("changed %d times, now %q", changed, guard.passphrase)
	}
}

func TestTheDelayHoldsForAChangeToo(t *testing.T) {
	b, guard, made := newBench(t), &fakeGuard{passphrase: goodPhrase, next: otherCode, wait: time.Second}, Code{}
	b.show(NewRenew(guard, b.tools(), RenewWays{Made: func(code Code) { made = code }}))
	b.typing(goodPhrase)
	b.key(fyne.KeyReturn)
	if !made.IsZero() || field(t, "unlock.old").Problem() != "Too many wrong passphrases. Try again in 1 second." {
		t.Errorf("says %q", field(t, "unlock.old").Problem())
	}
	guard.wait = 0
	widgettest.Press(t, "unlock.do")
	if made.String() != otherCode.String() {
		t.Errorf("made %v", made)
	}
}

func TestEveryControlIsReachedByTab(t *testing.T) {
	for name, want := range pagesByTab() {
		b := newBench(t)
		b.show(want.make(b))
		seen := map[string]bool{}
		for _, control := range widgettest.Walk(b.window.Canvas()) {
			seen[control] = true
		}
		for _, control := range want.controls {
			if !seen["unlock."+control] {
				t.Errorf("%s: Tab never comes to %s", name, control)
			}
		}
	}
}

type reachable struct {
	make     func(b *bench) page
	controls []string
}

func pagesByTab() map[string]reachable {
	guard := &fakeGuard{code: someCode}
	return map[string]reachable{
		"choose": {
			func(b *bench) page { return NewChoose(WordsFirst, fakeAdvise, b.tools(), ChooseWays{}) },
			[]string{"first", "again", "show", "do", "back"},
		},
		"enter": {
			func(b *bench) page { return NewEnter(guard, b.tools(), EnterWays{}, "") },
			[]string{"passphrase", "do", "show", "recover"},
		},
		"recover": {
			func(b *bench) page { return NewRecover(guard, fakeAdvise, b.tools(), RecoverWays{}) },
			[]string{"code", "first", "again", "show", "do", "back", "restore"},
		},
		"code": {
			func(b *bench) page { return NewShowCode(someCode, &fakeSheet{}, b.tools(), CodeWays{}, "") },
			[]string{"print", "save", "on"},
		},
		"confirm": {func(b *bench) page {
			return NewConfirm(someCode, guard, b.tools(), ConfirmWays{}, func(int) int { return 0 })
		}, []string{"asked1", "asked2", "do", "later", "back"}},
		"change": {
			func(b *bench) page { return NewChange(guard, fakeAdvise, b.tools(), ChangeWays{}) },
			[]string{"old", "first", "again", "show", "do", "back"},
		},
		"renew": {
			func(b *bench) page { return NewRenew(guard, b.tools(), RenewWays{}) },
			[]string{"old", "do", "back"},
		},
	}
}
