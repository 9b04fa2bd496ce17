package draft

import (
	"handbreadth/domain"
	"handbreadth/domain/body"
	"handbreadth/domain/energy"
	"handbreadth/domain/unit"
)

func (r *reader) measurements() {
	in := &r.out.Intake
	in.Weight = r.weight(Weight)
	if text := r.form.Get(Height); text != "" {
		h, err := unit.ParseHeightIn(string(Height), text, r.style.System)
		if r.keep(Height, err) {
			r.out.Understood[Height] = r.style.Height(h)
		}
		in.Height = h
	}
	in.Body = domain.BodyMeasures{Neck: r.length(Neck), Waist: r.length(Waist), Hip: r.length(Hip)}
	in.Body.Fat = r.percent(FatPercent, domain.LeastFatPercent, domain.MostFatPercent, 0)
	in.Body.Points = choice(r, Points, []body.Population{"", body.WorldPoints, body.AsianPoints}, "", "who or asian")
	in.MeasuredResting = r.energy(MeasuredResting)
	in.RestingEquation = choice(r, RestingEquation,
		append([]energy.RestingEquation{in.RestingEquation}, energy.RestingEquations()...), "", "the code of an equation for resting energy")
}

func (r *reader) weight(field Field) unit.Kilogram {
	text := r.form.Get(field)
	if text == "" {
		return 0
	}
	w, err := unit.ParseWeightIn(string(field), text, r.style.System)
	if r.keep(field, err) {
		r.out.Understood[field] = r.style.Weight(w)
	}
	return w
}

func (r *reader) length(field Field) unit.Centimetre {
	text := r.form.Get(field)
	if text == "" {
		return 0
	}
	l, err := unit.ParseLengthIn(string(field), text, r.style.System)
	if r.keep(field, err) {
		r.out.Understood[field] = r.style.Length(l)
	}
	return l
}

// energy reads an energy a day.
func (r *reader) energy(field Field) unit.Kilocalorie {
	text := r.form.Get(field)
	if text == "" {
		return 0
	}
	e, err := unit.ParseEnergyIn(string(field), text, r.style.EnergyIn)
	if r.keep(field, err) {
		r.out.Understood[field] = r.style.EnergyPerDay(e)
	}
	return e
}

func (r *reader) percent(field Field, low, high, otherwise unit.Percent) unit.Percent {
	text := r.form.Get(field)
	if text == "" {
		return otherwise
	}
	p, err := unit.ParsePercent(string(field), text, low, high)
	if !r.keep(field, err) {
		return otherwise
	}
	return p
}
