package unlock

import (
	"context"

	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/widgets"
)

// ChooseWords are the words of a page on which a first passphrase is chosen.
type ChooseWords struct{ Title, Lead, Do, Back string }

// The pages on which a first passphrase is chosen: for a new practice, and for
// one that was kept open until now.
var (
	WordsFirst = ChooseWords{
		Title: "Choose a passphrase",
		Lead: "It seals everything that you keep on your clients on this computer. Nobody can read it without the passphrase, " +
			"and nobody can look it up for you. Next you get a recovery code, for the day on which it is forgotten.",
		Do: "Seal my practice", Back: "Go back",
	}
	WordsLater = ChooseWords{
		Title: "Seal your practice",
		Lead: "Your practice lies open on this computer: whoever has its files can read them. " +
			"A passphrase seals all of it. That takes a moment and can be stopped; nothing is lost. " +
			"Copies that lie beside the file from before are removed, because they would stay open.",
		Do: "Seal my practice", Back: "Not now",
	}
)

// ChooseWays lead on from the page.
type ChooseWays struct {
	// Seal sets the passphrase. The code is there as soon as the passphrase
	// holds, also with an error.
	Seal func(ctx context.Context, passphrase string, progress Progress) (Code, error)
	// Sealed takes the code, and what kept the sealing from being finished; its
	// rest goes on later.
	Sealed func(code Code, err error)
	Back   func()
}

// Choose is a page on which a first passphrase is chosen.
type Choose struct {
	tools Tools
	ways  ChooseWays

	pair     *pair
	do, back *widgets.Button
	stop     *widgets.Button
	meter    *widgets.Meter
	told     told
	object   fyne.CanvasObject
	cancel   func() // nil while nothing runs
}

// NewChoose returns the page.
func NewChoose(words ChooseWords, advise Adviser, tools Tools, ways ChooseWays) *Choose {
	s := &Choose{tools: tools, ways: ways, meter: widgets.NewMeter(), told: newTold("unlock.told")}
	s.pair = newPair("unlock", "Passphrase", advise, s.onDo)
	s.do = widgets.Name(widgets.NewPrimaryButton(words.Do, s.onDo), "unlock.do")
	s.back = widgets.Name(widgets.NewQuietButton(words.Back, s.onBack), "unlock.back")
	s.stop = widgets.Name(widgets.NewQuietButton("Stop", s.onStop), "unlock.stop")
	s.stop.Hide()
	s.meter.Hide()
	s.object = front(words.Title, words.Lead,
		s.pair.object, widgets.Row(s.do, s.back, s.stop),
		widgets.Column(widgets.Narrow(240, s.meter), s.told.Text))
	return s
}

// Object is what is shown.
func (s *Choose) Object() fyne.CanvasObject { return s.object }

// FocusFirst gives the focus to the passphrase.
func (s *Choose) FocusFirst() { widgets.FocusOn(s.pair.first) }

// Escape goes back, unless something runs.
func (s *Choose) Escape() { s.onBack() }

// Busy reports whether a sealing runs, whose code must be shown.
func (s *Choose) Busy() bool { return s.cancel != nil }

func (s *Choose) onBack() {
	if s.cancel == nil {
		s.ways.Back()
	}
}

func (s *Choose) onStop() {
	if s.cancel != nil {
		s.cancel()
	}
}

func (s *Choose) onDo() {
	if s.cancel != nil {
		return
	}
	passphrase, ok := s.pair.take()
	if !ok {
		return
	}
	gauge := &task.Gauge{}
	s.show(true)
	s.told.say(sealedWords(0, 0))
	unfollow := gauge.Follow(s.tools.Clock, s.showProgress)
	var code Code
	var over bool
	stop := s.tools.Run.Start(task.Job{
		Label: "Sealing the practice",
		Work: func(ctx context.Context) (err error) {
			code, err = s.ways.Seal(ctx, passphrase, gauge.Set)
			return err
		},
		Done: func(err error) {
			over = true
			unfollow()
			s.done(code, err)
		},
	})
	if !over {
		s.cancel = stop
	}
}

func (s *Choose) showProgress(done, total int) {
	s.told.say(sealedWords(done, total))
	setShown(s.meter, total > 0)
	if total > 0 {
		s.meter.SetShare(float64(done) / float64(total))
	}
}

func (s *Choose) done(code Code, err error) {
	s.cancel = nil
	if !code.IsZero() {
		s.ways.Sealed(code, err)
		return
	}
	s.show(false)
	s.told.warn(task.Words(err))
	widgets.FocusOn(s.do)
}

// show shows whether something runs.
func (s *Choose) show(running bool) {
	s.pair.setEnabled(!running)
	setEnabled(!running, s.do, s.back)
	setShown(s.stop, running)
	setShown(s.meter, false)
	if running {
		s.cancel = func() {}
	}
	s.object.Refresh()
}
