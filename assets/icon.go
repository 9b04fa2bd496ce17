package assets

import _ "embed"

//go:embed icon.png
var appIcon []byte

// AppIcon is the program's icon, a PNG of 512 pixels square (painted by
// icons.App; a test compares the two).
func AppIcon() []byte { return appIcon }
