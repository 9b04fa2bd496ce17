package ui

import (
	"context"
	"time"

	"handbreadth/ui/safety"
	"handbreadth/ui/task"
)

// duty is what is done beside the work while a practice is open: names are read,
// an interrupted sealing goes on, and the backup of the day is made.
type duty struct {
	stops []func()
	told  string // the last trouble with backups that was told
}

const (
	// backupEvery is how often it is looked whether a backup is due: once a day
	// is enough, and midnight comes while the program is open.
	backupEvery = time.Hour
	// namesEvery is how often the list is shown anew while names are read.
	namesEvery = 200 * time.Millisecond
)

func (d *duty) end() {
	for _, stop := range d.stops {
		stop()
	}
	d.stops = nil
}

// later does something after a while, unless the session ends before.
func (s *Shell) later(pause time.Duration, f func()) {
	span := s.span
	s.duty.stops = append(s.duty.stops, task.After(s.tools.Clock, pause, func() {
		if span != nil && !span.Over() {
			f()
		}
	}))
}

// beginDuty begins what is done beside the work.
func (s *Shell) beginDuty() {
	s.duty = duty{}
	s.awaitNames()
	if s.door.Sealed() {
		s.idle.begin()
	}
	if s.door.Demo() {
		return
	}
	if s.door.Keeper().State().Unfinished {
		s.resume()
	}
	s.backUpIfDue()
}

// awaitNames shows the names of the list as they are read.
func (s *Shell) awaitNames() {
	if !s.desk.Loading() {
		return
	}
	var look func()
	look = func() {
		if s.desk.Loading() {
			s.clients.Again()
			s.later(namesEvery, look)
		}
	}
	s.later(namesEvery, look)
	s.tools.Run.Start(task.Job{Label: "Reading the names", Work: s.desk.Names, Done: func(err error) {
		s.clients.Again()
		if err != nil && !task.Canceled(err) {
			s.toast.Warn(err.Error())
		}
	}})
}

// resume goes on with an interrupted sealing.
func (s *Shell) resume() {
	keeper := s.door.Keeper()
	s.slow.Start(task.Job{
		Label: "Sealing what is not sealed yet",
		Work:  func(ctx context.Context) error { return keeper.Resume(ctx, func(int, int) {}) },
		Done: func(err error) {
			if err != nil && !task.Canceled(err) {
				s.toast.Warn(err.Error())
			}
			s.renewSafety()
		},
	})
}

// backUpIfDue makes the backup of the day, and looks again later. A trouble is
// told once, until it is another one or a backup was made.
func (s *Shell) backUpIfDue() {
	s.later(backupEvery, s.backUpIfDue)
	s.slow.Start(task.Job{Label: "Making the backup of the day", Work: s.door.BackUpIfDue, Done: func(err error) {
		words := ""
		if err != nil && !task.Canceled(err) {
			words = err.Error()
		}
		if words != "" && words != s.duty.told {
			s.toast.Warn(words)
		}
		s.duty.told = words
		s.renewSafety()
	}})
}

// renewSafety shows what has changed, where it is shown.
func (s *Shell) renewSafety() {
	if s.place == PlacePractice && s.safety != nil {
		s.safety.Renew()
	}
}

func (s *Shell) safetyTools() safety.Tools {
	return safety.Tools{Run: s.slow, Clock: s.tools.Clock, Now: s.tools.Now}
}

// newSafety makes the section on safe keeping of the practice page.
func (s *Shell) newSafety() *safety.Section {
	return safety.New(s.door.Keeper(), s.currentSettings().LockMinutes(), s.safetyTools(), safety.Ways{
		Seal: s.sealFromDesk, Change: s.changePassphrase, Renew: s.newCode,
		Lock: s.Lock, LockAfter: s.setLockAfter,
		ChooseFolder: s.chooseFolder, ChooseFile: s.chooseBackup,
		Ask: s.askFor, Restore: s.restore,
		Wanting: func(words string) {
			if s.practice != nil { // it is made after the section
				s.practice.ShowWanting(words)
			}
		},
	})
}

// goSafe leads to the safe keeping in the practice.
func (s *Shell) goSafe() {
	s.Go(PlacePractice)
	s.safety.FocusFirst()
}

// setLockAfter sets after how many minutes the window locks by itself.
func (s *Shell) setLockAfter(minutes int) {
	now := s.currentSettings()
	now.LockAfter = minutes
	s.practice.Follow(now)
	s.changeSettings(now)
	if s.door.Sealed() {
		s.idle.begin()
	}
}
