package unlock

import (
	"errors"
	"fmt"
	"testing"
	"time"

	"handbreadth/ui/theme"
	"handbreadth/ui/widgets/widgettest"
)

// states are what the pages are looked at in.
func states() map[string]func(b *bench) page {
	guard := &fakeGuard{code: someCode, locked: true}
	return map[string]func(b *bench) page{
		"first": func(b *bench) page { return NewChoose(WordsFirst, fakeAdvise, b.tools(), ChooseWays{}) },
		"later": func(b *bench) page {
			s := NewChoose(WordsLater, fakeAdvise, b.tools(), ChooseWays{})
			s.pair.first.SetText(goodPhrase)
			s.pair.second.SetText(goodPhrase)
			s.pair.typed()
			s.show(true)
			s.showProgress(160, 400)
			return s
		},
		"weak": func(b *bench) page {
			s := NewChoose(WordsFirst, fakeAdvise, b.tools(), ChooseWays{})
			s.pair.first.SetText("abc")
			s.pair.left()
			s.pair.second.SetProblem(wordsDiffers)
			return s
		},
		"enter": func(b *bench) page { return NewEnter(guard, b.tools(), EnterWays{}, "") },
		"wrong": func(b *bench) page {
			s := NewEnter(&fakeGuard{wait: 8 * time.Second}, b.tools(), EnterWays{}, "")
			s.field.SetText("lantern")
			s.tried(errors.New("This is not the passphrase. Look whether capitals are locked and which keyboard is set, then try again. The recovery sheet opens the file as well."))
			return s
		},
		"recover": func(b *bench) page { return NewRecover(guard, fakeAdvise, b.tools(), RecoverWays{}) },
		"code": func(b *bench) page {
			s := NewShowCode(someCode, &fakeSheet{}, b.tools(), CodeWays{}, "")
			s.told.say(wordsSheetSaved)
			return s
		},
		"confirm": func(b *bench) page {
			return NewConfirm(someCode, guard, b.tools(), ConfirmWays{}, func(n int) int { return n / 2 })
		},
		"change": func(b *bench) page { return NewChange(guard, fakeAdvise, b.tools(), ChangeWays{}) },
		"renew":  func(b *bench) page { return NewRenew(guard, b.tools(), RenewWays{}) },
	}
}

func TestGallery(t *testing.T) {
	widgettest.NeedGallery(t)
	for name, make := range states() {
		for look, variant := range widgettest.Looks() {
			for _, size := range [][2]float32{{1366, 768}, {1920, 1080}} {
				b := newBench(t)
				widgettest.Program(t, variant)
				p := make(b)
				window := widgettest.Window(t, p.Object(), size[0], size[1])
				p.FocusFirst()
				widgettest.Picture(t, window, fmt.Sprintf("unlock-%s-%d-%s", name, int(size[0]), look))
			}
		}
	}
}

// What the pages look like, in words and places.
func TestOutlines(t *testing.T) {
	for name, make := range states() {
		t.Run(name, func(t *testing.T) {
			b := newBench(t)
			widgettest.Program(t, theme.Light)
			widgettest.AssertOutline(t, widgettest.Window(t, make(b).Object(), 1366, 768), name)
		})
	}
}
