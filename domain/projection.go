package domain

import (
	"handbreadth/domain/body"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// Projection is the expected course of the weight with its range.
type Projection struct {
	// Bands is the course day by day, day 0 first.
	Bands []body.Band
	// Phases is what is eaten: the target, and where a goal weight is reached the
	// energy that holds it.
	Phases []body.Phase
	// Reached is the day on which the goal weight is reached and the second
	// phase begins; 0 where the course has one phase.
	Reached int
	// Goal is the wished weight; 0 where none was named.
	Goal unit.Kilogram
	// Short reports that a goal weight was named and is not reached within ten
	// years: the weight settles before, at Settles.
	Short bool
	// Settles is the weight at which the target settles in the end. It has no
	// steps where the weight is held or the goal is reached.
	Settles derive.Derived[unit.Kilogram]
	// Final is the weight at the end with its range, FinalFat the body fat in it.
	Final    derive.Derived[unit.Kilogram]
	FinalFat derive.Derived[unit.Kilogram]
	// Holding is the energy a day that holds the weight of the goal, or of the
	// end where no goal is reached.
	Holding derive.Derived[unit.Kilocalorie]
	// HalfTime is the time after which half of a change of weight has happened.
	HalfTime derive.Derived[unit.Day]
	// Promise sets the static rule beside the model.
	Promise Promise
	// Notes say in plain sentences what the course should not be read without;
	// they stand in the steps as well.
	Notes  []string
	start  unit.Kilogram
	change unit.Kilocalorie
}

// Promise is what the static rule promises for a day, and what the model
// expects on it at the same energy. Day is 0 where there is nothing to compare:
// then the weight is held.
type Promise struct {
	Day      int
	Energy   unit.Kilocalorie // eaten until then, a day
	Promised unit.Kilogram
	Expected derive.Derived[unit.Kilogram]
}

// The lengths of a projection, in days.
const (
	// HeldProjection is drawn where the weight is held, and at least.
	HeldProjection = 182
	// OpenProjection is drawn where no goal weight was named.
	OpenProjection = 365
	// ShortProjection is drawn where the goal weight is not reached.
	ShortProjection = 730
	// HeldFor is how long the goal weight is shown as held.
	HeldFor = 91
)

// Static returns the weight that the static rule promises for a day of the
// target: a straight line, that stops where the goal weight is named and reached.
func (p *Projection) Static(day int) unit.Kilogram {
	weight := p.start + unit.Kilogram(float64(p.change)*float64(day)/energy.StaticEnergyPerKilogram)
	switch {
	case p.Goal == 0 || p.change == 0:
		return weight
	case p.change < 0 && p.Goal < p.start:
		return max(weight, p.Goal)
	case p.change > 0 && p.Goal > p.start:
		return min(weight, p.Goal)
	}
	return weight
}

// Weekly returns every seventh day of the bands, from day 0, and the last.
func (p *Projection) Weekly() []body.Band {
	const week = 7
	weeks := make([]body.Band, 0, len(p.Bands)/week+2)
	for day := 0; day < len(p.Bands); day += week {
		weeks = append(weeks, p.Bands[day])
	}
	if last := p.Bands[len(p.Bands)-1]; weeks[len(weeks)-1].Day != last.Day {
		weeks = append(weeks, last)
	}
	return weeks
}

func project(p Plan, c course, o energy.Outcome) *Projection {
	pr := &Projection{start: p.Intake.Weight, change: o.Change}
	if p.Intake.Goal.Kind != energy.Maintain {
		pr.Goal = p.Intake.Goal.Weight
	}
	if !o.ReachedOn.IsZero() {
		pr.Reached = p.Intake.Date.DaysUntil(o.ReachedOn)
	}
	pr.Short = pr.Goal != 0 && pr.Reached == 0
	pr.Phases = []body.Phase{{Days: pr.lead(), Energy: o.Target.Value}}
	var end body.Day
	if pr.Reached > 0 {
		pr.Holding = p.holding(c, pr.Goal, o)
		pr.Phases = append(pr.Phases, body.Phase{Days: max(HeldFor, HeldProjection-pr.Reached), Energy: pr.Holding.Value})
		end = body.After(c.start, pr.Phases...)
	} else {
		end = body.After(c.start, pr.Phases...)
		pr.Holding = p.holding(c, end.Weight, o)
		if o.Change != 0 {
			pr.Settles = settles(c, o.Target.Value)
		}
	}
	pr.Bands = body.Fan(c.start, c.spread, pr.Phases...)
	skewed, lean := p.skewNote(pr.Bands), p.leanNote(c, pr.Phases, end)
	pr.Final, pr.FinalFat = final(pr.Bands, skewed), finalFat(end, lean)
	for _, note := range []string{skewed, lean} {
		if note != "" {
			pr.Notes = append(pr.Notes, note)
		}
	}
	pr.HalfTime = halfTime(c)
	pr.Promise = pr.promise(p.Intake.Date, c, o)
	return pr
}

// lead returns the days of the first phase.
func (p *Projection) lead() int {
	switch {
	case p.Reached > 0:
		return p.Reached
	case p.change == 0:
		return HeldProjection
	case p.Short:
		return ShortProjection
	}
	return OpenProjection
}

func (p *Projection) promise(today unit.Date, c course, o energy.Outcome) Promise {
	if o.WishedDays > 0 && o.StaticTarget.Value > 0 {
		at := body.After(c.start, body.Phase{Days: o.WishedDays, Energy: o.StaticTarget.Value}).Weight
		return Promise{o.WishedDays, o.StaticTarget.Value, o.WishedWeight, derive.Exact(at, expected(o.WishedDays, o.StaticTarget.Value, at))}
	}
	if o.Change == 0 {
		return Promise{}
	}
	day := p.Phases[0].Days
	if !o.StaticReachedOn.IsZero() {
		day = min(day, today.DaysUntil(o.StaticReachedOn))
	}
	band := p.Bands[day]
	step := expected(day, o.Target.Value, band.Weight)
	step.Range = &derive.Range{Low: float64(band.Low), High: float64(band.High)}
	return Promise{day, o.Target.Value, p.Static(day), derive.Within(band.Weight, band.Low, band.High, step)}
}

func (p *Projection) steps() []derive.Step {
	if p == nil {
		return nil
	}
	steps := append([]derive.Step{}, p.Final.Steps...)
	steps = append(steps, p.FinalFat.Steps...)
	steps = append(steps, p.Settles.Steps...)
	steps = append(steps, p.Promise.Expected.Steps...)
	steps = append(steps, p.Holding.Steps...)
	return append(steps, p.HalfTime.Steps...)
}
