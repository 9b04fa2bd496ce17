package widgets

import (
	"slices"

	"fyne.io/fyne/v2"
)

// Choice is a choice of one among two to six options. Options with a
// description stand one below the other, others side by side. It is one tab
// stop; the arrows choose.
type Choice struct {
	options
	OnChanged func(index int)

	selected int
}

// NewChoice returns a choice with nothing chosen yet. The callback may be nil.
func NewChoice(label string, list []Option, onChanged func(index int)) *Choice {
	c := &Choice{OnChanged: onChanged, selected: -1}
	c.chosen = func(i int) bool { return i == c.selected }
	c.act = c.choose
	c.setUp(c, label, list, false)
	return c
}

// Selected returns the index of the chosen option, -1 for none.
func (c *Choice) Selected() int { return c.selected }

// SetSelected chooses an option without calling back; -1 chooses none.
func (c *Choice) SetSelected(index int) {
	c.selected = max(-1, min(index, len(c.boxes)-1))
	c.cursor = max(0, c.selected)
	c.Refresh()
}

// TypedKey chooses with the arrows, Home and End, and the first one with Space.
func (c *Choice) TypedKey(key *fyne.KeyEvent) {
	if i, moved := c.step(key.Name); moved {
		if c.selected < 0 {
			i = c.cursor
		}
		c.choose(i)
		return
	}
	if key.Name == fyne.KeySpace {
		c.choose(c.cursor)
		return
	}
	commonKey(c, key.Name)
}

func (c *Choice) choose(index int) {
	if c.Disabled() || index == c.selected {
		return
	}
	c.SetSelected(index)
	if c.OnChanged != nil {
		c.OnChanged(index)
	}
}

// MultiChoice is a choice of any number of options, shown as chips. It is one
// tab stop; the arrows move, Space chooses and takes back.
type MultiChoice struct {
	options
	OnChanged func(selected []int)

	on []bool
}

// NewMultiChoice returns a choice with nothing chosen. The callback may be nil.
func NewMultiChoice(label string, list []Option, onChanged func(selected []int)) *MultiChoice {
	m := &MultiChoice{OnChanged: onChanged, on: make([]bool, len(list))}
	m.chosen = func(i int) bool { return m.on[i] }
	m.act = m.toggle
	m.setUp(m, label, list, true)
	return m
}

// Selected returns the indices of the chosen options in order.
func (m *MultiChoice) Selected() []int {
	var selected []int
	for i, on := range m.on {
		if on {
			selected = append(selected, i)
		}
	}
	return selected
}

// SetSelected chooses these options and no others, without calling back.
func (m *MultiChoice) SetSelected(indices []int) {
	for i := range m.on {
		m.on[i] = slices.Contains(indices, i)
	}
	m.Refresh()
}

// TypedKey moves with the arrows, Home and End; Space toggles.
func (m *MultiChoice) TypedKey(key *fyne.KeyEvent) {
	if i, moved := m.step(key.Name); moved {
		m.cursor = i
		m.Refresh()
		return
	}
	if key.Name == fyne.KeySpace {
		m.toggle(m.cursor)
		return
	}
	commonKey(m, key.Name)
}

func (m *MultiChoice) toggle(index int) {
	if m.Disabled() || index >= len(m.on) {
		return
	}
	m.on[index] = !m.on[index]
	m.Refresh()
	if m.OnChanged != nil {
		m.OnChanged(m.Selected())
	}
}
