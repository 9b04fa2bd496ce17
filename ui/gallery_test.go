package ui

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"

	"handbreadth/ui/clients"
	"handbreadth/ui/practice"
	"handbreadth/ui/widgets"
	"handbreadth/ui/widgets/widgettest"
)

// longNotice is as long as what is said before a deletion.
const longNotice = "Deleting removes everything kept on this client from the client file, for good. It cannot be undone.\n\n" +
	"Records of care may have to be kept for years after the last visit, and longer for children. " +
	"Local law and your professional body decide. If you are not sure, archive the client instead: " +
	"the client leaves the daily list and nothing is lost.\n\n" +
	"Backups made before today still have the client until newer ones take their place: " +
	"the monthly ones after a year. Papers and files that you handed out are not touched.\n\n" +
	"What stays is a line without a name that says when a client was deleted."

// TestGallery writes pictures of the window to the folder in
// HANDBREADTH_GALLERY, to be looked at.
func TestGallery(t *testing.T) {
	widgettest.NeedGallery(t)
	for _, look := range []string{practice.LookLight, practice.LookDark} {
		for _, size := range []fyne.Size{fyne.NewSize(1366, 768), fyne.NewSize(1920, 1080)} {
			b := open(t, nil)
			b.window.Resize(size)
			b.shell.SetLook(look)
			keep := func(name string) {
				widgettest.Picture(t, b.window, fmt.Sprintf("shell-%s-%d-%s", name, int(size.Width), look))
			}
			b.shell.Go(PlaceClients)
			b.shell.toast.Warn("The folder for backups is not there, so no backup was made. If it is on a stick or another disk, plug that in and try again, or choose another folder.")
			keep("clients")
			b.shell.toast.Close()
			b.shell.ask(clients.Question{Title: "Delete everything on Wren Applecart?", Words: longNotice, Yes: "Delete for good"})
			keep("delete")
			b.shell.Back()
			b.shell.Go(PlacePractice)
			keep("practice")
			b.named("safety.keys").(*widgets.Fold).SetOpen(true)
			b.named("safety.lock").(*widgets.Fold).SetOpen(true)
			widgets.FocusOn(b.named("safety.lock.now"))
			keep("keeping")
			b.shell.Go(PlaceHelp)
			keep("help")
			b.shell.Lock()
			keep("locked")
		}
	}
}
