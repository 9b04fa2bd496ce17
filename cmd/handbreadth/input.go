package main

import (
	"github.com/go-gl/glfw/v3.3/glfw"
)

// watchInput tells of every key and every move of the pointer, wherever they go:
// the toolkit gives keys only to what has the focus, and the pointer only to
// what lies below it. It is called where the user interface runs, once the
// window is drawn.
func (p *program) watchInput() {
	window, is := p.window.(drawing)
	if !is {
		return
	}
	window.RunWithContext(func() { chain(glfw.GetCurrentContext(), p.shell.Touch) })
}

// chain puts a call before each of the toolkit's own that hear of input.
func chain(w *glfw.Window, touched func()) {
	if w == nil {
		return
	}
	var key glfw.KeyCallback
	key = w.SetKeyCallback(func(w *glfw.Window, k glfw.Key, code int, action glfw.Action, mods glfw.ModifierKey) {
		touched()
		if key != nil {
			key(w, k, code, action, mods)
		}
	})
	var pointer glfw.CursorPosCallback
	pointer = w.SetCursorPosCallback(func(w *glfw.Window, x, y float64) {
		touched()
		if pointer != nil {
			pointer(w, x, y)
		}
	})
	var button glfw.MouseButtonCallback
	button = w.SetMouseButtonCallback(func(w *glfw.Window, b glfw.MouseButton, action glfw.Action, mods glfw.ModifierKey) {
		touched()
		if button != nil {
			button(w, b, action, mods)
		}
	})
	var wheel glfw.ScrollCallback
	wheel = w.SetScrollCallback(func(w *glfw.Window, x, y float64) {
		touched()
		if wheel != nil {
			wheel(w, x, y)
		}
	})
}

// drawing is a window with the toolkit's drawing context.
type drawing interface{ RunWithContext(f func()) }
