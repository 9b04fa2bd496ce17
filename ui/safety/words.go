package safety

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"handbreadth/domain/unit"
)

// Never is the number of minutes that stands for no locking by itself.
const Never = -1

// DefaultMinutes is after how many minutes the program locks where nothing was
// chosen.
const DefaultMinutes = 10

// lockChoices are the minutes to choose among.
var lockChoices = []int{5, DefaultMinutes, 15, 30, Never}

func lockWords(minutes int) string {
	if minutes == Never {
		return "Never"
	}
	return fmt.Sprintf("%d minutes", minutes)
}

func lockSummary(minutes int) string {
	if minutes == Never {
		return "Only by hand"
	}
	return "After " + lockWords(minutes)
}

// counted writes a number of things.
func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// moment writes a moment as people at a desk say it: "today, 10:15".
func moment(at, now time.Time) string {
	at = at.In(now.Location())
	day, today := unit.FromTime(at), unit.FromTime(now)
	clock := at.Format("15:04")
	switch today.DaysUntil(day) {
	case 0:
		return "today, " + clock
	case -1:
		return "yesterday, " + clock
	}
	return day.Long() + ", " + clock
}

// contents tells what is inside of a backup or a file.
func (i Inside) contents() string {
	return fmt.Sprintf("%s, %s, %s",
		counted(i.Clients, "client", "clients"), counted(i.Visits, "visit", "visits"), counted(i.Plans, "plan", "plans"))
}

func (i Inside) changed(now time.Time) string {
	if i.LastChange.IsZero() {
		return "nothing kept yet"
	}
	return "last change " + moment(i.LastChange, now)
}

// size writes a number of bytes.
func size(bytes int64) string {
	const kilo, mega = 1000, 1000 * 1000
	switch {
	case bytes >= mega:
		return fmt.Sprintf("%.1f MB", float64(bytes)/mega)
	case bytes >= kilo:
		return fmt.Sprintf("%d kB", bytes/kilo)
	}
	return fmt.Sprintf("%d bytes", bytes)
}

// about tells how large a backup is, and whether it is sealed.
func (b Backup) about() string {
	sealed := "sealed"
	if !b.Sealed {
		sealed = "not sealed"
	}
	return size(b.Bytes) + ", " + sealed
}

// title names a backup in the list.
func (b Backup) title(now time.Time) string {
	if b.Unknown {
		return filepath.Base(b.Path)
	}
	return "Backup of " + moment(b.MadeAt, now)
}

// sealSummary is what the head of the part on the passphrase says.
func sealSummary(s State) (words string, wanting bool) {
	switch {
	case !s.Sealed:
		return "Not sealed", true
	case s.Unfinished:
		return "Sealing not finished", true
	case !s.SheetTried:
		return "Sealed; recovery sheet not tried yet", true
	}
	return "Sealed", false
}

// wantingWords tells what is still to be done for the files to be safe.
func wantingWords(s State, b Backups, known bool, now time.Time) string {
	var parts []string
	switch {
	case !s.Sealed:
		parts = append(parts, "Your practice is not sealed yet.")
	case s.Unfinished:
		parts = append(parts, "The sealing is not finished.")
	case !s.SheetTried:
		parts = append(parts, "The recovery sheet was not tried yet.")
	}
	if _, wanting := backupSummary(b, now); known && wanting {
		words := b.DueWords
		if b.Gone != "" {
			words = "The folder for backups is not there."
		}
		parts = append(parts, words)
	}
	return strings.Join(parts, " ")
}

// backupSummary is what the head of the part on backups says.
func backupSummary(b Backups, now time.Time) (words string, wanting bool) {
	switch {
	case b.Folder == "":
		return "No folder chosen yet", true
	case b.Gone != "":
		return "The folder is not there", true
	case b.Last.IsZero():
		return "None yet", true
	case b.Due:
		return "Due; last " + moment(b.Last, now), true
	}
	return "Last " + moment(b.Last, now), false
}

// keyWords says how far a change of the key is.
func keyWords(done, total int) string {
	switch {
	case total == 0:
		return "Making a new key…"
	case done >= total:
		return "Wiping what the former key sealed…"
	}
	return fmt.Sprintf("Sealing anew: %d of %d entries", done, total)
}

// checkedWords says that a backup holds.
func checkedWords(i Inside) string {
	return "It opens completely: " + i.contents() + ". Nothing was changed."
}

// warnings tells what to think of before a backup takes the place of the file in
// use.
func warnings(inside, present Inside, known bool, now time.Time) []string {
	var list []string
	if !known {
		return list
	}
	if inside.Practice != present.Practice {
		list = append(list, "This backup is of another practice.")
	}
	if present.Sealed && !inside.Sealed {
		list = append(list, "This backup is not sealed, and your practice is. Somebody may have put it there: be sure that it is yours.")
	}
	if present.LastChange.After(inside.LastChange) {
		list = append(list, "What was kept after "+moment(inside.MadeAt, now)+" is not in it.")
	}
	return list
}
