package widgets

// SetHidden hides what is typed, or shows it: a long passphrase is easier to get
// right when it can be read.
func (f *Field) SetHidden(hidden bool) {
	f.entry.Password = hidden
	f.entry.Refresh()
}

// Hidden reports whether what is typed is hidden.
func (f *Field) Hidden() bool { return f.entry.Password }
