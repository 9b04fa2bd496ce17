// Package widgets is the kit that screens are built from. Everything in it can
// be reached by Tab, used by keyboard, shows its focus in rust and grows with
// its text.
//
// Conventions that hold for the whole package:
//
//   - A setter (SetText, SetSelected, SetValue ...) never calls back; only the
//     person at the desk causes OnChanged and its like.
//   - All methods are called where the user interface runs.
//   - Texts wrap; a widget's height follows its width.
//   - Enter goes on: it commits and moves the focus to the next widget. Escape
//     goes to the handler of [HandleEscape], F1 and its like to [HandleKeys],
//     undo in an entry to [HandleUndo].
//   - [Name] gives a widget a stable name for tests and for the probe.
//
// Laying out: [Column] stacks with the height that each part needs at its
// width, [Row] sets side by side and wraps, [Grid] makes equal columns as many
// as fit, [HeadedRow] makes the rows of a table, [WithAside] sets a narrow part
// beside a wide one, [Page] scrolls and keeps what has the focus in view. They
// are plain containers; Fyne's own layouts work as well.
//
// The parts, by constructor:
//
//	text      NewText(text, style)             SetText, SetStyle
//	button    NewPrimaryButton(label, f), NewQuietButton, NewTextButton
//	rail      NewRail(items, onSelected)       Select
//	sections  NewSectionStrip(labels, f)       Select, SetMark
//	field     NewField(label, hint)            OnChanged, Check, OnLeave, OnEnter, SetText, SetProblem, SetUnderstood
//	area      NewArea(label, hint, rows)       OnChanged, OnLeave, SetText
//	line      NewLineField(label, remark)      as field, on one line
//	date      NewDateField(label, hint)        OnDate, SetDate
//	password  NewPasswordField(label, hint)    as field
//	search    NewSearchField(placeholder)      OnChanged, OnEnter, Steer(list)
//	choice    NewChoice(label, options, f)     SetSelected, Selected
//	yes/no    NewYesNo(question, f)            SetAnswer, Answer, SetNote
//	chips     NewMultiChoice(label, opts, f)   SetSelected, Selected
//	balance   NewBalanceSlider(f)              SetValue, SetWall, Value
//	card      NewCard(title, content)          SetTitle, SetContent
//	fold      NewFold(title, build)            SetOpen, SetMark, OnToggled
//	meter     NewMeter()                       SetShare
//	number    NewDisclosure(label, style)      SetValue, SetSteps, SetOpen
//	steps     NewDerivation(style)             SetSteps
//	strip     NewDotStrip(label, f)            Set, SetCaption
//	setting   NewSetting(label, content)       SetValue, SetOpen
//	track     NewShareTrack()                  Set
//	surface   NewSurface(drawn)                OnKey, OnPoint, OnTap
//	finding   NewFindingCard(finding)          SetAction, SetFinding
//	macros    NewMacroBar(style)               SetGrams, ShowNumbers
//	measure   NewMeasureFigure(kind, size)     SetCount, SetHand
//	cell      NewMeasureCell(kind)             Set, OnSet, OnLock, OnGo
//	segments  NewSegments(label, words, f)     SetSelected, Selected
//	tape      NewHandTape(height)              SetHand
//	empty     NewEmptyState(title, next, label, f)
//	toast     NewToast(clock)                  Say, Offer
//	list      NewList(length, create, update)  OnChosen, OnMoved, SetCursor
package widgets
