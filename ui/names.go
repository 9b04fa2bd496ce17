package ui

import (
	"handbreadth/ui/clients"
	"handbreadth/ui/handout"
	"handbreadth/ui/practice"
	"handbreadth/ui/safety"
	"handbreadth/ui/unlock"
)

// What the program has to hand to screens, under the shell's own names, since
// only the shell knows the screens.
type (
	Row      = clients.Row
	Glance   = clients.Glance
	Status   = clients.Status
	Settings = practice.Settings
	Choice   = handout.Choice
	PageName = handout.PageName

	Advice   = unlock.Advice
	Code     = unlock.Code
	Progress = unlock.Progress

	Keeper    = safety.Keeper
	KeepState = safety.State
	Inside    = safety.Inside
	Backup    = safety.Backup
	Backups   = safety.Backups
	Entry     = safety.Entry
	Restoring = safety.Restoring
	KeyMoves  = safety.Progress
)

// The states of a client file.
const (
	NotStarted = clients.NotStarted
	Begun      = clients.Begun
	Ready      = clients.Ready
	Held       = clients.Held
	Referred   = clients.Referred
	Complete   = clients.Kept
)

// What the settings choose among.
const (
	PaperLetter = practice.PaperLetter
	LookLight   = practice.LookLight
	LookDark    = practice.LookDark
)
