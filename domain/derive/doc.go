// Package derive carries the explanation of a number beside the number: the
// formula, the values put in, the result, its range and where it comes from.
// Screen, paper and files render the same steps, so they cannot disagree.
//
// # A derived number
//
// [Derived] is a value with a range and the [Step]s that led to it, in order; the
// last one gave the value. A step has a label and a formula in words and signs,
// the inputs with their units, the result, and a [Source]. A value that was not
// worked out has no steps: check for that before showing it.
//
//	d := derive.Within(value, low, high, derive.Step{ … })
//	step, worked := d.Last()
//
// # Sources
//
// A source says how well it was confirmed when it was coded:
//
//	seen        the figure was read in a copy of the source
//	seen-2nd    in a copy by others
//	memory      known, and not confirmed against a copy
//	convention  common practice without a source; the step says so
//	arithmetic  follows from the steps before
//
// A test reads the source code of the domain for a step without a source, and
// another walks every number of random plans.
//
// # Findings
//
// [Finding] is what the screening or the computation has to say, with its
// [Level] and its [Scope]: what it stops.
package derive
