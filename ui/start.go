package ui

import (
	"context"

	"handbreadth/ui/clients"
	"handbreadth/ui/task"
	"handbreadth/ui/welcome"
)

// Start opens the practice, or offers ways to begin where there is none. With
// demo the invented practice is opened.
func (s *Shell) Start(demo bool) {
	switch {
	case demo:
		s.openDemo()
	case s.opener.Begun():
		s.openPractice("")
	default:
		s.welcome(func() *welcome.Screen {
			return welcome.New(welcome.Ways{Start: s.beginPractice, Demo: s.openDemo, Restore: s.restorePage})
		})
	}
}

func (s *Shell) welcome(build func() *welcome.Screen) {
	s.leaveGate()
	screen := build()
	s.place = PlaceWelcome
	s.side.Hide()
	s.page.Refresh()
	s.show(screen.Object())
	screen.FocusFirst()
	s.changed()
}

// openPractice opens the practice's own file. A note, where there is one, is told
// with the question for the passphrase.
func (s *Shell) openPractice(note string) {
	s.openDoor("Opening your practice", s.opener.Practice, func(err error) {
		s.trouble("Your practice could not be opened", err, func() { s.openPractice(note) }, false)
	}, note)
}

func (s *Shell) openDemo() {
	s.openDoor("Making the demo ready", s.opener.Demo, func(err error) {
		s.trouble("The demo could not be opened", err, s.openDemo, true)
	}, "")
}

func (s *Shell) openDoor(label string, open func(context.Context) (Door, error), failed func(error), note string) {
	task.Run(s.runner, label, open, func(door Door, err error) {
		if err != nil {
			failed(err)
			return
		}
		s.stand(door, note)
	})
}

// trouble shows why a file cannot be opened, and the ways on.
func (s *Shell) trouble(title string, err error, again func(), demo bool) {
	ways := welcome.Ways{Start: again}
	if !demo {
		ways.Demo, ways.Restore = s.openDemo, s.restorePage
	}
	s.welcome(func() *welcome.Screen { return welcome.NewTrouble(title, err.Error(), ways) })
}

// stand is in front of an open file: it asks for the passphrase, or offers one,
// or goes in.
func (s *Shell) stand(door Door, note string) {
	s.door = door
	switch {
	case door.Locked():
		s.askPassphrase(note).Ready()
	case !door.Sealed() && !door.Demo():
		s.offerSealing()
	default:
		s.goIn()
	}
}

// goIn reads the list of an open file and shows it.
func (s *Shell) goIn() {
	door := s.door
	task.Run(s.runner, "Reading the list", door.Enter, func(desk Desk, err error) {
		switch {
		case s.door != door:
			return
		case err != nil:
			s.trouble("Your practice could not be read", err, s.goIn, door.Demo())
		default:
			s.sit(desk)
		}
	})
}

// sit takes a desk into use.
func (s *Shell) sit(desk Desk) {
	s.leaveGate()
	s.endSession()
	s.desk = desk
	s.span = task.NewSpan(s.runner)
	s.tools.Run = s.span
	s.settings = newSaver(s.tools, "Saving the settings", func(ctx context.Context, _ int, v Settings) error {
		return desk.SaveSettings(ctx, v)
	}, s.showSettingsSaved)
	s.wear(desk.Settings())
	s.clients = clients.New(desk, s.tools.Run, clients.Ways{
		Open: s.OpenClient, Ask: s.ask, Say: s.toast.Say, Offer: s.toast.Offer,
	})
	s.practice, s.safety, s.help = nil, nil, nil
	s.window.SetTitle(title)
	setShown(s.mark, s.door.Demo())
	setShown(s.lock, s.door.Sealed())
	if s.door.Demo() {
		s.window.SetTitle(title + " – demo data")
	}
	s.side.Show()
	s.page.Refresh()
	s.Go(PlaceClients)
	s.goBack()
	s.beginDuty()
}
