package widgets

import (
	"fmt"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/ui/theme"
)

// IconName names a line drawing of the kit.
type IconName string

// The icons.
const (
	IconClients  IconName = "clients"  // an index card with a head and shoulders
	IconKitchen  IconName = "kitchen"  // a pot with a lid
	IconPractice IconName = "practice" // a house with a leaf
	IconHelp     IconName = "help"     // a lifebuoy
	IconSearch   IconName = "search"
	IconAdd      IconName = "add"
	IconClose    IconName = "close"
	IconCheck    IconName = "check"
	IconUndo     IconName = "undo"
	IconBack     IconName = "back"
	IconOpen     IconName = "open"   // a chevron to the right: can be opened
	IconOpened   IconName = "opened" // a chevron down: is open
	IconPrint    IconName = "print"
	IconSave     IconName = "save"
	IconNote     IconName = "note"    // a round speech mark
	IconCaution  IconName = "caution" // a triangle
	IconHold     IconName = "hold"    // two upright bars in a square
	IconRefer    IconName = "refer"   // an arrow that leaves a box
)

// The sizes of icons.
const (
	iconSmall float32 = 16
	iconLarge float32 = 24
)

// iconPaths are drawn in a box of 24 by 24 with a line of 1.8, round ends.
var iconPaths = map[IconName]string{
	IconClients:  "M4 5 L20 5 L20 20 L4 20 Z M4 5 L4 3 L11 3 L12.5 5 M12 9 C10.3 9 9.2 10.2 9.2 11.6 C9.2 13 10.3 14.2 12 14.2 C13.7 14.2 14.8 13 14.8 11.6 C14.8 10.2 13.7 9 12 9 M7.5 19.5 C8 16.8 9.8 15.8 12 15.8 C14.2 15.8 16 16.8 16.5 19.5",
	IconKitchen:  "M4 10 L20 10 L19 18 C18.8 19.3 18 20 16.8 20 L7.2 20 C6 20 5.2 19.3 5 18 Z M2 12 L4.2 12 M19.8 12 L22 12 M5 7.5 L19 7.5 M12 7.5 L12 5",
	IconPractice: "M3 11 L12 3.5 L21 11 M5.5 9.5 L5.5 20.5 L18.5 20.5 L18.5 9.5 M12 18 C9 16.5 9 12.5 14.5 11.5 C15 15.5 14 17.5 12 18 M12 18 L11 20.5",
	IconHelp:     "M12 3 C7 3 3 7 3 12 C3 17 7 21 12 21 C17 21 21 17 21 12 C21 7 17 3 12 3 M12 8 C9.8 8 8 9.8 8 12 C8 14.2 9.8 16 12 16 C14.2 16 16 14.2 16 12 C16 9.8 14.2 8 12 8 M5.6 5.6 L9.2 9.2 M18.4 5.6 L14.8 9.2 M5.6 18.4 L9.2 14.8 M18.4 18.4 L14.8 14.8",
	IconSearch:   "M10.5 4 C6.9 4 4 6.9 4 10.5 C4 14.1 6.9 17 10.5 17 C14.1 17 17 14.1 17 10.5 C17 6.9 14.1 4 10.5 4 M15.3 15.3 L20.5 20.5",
	IconAdd:      "M12 5 L12 19 M5 12 L19 12",
	IconClose:    "M6 6 L18 18 M18 6 L6 18",
	IconCheck:    "M5 12.5 L10 17.5 L19.5 7",
	IconUndo:     "M4 9.5 L15 9.5 C18 9.5 20 11.5 20 14.2 C20 17 18 19 15 19 L9 19 M8.5 5 L4 9.5 L8.5 14",
	IconBack:     "M20 12 L4.5 12 M11 5.5 L4.5 12 L11 18.5",
	IconOpen:     "M9 5.5 L15.5 12 L9 18.5",
	IconOpened:   "M5.5 9 L12 15.5 L18.5 9",
	IconPrint:    "M7 9 L7 3.5 L17 3.5 L17 9 M7 17 L4 17 L4 9 L20 9 L20 17 L17 17 M7 14 L17 14 L17 20.5 L7 20.5 Z",
	IconSave:     "M4.5 4.5 L16 4.5 L19.5 8 L19.5 19.5 L4.5 19.5 Z M8 4.5 L8 9.5 L14.5 9.5 L14.5 4.5 M8 19.5 L8 14 L16 14 L16 19.5",
	IconNote:     "M12 3 C7 3 3 7 3 12 C3 17 7 21 12 21 C17 21 21 17 21 12 C21 7 17 3 12 3 M12 11 L12 16.5 M12 7.4 L12 7.6",
	IconCaution:  "M12 3.5 L21.5 20 L2.5 20 Z M12 9.5 L12 14.5 M12 17.1 L12 17.3",
	IconHold:     "M4 4 L20 4 L20 20 L4 20 Z M9.5 8.5 L9.5 15.5 M14.5 8.5 L14.5 15.5",
	IconRefer:    "M12 4 L4 4 L4 20 L20 20 L20 13 M10 14 L20.5 3.5 M14 3.5 L20.5 3.5 L20.5 10",
}

// iconCache keeps a resource for each icon and colour.
var iconCache = struct {
	sync.Mutex
	made map[string]fyne.Resource
}{made: map[string]fyne.Resource{}}

// Icon returns an icon drawn in a named colour of the look in force.
func Icon(name IconName, colour fyne.ThemeColorName) fyne.Resource {
	hex := theme.Hex(colour)
	key := "icon-" + string(name) + "-" + hex[1:] + ".svg"
	iconCache.Lock()
	defer iconCache.Unlock()
	if made, ok := iconCache.made[key]; ok {
		return made
	}
	svg := fmt.Sprintf(`<svg xmlns="http://www.w3.org/2000/svg" width="24" height="24" viewBox="0 0 24 24">`+
		`<path fill="none" stroke="%s" stroke-width="1.8" stroke-linecap="round" stroke-linejoin="round" d="%s"/></svg>`,
		hex, iconPaths[name])
	made := fyne.NewStaticResource(key, []byte(svg))
	iconCache.made[key] = made
	return made
}

// icon is an icon in a widget. It is drawn anew only when it changes.
type icon struct {
	name   IconName
	colour fyne.ThemeColorName
	image  *canvas.Image
}

func newIcon(name IconName, colour fyne.ThemeColorName, size float32) *icon {
	i := &icon{name: name, colour: colour, image: canvas.NewImageFromResource(Icon(name, colour))}
	i.image.FillMode = canvas.ImageFillContain
	i.image.SetMinSize(fyne.NewSize(size, size))
	return i
}

func (i *icon) setColour(colour fyne.ThemeColorName) { i.set(i.name, colour) }

func (i *icon) set(name IconName, colour fyne.ThemeColorName) {
	i.name, i.colour = name, colour
	if wanted := Icon(name, colour); wanted != i.image.Resource {
		i.image.Resource = wanted
		i.image.Refresh()
	}
}
