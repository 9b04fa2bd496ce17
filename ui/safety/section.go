package safety

import (
	"fyne.io/fyne/v2"

	"handbreadth/ui/task"
	"handbreadth/ui/theme"
	"handbreadth/ui/widgets"
)

// Section is the part of the practice page on keeping files safe.
type Section struct {
	keeper Keeper
	tools  Tools
	ways   Ways

	minutes int
	backups Backups
	known   bool // backups were read
	copies  int

	folds struct{ keys, lock, backups, record, copies *widgets.Fold }
	keys  *keysPart   // nil until its fold was opened, as all parts are
	kept  *backupPart // of backups
	past  *recordPart
	old   *copiesPart

	object *fyne.Container
}

// New returns the section. Minutes is after how long the program locks by
// itself.
func New(keeper Keeper, minutes int, tools Tools, ways Ways) *Section {
	s := &Section{keeper: keeper, minutes: minutes, tools: tools, ways: ways}
	s.folds.record = s.fold("record", "Record of who did what", s.buildRecord)
	s.folds.record.SetMark(widgets.FoldMark{Text: "Opened, changed, printed, deleted"})
	if keeper.State().Demo {
		s.object = widgets.Narrow(sectionWidth, widgets.Column(heading(), widgets.NewText(wordsDemo, widgets.Body), s.folds.record))
		return s
	}
	s.folds.keys = s.fold("keys", "Passphrase and recovery sheet", s.buildKeys)
	s.folds.lock = s.fold("lock", "Locking", s.buildLock)
	s.folds.backups = s.fold("backups", "Backups", s.buildBackups)
	s.folds.copies = s.fold("copies", "Old copies", s.buildCopies)
	s.folds.copies.Hide()
	s.object = widgets.Narrow(sectionWidth, widgets.ColumnGap(0, widgets.InsetSides(0, 0, 0, theme.Unit, heading()),
		s.folds.keys, s.folds.lock, s.folds.backups, s.folds.record, s.folds.copies))
	s.showMarks()
	return s
}

// sectionWidth keeps a head and what it says at its end together.
const sectionWidth = 960

const wordsDemo = "Everything in the demo is invented, so it has no passphrase and no backups. " +
	"In your own practice they are here."

func heading() fyne.CanvasObject { return widgets.NewText("Safe keeping", widgets.Title) }

func (s *Section) fold(name, title string, build func() fyne.CanvasObject) *widgets.Fold {
	return widgets.Name(widgets.NewFold(title, build), "safety."+name)
}

// Object is what is shown.
func (s *Section) Object() fyne.CanvasObject { return s.object }

// Renew reads anew what may have changed since the page was left.
func (s *Section) Renew() {
	if s.past != nil {
		s.past.renew()
	}
	if s.keeper.State().Demo {
		return
	}
	s.showMarks()
	if s.keys != nil {
		s.keys.renew()
	}
	s.readBackups()
	s.readCopies()
}

func (s *Section) readBackups() {
	task.Run(s.tools.Run, "Looking at the backups", s.keeper.Backups, func(found Backups, err error) {
		if err != nil {
			if s.kept != nil {
				s.kept.work.warn(err.Error())
			}
			return
		}
		s.backups, s.known = found, true
		if s.kept != nil {
			s.kept.renew()
		}
		s.showMarks()
	})
}

func (s *Section) readCopies() {
	task.Run(s.tools.Run, "Looking for old copies", s.keeper.OldCopies, func(found int, err error) {
		if err != nil {
			return // told where they are to be removed
		}
		s.copies = found
		if s.old != nil {
			s.old.renew()
		}
		s.showMarks()
	})
}

// showMarks says in each head what is in its part.
func (s *Section) showMarks() {
	if s.folds.keys == nil {
		return
	}
	words, wanting := sealSummary(s.keeper.State())
	s.folds.keys.SetMark(mark(words, wanting))
	s.folds.lock.SetMark(mark(lockSummary(s.minutes), false))
	if !s.keeper.State().Sealed {
		s.folds.lock.SetMark(mark("Needs a passphrase", false))
	}
	if s.known {
		words, wanting = backupSummary(s.backups, s.tools.now())
		s.folds.backups.SetMark(mark(words, wanting))
	}
	s.folds.copies.SetMark(mark(counted(s.copies, "copy", "copies"), false))
	setShown(s.folds.copies, s.copies > 0 || s.folds.copies.Open())
	s.ways.Wanting(wantingWords(s.keeper.State(), s.backups, s.known, s.tools.now()))
	s.object.Refresh()
}

// FocusFirst gives the focus to the first part, which brings it into view.
func (s *Section) FocusFirst() {
	if s.folds.keys == nil {
		widgets.FocusOn(s.folds.record)
		return
	}
	widgets.FocusOn(s.folds.keys)
}

// See opens the first part in which something is still to be done, and leads
// there.
func (s *Section) See() {
	fold := s.folds.backups
	if _, wanting := sealSummary(s.keeper.State()); wanting {
		fold = s.folds.keys
	}
	fold.SetOpen(true)
	s.object.Refresh()
	widgets.FocusOn(fold)
}

func mark(words string, wanting bool) widgets.FoldMark {
	if wanting {
		return widgets.FoldMark{Text: words, Kind: widgets.MarkWanting}
	}
	return widgets.FoldMark{Text: words}
}

// buildLock makes the part on locking.
func (s *Section) buildLock() fyne.CanvasObject {
	options := make([]widgets.Option, len(lockChoices))
	chosen := -1
	for i, minutes := range lockChoices {
		options[i] = widgets.Option{Label: lockWords(minutes)}
		if minutes == s.minutes {
			chosen = i
		}
	}
	after := widgets.Name(widgets.NewChoice("Lock by itself when nobody types or moves the pointer for", options, func(i int) {
		s.minutes = lockChoices[i]
		s.ways.LockAfter(s.minutes)
		s.showMarks()
	}), "safety.lock.after")
	after.SetSelected(chosen)
	now := widgets.Name(widgets.NewQuietButton("Lock now", s.ways.Lock), "safety.lock.now")
	return widgets.ColumnGap(theme.Two,
		widgets.NewText("The locked window shows nothing of anybody. What was typed is saved first, and is there again after unlocking. Ctrl+L locks at once.", widgets.Body),
		after, widgets.Row(now))
}

func setShown(object fyne.CanvasObject, shown bool) {
	if shown {
		object.Show()
	} else {
		object.Hide()
	}
}

func setEnabled(enabled bool, buttons ...*widgets.Button) {
	for _, b := range buttons {
		if enabled {
			b.Enable()
		} else {
			b.Disable()
		}
	}
}
