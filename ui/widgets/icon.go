package widgets

import (
	"bytes"
	"regexp"
	"sync"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"handbreadth/assets/icons"
	"handbreadth/ui/theme"
)

// IconName names a line drawing; every icon of the assets can be used.
type IconName = icons.Name

// The icons that the kit itself uses, and those of the rail.
const (
	IconClients  = icons.Clients
	IconKitchen  = icons.Kitchen
	IconPractice = icons.Practice
	IconHelp     = icons.Help
	IconSearch   = icons.Search
	IconAdd      = icons.Add
	IconClose    = icons.Close
	IconCheck    = icons.Check
	IconUndo     = icons.Undo
	IconOpen     = icons.ChevronRight
	IconOpened   = icons.ChevronDown
	IconPrint    = icons.Print
	IconSave     = icons.Save
	IconNote     = icons.Note
	IconCaution  = icons.Caution
	IconHold     = icons.Hold
	IconRefer    = icons.Refer
)

// smallIcon and largeIcon are the sizes of icons, which grow with the text.
func smallIcon() float32 { return grown(16) }

func largeIcon() float32 { return grown(24) }

// grown returns a size that was drawn for text of the normal size.
func grown(size float32) float32 { return size * theme.TextScale() }

// iconCache keeps a resource for each icon and colour.
var iconCache = struct {
	sync.Mutex
	made map[string]fyne.Resource
}{made: map[string]fyne.Resource{}}

// iconFill is the colour in which the assets draw an icon.
var iconFill = regexp.MustCompile(`fill="#[0-9A-Fa-f]{6}"`)

// Icon returns an icon drawn in a named colour of the look in force.
func Icon(name IconName, colour fyne.ThemeColorName) fyne.Resource {
	hex := theme.Hex(colour)
	key := "icon-" + string(name) + "-" + hex[1:] + ".svg"
	iconCache.Lock()
	defer iconCache.Unlock()
	if made, ok := iconCache.made[key]; ok {
		return made
	}
	svg := iconFill.ReplaceAll(bytes.Clone(icons.Icon(name)), []byte(`fill="`+hex+`"`))
	made := fyne.NewStaticResource(key, svg)
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
	i.image.Resize(fyne.NewSize(size, size)) // rendered once; without a size its source is read for every layout
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
