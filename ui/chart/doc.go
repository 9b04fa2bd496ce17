// Package chart draws the expected course of a weight: the line, the range that
// eight in ten courses keep to, what the static rule promises, the goal and the
// change of phase.
//
// What is where is worked out without the toolkit (axis.go, ticks.go, plot.go,
// names.go, curves.go) and tested there; drawing.go moves lines and words to
// where the plot says. Everything is named where it stands, in words and by its own kind of
// line, so that nothing rests on a colour.
//
//	c := chart.NewPanel(style, relayout)
//	if course, known := chart.Of(plan, style); known { c.SetCourse(course) }
package chart
