package safety

import (
	"context"

	"fyne.io/fyne/v2"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// restoreWays lead up from what can be done with a backup.
type restoreWays struct {
	ask     func(Question)
	restore func(Restoring)
	changed func() // something needs another height now
}

// restoreBox is what can be done with one backup: checking it, and looking
// inside before it takes the place of the file in use.
type restoreBox struct {
	backup   Backup
	restorer Restorer
	rehearse func(ctx context.Context, path, secret string) (Inside, error) // nil: not offered
	tools    Tools
	ways     restoreWays

	secret      *widgets.Field
	check, look *widgets.Button
	work        *long
	preview     *fyne.Container
	inside, now *widgets.Text
	warn        *widgets.Text
	put, leave  *widgets.Button
	object      *fyne.Container

	ready Restoring // unpacked and looked at; nil: none
}

func newRestoreBox(
	name string, b Backup, restorer Restorer, rehearse func(context.Context, string, string) (Inside, error), tools Tools, ways restoreWays,
) *restoreBox {
	r := &restoreBox{backup: b, restorer: restorer, rehearse: rehearse, tools: tools, ways: ways}
	r.secret = widgets.Name(widgets.NewPasswordField("Passphrase or recovery code of that day",
		"The one that held when the backup was made."), name+".secret")
	if b.Unknown {
		r.secret.SetHint("The one that held when the backup was made; nothing where it is not sealed.")
	}
	r.check = widgets.Name(widgets.NewQuietButton("Check it", r.onCheck), name+".check")
	r.look = widgets.Name(widgets.NewQuietButton("Look inside to restore", r.onLook), name+".look")
	r.secret.OnEnter = func(string) { r.onLook() }
	r.work = newLong(name, tools, r.show)
	r.inside, r.now, r.warn = widgets.NewText("", widgets.Body), widgets.NewText("", widgets.Body), widgets.NewText("", widgets.Problem)
	r.put = widgets.Name(widgets.NewPrimaryButton("Restore this", r.onPut), name+".put")
	r.leave = widgets.Name(widgets.NewQuietButton("Leave it", r.onLeave), name+".leave")
	r.preview = widgets.Column(r.inside, r.now, r.warn, widgets.Row(r.put, r.leave))
	r.preview.Hide()
	setShown(r.secret, b.Sealed || b.Unknown)
	setShown(r.check, rehearse != nil)
	const narrow = 520
	r.object = widgets.ColumnGap(theme.Two, widgets.Narrow(narrow, r.secret),
		widgets.Column(widgets.Row(r.check, r.look), r.work.box), r.preview)
	return r
}

func (r *restoreBox) show() {
	setEnabled(!r.work.busy(), r.check, r.look, r.put, r.leave)
	r.ways.changed()
}

// typedSecret returns what opens the backup, or says that it is missing.
func (r *restoreBox) typedSecret() (secret string, ok bool) {
	secret = r.secret.Text()
	if r.backup.Sealed && secret == "" {
		r.secret.SetProblem("Type the passphrase, or the recovery code, that held when this backup was made.")
		widgets.FocusOn(r.secret)
		return "", false
	}
	return secret, true
}

func (r *restoreBox) onCheck() {
	secret, ok := r.typedSecret()
	if !ok {
		return
	}
	var inside Inside
	r.work.start("Restoring it on trial", nil, func(ctx context.Context, _ Progress) (err error) {
		inside, err = r.rehearse(ctx, r.backup.Path, secret)
		return err
	}, func(err error) { r.work.end(checkedWords(inside), err) })
}

func (r *restoreBox) onLook() {
	secret, ok := r.typedSecret()
	if !ok || r.work.busy() {
		return
	}
	r.onLeave()
	var ready Restoring
	r.work.start("Unpacking and checking the backup", nil, func(ctx context.Context, _ Progress) (err error) {
		ready, err = r.restorer.Prepare(ctx, r.backup.Path, secret)
		return err
	}, func(err error) {
		if err != nil {
			r.work.warn(err.Error())
			return
		}
		r.ready = ready
		r.showPreview()
	})
}

// showPreview compares what is inside with the file in use.
func (r *restoreBox) showPreview() {
	now := r.tools.now()
	inside := r.ready.Inside()
	present, known := r.ready.Present()
	r.inside.SetText("In the backup of " + moment(inside.MadeAt, now) + ": " + inside.contents() + ", " + inside.changed(now) + ".")
	r.now.SetText("In use now: " + present.contents() + ", " + present.changed(now) + ".")
	setShown(r.now, known)
	words := ""
	for i, w := range warnings(inside, present, known, now) {
		if i > 0 {
			words += "\n"
		}
		words += w
	}
	r.warn.SetText(words)
	setShown(r.warn, words != "")
	r.preview.Show()
	r.work.say("Unpacked and checked. Compare below.")
}

func (r *restoreBox) onPut() {
	if r.ready == nil {
		return
	}
	_, known := r.ready.Present()
	words := "A file that is there already is kept beside it. "
	if known {
		words = "The file in use is kept beside it, among the old copies. "
	}
	words += "The restored file is opened with the passphrase of the day of the backup."
	r.ways.ask(Question{Title: "Restore this backup?", Words: words, Yes: "Restore it", Do: func() {
		ready := r.ready
		r.ready = nil
		r.ways.restore(ready)
	}})
}

// onLeave removes what was unpacked.
func (r *restoreBox) onLeave() {
	if r.ready == nil {
		return
	}
	err := r.ready.Discard()
	r.ready = nil
	r.preview.Hide()
	r.work.end("Nothing was changed.", err)
	r.ways.changed()
}
