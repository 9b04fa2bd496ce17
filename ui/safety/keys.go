package safety

import (
	"context"

	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// keysPart is the part on passphrase, recovery sheet and key.
type keysPart struct {
	s       *Section
	open    fyne.CanvasObject // shown while there is no passphrase
	sealed  fyne.CanvasObject
	sheet   fyne.CanvasObject // shown until the sheet was tried
	resume  fyne.CanvasObject // shown while a sealing is not finished
	code    *widgets.Field
	try     *widgets.Button
	key, on *widgets.Button
	tried   *long
	work    *long
	object  *fyne.Container
}

const (
	wordsOpen   = "Your practice lies open on this computer: whoever has its files can read them. A passphrase seals all of it."
	wordsSheet  = "The recovery sheet was not tried yet. Type the code from it, to be sure that it opens your practice."
	wordsNone   = "No sheet at hand? Make a new recovery code: it comes with a new sheet."
	wordsKey    = "Change the key where somebody may have a copy of the file and know the passphrase. Everything is sealed anew. Backups made until now keep their key."
	wordsResume = "The sealing was interrupted. It goes on by itself after unlocking, or now."
)

func (s *Section) buildKeys() fyne.CanvasObject {
	p := &keysPart{s: s}
	s.keys = p
	p.tried = newLong("safety.sheet", s.tools, p.show)
	p.work = newLong("safety.key", s.tools, p.show)
	seal := widgets.Name(widgets.NewPrimaryButton("Choose a passphrase", s.ways.Seal), "safety.seal")
	p.open = widgets.ColumnGap(theme.Two, widgets.NewText(wordsOpen, widgets.Body), widgets.Row(seal))
	p.sheet = p.buildSheet()
	p.on = widgets.Name(widgets.NewQuietButton("Go on now", p.onResume), "safety.resume")
	p.resume = widgets.Column(widgets.NewText(wordsResume, widgets.Body), widgets.Row(p.on))
	change := widgets.Name(widgets.NewQuietButton("Change the passphrase", s.ways.Change), "safety.change")
	renew := widgets.Name(widgets.NewQuietButton("New recovery code", s.ways.Renew), "safety.renew")
	p.key = widgets.Name(widgets.NewQuietButton("Change the key", p.onKey), "safety.key")
	p.sealed = widgets.ColumnGap(theme.Two, p.sheet, p.resume, widgets.Row(change, renew),
		widgets.Column(widgets.NewText(wordsKey, widgets.Body), widgets.Row(p.key), p.work.box))
	p.object = widgets.Column(p.open, p.sealed)
	p.renew()
	return p.object
}

func (p *keysPart) buildSheet() fyne.CanvasObject {
	p.code = widgets.Name(widgets.NewField("Recovery code", "All eight groups. Blanks and small letters do not matter."), "safety.code")
	p.code.OnEnter = func(string) { p.onTry() }
	p.try = widgets.Name(widgets.NewPrimaryButton("Try the sheet", p.onTry), "safety.try")
	const narrow = 520
	return widgets.Column(widgets.NewText(wordsSheet, widgets.Body), widgets.Narrow(narrow, p.code),
		widgets.Row(p.try), p.tried.box, widgets.NewText(wordsNone, widgets.Small))
}

// renew shows what is so now.
func (p *keysPart) renew() {
	state := p.s.keeper.State()
	setShown(p.open, !state.Sealed)
	setShown(p.sealed, state.Sealed)
	setShown(p.sheet, !state.SheetTried || p.tried.told.Visible())
	setShown(p.code, !state.SheetTried)
	setShown(p.try, !state.SheetTried)
	setShown(p.resume, state.Unfinished && !p.work.busy())
	p.show()
}

func (p *keysPart) show() {
	setEnabled(!p.work.busy(), p.key, p.on)
	setEnabled(!p.tried.busy(), p.try)
	p.s.object.Refresh()
}

func (p *keysPart) onTry() {
	typed := p.code.Text()
	if typed == "" {
		p.code.SetProblem("Type the code from the sheet.")
		widgets.FocusOn(p.code)
		return
	}
	p.tried.start("Trying the code", nil, func(ctx context.Context, _ Progress) error {
		return p.s.keeper.TryCode(ctx, typed)
	}, func(err error) {
		if err != nil {
			p.code.SetProblem(err.Error())
			widgets.FocusOn(p.code)
			return
		}
		p.tried.say("The sheet is good. Keep it away from this computer.")
		p.s.showMarks()
		p.renew()
	})
}

func (p *keysPart) onKey() {
	p.s.ways.Ask(Question{
		Title: "Change the key?",
		Words: "Everything is sealed anew with a new key; passphrase and recovery sheet stay as they are. " +
			"It can be stopped and goes on later. Copies that lie beside the file from before are removed. " +
			"Make a new backup afterwards: those made until now still open with what opened them.",
		Yes: "Change the key",
		Do:  func() { p.run("Changing the key", p.s.keeper.ChangeKey) },
	})
}

func (p *keysPart) onResume() { p.run("Sealing the practice", p.s.keeper.Resume) }

func (p *keysPart) run(label string, work func(ctx context.Context, progress Progress) error) {
	p.work.start(label, keyWords, work, func(err error) {
		p.work.end("Done. Everything is sealed with the new key.", err)
		p.s.showMarks()
		p.renew()
	})
}
