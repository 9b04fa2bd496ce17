package widgets

import (
	"maps"
	"strings"
	"sync"

	"fyne.io/fyne/v2"
)

// names holds what is registered. It is locked because the probe of a test
// build may read from a goroutine of its own.
var names = struct {
	sync.Mutex
	objects map[string]fyne.CanvasObject
}{objects: map[string]fyne.CanvasObject{}}

// Name registers an object under a stable name such as "intake.weight" and
// returns it. An object that had the name before loses it.
func Name[T fyne.CanvasObject](object T, name string) T {
	names.Lock()
	defer names.Unlock()
	names.objects[name] = object
	return object
}

// Unname forgets a name and all names below it: "intake" forgets
// "intake.weight" too.
func Unname(name string) {
	names.Lock()
	defer names.Unlock()
	maps.DeleteFunc(names.objects, func(key string, _ fyne.CanvasObject) bool {
		return key == name || strings.HasPrefix(key, name+".")
	})
}

// ResetNames forgets all names.
func ResetNames() {
	names.Lock()
	defer names.Unlock()
	clear(names.objects)
}

// Named returns a copy of what is registered now.
func Named() map[string]fyne.CanvasObject {
	names.Lock()
	defer names.Unlock()
	return maps.Clone(names.objects)
}

// NameOf returns the name of an object, or "" where it has none.
func NameOf(object fyne.CanvasObject) string {
	names.Lock()
	defer names.Unlock()
	for name, known := range names.objects {
		if known == object {
			return name
		}
	}
	return ""
}
