package ui

import (
	"strings"

	"handbreadth/ui/clients"
	"handbreadth/ui/practice"
)

// offer is one line of the palette.
type offer struct {
	title  string
	remark string // what it is, or its keys
	act    func()
}

// How many clients the palette shows.
const (
	recentClients = 5 // before anything is typed
	foundClients  = 12
)

// offers returns what matches a query: clients first, then sections and actions.
func (s *Shell) offers(query string) []offer {
	most := foundClients
	if strings.TrimSpace(query) == "" {
		most = recentClients
	}
	var list []offer
	for _, id := range first(s.desk.Find(query, false), most) {
		row, ok := s.desk.Row(id)
		if ok {
			list = append(list, offer{row.Name, "client", func() { s.OpenClient(id) }})
		}
	}
	for _, o := range s.actions() {
		if matches(o.title, query) {
			list = append(list, o)
		}
	}
	return list
}

func first(ids []string, most int) []string { return ids[:min(most, len(ids))] }

// matches reports whether each word of a query begins some word of a title.
func matches(title, query string) bool {
	words := strings.Fields(strings.ToLower(title))
	for _, part := range strings.Fields(strings.ToLower(query)) {
		if !anyBegins(words, part) {
			return false
		}
	}
	return true
}

func anyBegins(words []string, part string) bool {
	for _, w := range words {
		if strings.HasPrefix(w, part) {
			return true
		}
	}
	return false
}

// withList goes back to the list and does something there with the client whose
// file was open.
func (s *Shell) withList(do func(list *clients.Screen, id string)) func() {
	id := s.file.id
	return func() {
		s.Go(PlaceClients)
		do(s.clients, id)
	}
}

// actions are what can be done now.
func (s *Shell) actions() []offer {
	var list []offer
	if s.file != nil {
		for i, section := range Sections() {
			list = append(list, offer{section.Label(), "Ctrl+" + string(rune('1'+i)), func() { s.ShowSection(section) }})
		}
		if label, can := s.file.keepLabel(); can {
			list = append(list, offer{label, "", s.KeepPlan})
		}
		list = append(
			list,
			offer{"Start a new visit", "", s.NewVisit},
			offer{"Show or hide the running sheet", "Ctrl+6", s.ToggleSheet},
			offer{"Undo", "Ctrl+Z", s.Undo},
			offer{"Redo", "Ctrl+Shift+Z", s.Redo},
			offer{"Archive this client", "", s.withList((*clients.Screen).PutAway)},
			offer{"Delete this client", "", s.withList((*clients.Screen).AskDelete)},
		)
	}
	return append(
		list,
		offer{"New client", "Ctrl+N", s.NewClient},
		offer{"Clients", "", func() { s.Go(PlaceClients) }},
		offer{"Practice settings", "", func() { s.Go(PlacePractice) }},
		offer{"Safe keeping: backups, passphrase, record", "", s.goSafe},
		offer{"Lock", "Ctrl+L", s.Lock},
		offer{"Help and keys", "F1", func() { s.Go(PlaceHelp) }},
		offer{"Light look", "", func() { s.SetLook(practice.LookLight) }},
		offer{"Dark look", "", func() { s.SetLook(practice.LookDark) }},
		offer{"Look of the system", "", func() { s.SetLook(practice.LookSystem) }},
	)
}
