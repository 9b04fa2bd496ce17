// Package reports puts a plan on paper: the handout that a client takes home,
// and the note that goes to a clinician where a referral takes the plan's place.
//
// Pages flow through maroto; what it cannot draw (hands, patterns, rules) is
// drawn in vectors beneath its text. Every text passes one sanitiser first.
package reports
