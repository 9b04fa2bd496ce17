package consult

import (
	"fmt"

	"handbreadth/domain"
	"handbreadth/domain/derive"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

// projectionOf returns the course by the week, and its last day. It is empty
// where the model does not know the client.
func projectionOf(p *domain.Projection) []ProjectedWeight {
	list := []ProjectedWeight{}
	if p == nil {
		return list
	}
	for _, b := range p.Weekly() {
		list = append(list, ProjectedWeight{
			Day:    b.Day,
			Weight: rounded(float64(b.Weight), projected),
			Low:    rounded(float64(b.Low), projected), High: rounded(float64(b.High), projected),
		})
	}
	return list
}

// toldOf returns a value rounded, or nil where nothing led to it.
func toldOf(d derive.Derived[unit.Kilocalorie]) *float64 {
	if _, derived := d.Last(); !derived {
		return nil
	}
	value := rounded(float64(d.Value), perDay)
	return &value
}

func checksOf(checks []energy.CrossCheck) []CrossCheck {
	list := make([]CrossCheck, len(checks))
	for i, c := range checks {
		list[i] = CrossCheck{Name: c.Name, Energy: rounded(float64(c.Energy.Value), perDay)}
	}
	return list
}

func equationsOf(all []energy.Comparison) []Equation {
	list := make([]Equation, len(all))
	for i, c := range all {
		list[i] = Equation{
			Code: string(c.Equation.Code), Name: c.Equation.Name,
			Energy: toldOf(c.Resting), Suits: c.Suits, Why: c.Why,
		}
	}
	return list
}

// The keys of the steps of what stands beside the plan. A cross-check adds its
// place in the list, from 1, an equation its code.
const (
	keyCrossCheck = "cross_check"
	keyEquation   = "resting"
)

// besideSteps derives what is told beside the plan and not used in it, each step
// with a key of its own.
func besideSteps(p domain.Plan) []derive.Step {
	var steps []derive.Step
	for i, c := range p.CrossChecks {
		if s, reckoned := c.Energy.Last(); reckoned {
			s.Key = fmt.Sprintf("%s_%d", keyCrossCheck, i+1)
			steps = append(steps, s)
		}
	}
	for _, c := range p.Equations {
		if s, reckoned := c.Resting.Last(); reckoned {
			s.Key, s.Label = keyEquation+"_"+string(c.Equation.Code), "Resting energy, "+c.Equation.Name
			steps = append(steps, s)
		}
	}
	return steps
}
