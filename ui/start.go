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
		s.openPractice()
	default:
		s.welcome(welcome.New(s.openPractice, s.openDemo))
	}
}

func (s *Shell) welcome(screen *welcome.Screen) {
	s.place = PlaceWelcome
	s.side.Hide()
	s.page.Refresh()
	s.show(screen.Object())
	screen.FocusFirst()
	s.changed()
}

func (s *Shell) openPractice() { s.openDesk("Opening your practice", false, s.opener.Practice) }
func (s *Shell) openDemo()     { s.openDesk("Making the demo ready", true, s.opener.Demo) }

func (s *Shell) openDesk(label string, demo bool, open func(context.Context) (Desk, error)) {
	task.Run(s.tools.Run, label, open, func(desk Desk, err error) {
		if err != nil {
			s.trouble(err, demo, func() { s.openDesk(label, demo, open) })
			return
		}
		s.sit(desk, demo)
	})
}

// trouble shows why a file cannot be opened, and the ways on.
func (s *Shell) trouble(err error, demo bool, again func()) {
	if demo {
		s.welcome(welcome.NewTrouble("The demo could not be opened", err.Error(), again, nil))
		return
	}
	s.welcome(welcome.NewTrouble("Your practice could not be opened", err.Error(), again, s.openDemo))
}

// sit takes a desk into use.
func (s *Shell) sit(desk Desk, demo bool) {
	s.desk, s.demo = desk, demo
	s.settings = newSaver(s.tools, "Saving the settings", func(ctx context.Context, _ int, v Settings) error {
		return desk.SaveSettings(ctx, v)
	}, s.showSettingsSaved)
	s.wear(desk.Settings())
	s.clients = clients.New(desk, s.tools.Run, clients.Ways{
		Open: s.OpenClient, Ask: s.ask, Say: s.toast.Say, Offer: s.toast.Offer,
	})
	s.practice = nil
	s.help = nil
	s.window.SetTitle(title)
	s.mark.Hide()
	if demo {
		s.window.SetTitle(title + " – demo data")
		s.mark.Show()
	}
	s.side.Show()
	s.page.Refresh()
	s.Go(PlaceClients)
}
