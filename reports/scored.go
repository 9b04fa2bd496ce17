package reports

import (
	"fmt"

	"handbreadth/domain/screen"
)

const wordsScored = "Scores are as published. The questions were put in the words of our program, or the published form was used."

// scoredResult is one thing that was scored or asked beside the questions.
type scoredResult struct{ text, source string }

// scoredBlocks tell the clinician what was scored and asked. What was not asked
// is not told, so that nobody takes it as no.
func (w writer) scoredBlocks() []block {
	results := w.scoredResults()
	if len(results) == 0 {
		return nil
	}
	blocks := make([]block, 0, len(results)+2)
	for i, r := range results {
		item := stack{listed{r.text}}
		if r.source != "" {
			item = append(item, indented{para{text: r.source, face: italic, size: sizeSmall, colour: muted, after: 1.6}})
		}
		if i == 0 {
			item = append(stack{heading("What was scored and asked", w.hue)}, item...)
		}
		blocks = append(blocks, item)
	}
	return append(blocks, para{text: wordsScored, size: sizeSmall, colour: muted}, gap(3.5))
}

func (w writer) scoredResults() []scoredResult {
	s := w.plan.Intake.Scored
	var results []scoredResult
	for _, q := range screen.Questionnaires() {
		if score := s.Scores[q.Code]; score.Asked {
			results = append(results, scoredResult{
				text:   clean(fmt.Sprintf("%s (%s): %d of %d; %d or more counts as positive.", q.Name, q.About, score.Points, q.Most, q.Positive)),
				source: clean(source(q.Source)),
			})
		}
	}
	add := func(asked bool, text string) {
		if asked {
			results = append(results, scoredResult{text: clean(text)})
		}
	}
	add(s.RecentLoss.Asked, "Weight lost without trying in the last 3 to 6 months: "+w.style.Percent(s.RecentLoss.Value)+".")
	add(s.DaysOfLittle.Asked, "Days of little or no food up to now: "+w.style.Number(float64(s.DaysOfLittle.Value), 0)+".")
	add(s.LowElectrolytes != screen.NotAsked, "Low potassium, phosphate or magnesium: "+answerWord(s.LowElectrolytes)+".")
	add(s.AlcoholOrDrugs != screen.NotAsked, "Alcohol misuse, or insulin, chemotherapy, antacids or diuretics: "+answerWord(s.AlcoholOrDrugs)+".")
	return results
}

func answerWord(a screen.Answer) string {
	if a == screen.Yes {
		return "yes"
	}
	return "no"
}
