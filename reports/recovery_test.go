package reports

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"handbreadth/domain/unit"
)

// An invented code.
func someRecovery() Recovery {
	return Recovery{
		Groups: strings.Fields("ABCD EFGH JKLM NOPR STUW XYZA BCDE FGHJ"),
		Made:   unit.Date{Year: 2026, Month: time.March, Day: 2},
	}
}

func TestTheRecoverySheetHasTheCodeAndSaysWhatItIsFor(t *testing.T) {
	for name, opt := range map[string]Options{"branded": options(t), "bare": {Paper: Letter}, "longest": longest(t)} {
		pdf, err := RecoverySheet(someRecovery(), opt)
		path := written(t, pdf, err)
		run(t, "qpdf", "--check", path)
		checkFonts(t, path)
		checkBoxes(t, path, name)
		text := flow(t, path)
		mustHold(t, text, append(someRecovery().Groups, "Recovery sheet", "2 March 2026", "passphrase", "Page 1 of 1")...)
		if opt.Brand.Practice != "" && name == "branded" {
			mustHold(t, text, opt.Brand.Practice)
		}
		if info := run(t, "pdfinfo", path); strings.Contains(info, "ABCD") || strings.Contains(info, opt.Brand.Practice) && opt.Brand.Practice != "" {
			t.Errorf("%s: the description of the file tells too much:\n%s", name, info)
		}
	}
}

func TestARecoverySheetWithoutACodeIsRefused(t *testing.T) {
	var problem unit.Problem
	if _, err := RecoverySheet(Recovery{Made: someRecovery().Made}, Options{}); !errors.As(err, &problem) || problem.Field != "recovery_code" {
		t.Errorf("got %v", err)
	}
	if _, err := RecoverySheet(someRecovery(), Options{Brand: Brand{Colour: "green"}}); err == nil {
		t.Error("a colour that is none was taken")
	}
}

func TestTheRecoverySheetReadsEasily(t *testing.T) {
	const most = 6
	all := append(append([]string{wordsRecoveryUnder, wordsRecoverySafe, wordsRecoveryFoot}, wordsRecoveryUse...), wordsRecoveryKeep...)
	if got := grade(strings.Join(all, " ")); got > most {
		t.Errorf("reading grade %.1f, want %d or lower", got, most)
	}
}

// TestRecoveryGallery writes the sheet to the folder in HANDBREADTH_GALLERY, to
// be looked at.
func TestRecoveryGallery(t *testing.T) {
	folder := os.Getenv("HANDBREADTH_GALLERY")
	if folder == "" {
		t.Skip("HANDBREADTH_GALLERY names no folder")
	}
	for name, opt := range map[string]Options{"branded": options(t), "bare": {Paper: Letter}} {
		pdf, err := RecoverySheet(someRecovery(), opt)
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, "recovery-"+name+".pdf"), pdf, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}
