package clients

import (
	"context"
	"fmt"

	"handbreadth/ui/task"
)

// PutAway archives a client, or brings an archived one back.
func (s *Screen) PutAway(id string) {
	row, ok := s.book.Row(id)
	if !ok {
		return
	}
	if row.Archived {
		s.change("Bringing the client back", s.book.Unarchive, id, func() {
			s.ways.Say(row.Name + " is back in the list.")
		})
		return
	}
	s.change("Archiving the client", s.book.Archive, id, func() {
		s.ways.Offer(row.Name+" is archived. Nothing was removed.", "Undo", func() {
			s.change("Bringing the client back", s.book.Unarchive, id, func() {})
		})
	})
}

// change changes a client in the background and then renews the list.
func (s *Screen) change(label string, how func(context.Context, string) error, id string, done func()) {
	s.run.Start(task.Job{
		Label: label,
		Work:  func(ctx context.Context) error { return how(ctx, id) },
		Done: func(err error) {
			s.Renew()
			if err != nil {
				s.ways.Say(err.Error())
				return
			}
			done()
		},
	})
}

// AskDelete asks before a client is removed for good.
func (s *Screen) AskDelete(id string) {
	row, ok := s.book.Row(id)
	if !ok {
		return
	}
	s.ways.Ask(Question{
		Title: fmt.Sprintf("Delete everything on %s?", row.Name),
		Words: s.book.RetentionNotice(),
		Yes:   "Delete for good",
		Do: func() {
			s.change("Deleting the client", s.book.Delete, id, func() {
				s.ways.Say("Everything on this client is deleted. Backups made before still have it.")
			})
		},
	})
}
