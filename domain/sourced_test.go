package domain

import (
	"fmt"
	"math"
	"reflect"
	"strings"
	"sync"
	"testing"

	"handbreadth/domain/derive"
)

// sourced: every number of the plan that carries a derivation has a source for
// each step, ends in the number itself, and a range that holds it.
func sourced(p Plan) error { return walk(reflect.ValueOf(p), "Plan") }

func walk(v reflect.Value, path string) error {
	if !holdsDerived(v.Type()) {
		return nil
	}
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			return walk(v.Elem(), path)
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if err := walk(v.Index(i), fmt.Sprintf("%s[%d]", path, i)); err != nil {
				return err
			}
		}
	case reflect.Struct:
		if isDerived(v.Type()) {
			return checkDerived(v, path)
		}
		for i := range v.NumField() {
			if field := v.Type().Field(i); field.IsExported() {
				if err := walk(v.Field(i), path+"."+field.Name); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

func isDerived(t reflect.Type) bool {
	return t.PkgPath() == derivedPath && strings.HasPrefix(t.Name(), "Derived[")
}

var derivedPath = reflect.TypeFor[derive.Step]().PkgPath()

// holders remembers which types hold derived numbers.
var holders sync.Map

func holdsDerived(t reflect.Type) bool {
	if known, ok := holders.Load(t); ok {
		return known.(bool)
	}
	holders.Store(t, false) // a type that holds itself adds nothing
	holds := isDerived(t)
	switch t.Kind() {
	case reflect.Pointer, reflect.Slice, reflect.Array:
		holds = holdsDerived(t.Elem())
	case reflect.Struct:
		for i := range t.NumField() {
			if field := t.Field(i); !holds && field.IsExported() {
				holds = holdsDerived(field.Type)
			}
		}
	case reflect.Map, reflect.Interface:
		// No plan keeps a derived number there; walk would not find it.
		if t.Kind() == reflect.Map && holdsDerived(t.Elem()) {
			panic("a map of the plan holds derived numbers: teach walk to look there")
		}
	}
	holders.Store(t, holds)
	return holds
}

func checkDerived(v reflect.Value, path string) error {
	steps := v.FieldByName("Steps").Interface().([]derive.Step)
	value, low, high := v.FieldByName("Value").Float(), v.FieldByName("Low").Float(), v.FieldByName("High").Float()
	if len(steps) == 0 {
		if value != 0 || low != 0 || high != 0 {
			return fmt.Errorf("%s is %v without a derivation", path, value)
		}
		return nil // nothing was worked out
	}
	for _, s := range steps {
		if s.Key == "" || s.Label == "" || s.Formula == "" || s.Source.Text == "" || s.Source.Confidence == "" {
			return fmt.Errorf("%s: a step lacks key, label, formula or source: %+v", path, s)
		}
		if s.Range != nil && !(s.Range.Low <= s.Range.High) {
			return fmt.Errorf("%s: step %s has a range that runs backwards: %+v", path, s.Key, *s.Range)
		}
	}
	last := steps[len(steps)-1]
	if !(low <= value && value <= high) || math.IsInf(value, 0) {
		return fmt.Errorf("%s: %v does not lie between %v and %v", path, value, low, high)
	}
	if math.Abs(last.Result-value) > 1e-9*math.Max(1, math.Abs(value)) {
		return fmt.Errorf("%s is %v, its derivation ends in %v (%s)", path, value, last.Result, last.Key)
	}
	return nil
}

// The walk finds a number whose derivation lost its source, its steps or its
// result, wherever it stands.
func TestSourcedCanFail(t *testing.T) {
	for name, spoil := range map[string]func(*Plan){
		"a step without a source": func(p *Plan) { p.Resting.Steps[0].Source = derive.Source{} },
		"no steps":                func(p *Plan) { p.Body.Lean.Steps = nil },
		"another result":          func(p *Plan) { p.Projection.Final.Value++ },
		"a range beside it":       func(p *Plan) { p.Maintenance.Low = p.Maintenance.Value + 1 },
		"in a list":               func(p *Plan) { p.Equations[3].Resting.Steps[0].Formula = "" },
	} {
		p, err := NewPlan(exampleIntake())
		if err != nil {
			t.Fatal(err)
		}
		if err := sourced(p); err != nil {
			t.Fatal(err)
		}
		if spoil(&p); sourced(p) == nil {
			t.Errorf("%s passes", name)
		}
	}
}
