package hand

import "math"

// bound returns the most halves of a measure worth trying: beyond the count
// that alone brings twice its leading target, every target is only missed more.
// A wish for more is kept.
func bound(target, each float64, wished [2]int) int {
	const least, most = 4, 96
	worth := least
	if each > 0 {
		worth = int(math.Min(most, math.Max(least, math.Ceil(2*halvesInWhole*target/each))))
	}
	return min(max(worth, wished[0]), wished[1])
}

// found is one day with its distance.
type found struct {
	day  Measures
	miss float64
}

// search looks for the days that come nearest to an aim.
type search struct {
	aim      Aim
	contents Contents
	thumbs   [2]int // least and most halves
	at       int    // where the last walk ended
	palms    int
	cups     int
	fists    int
	best     []found // nearest first
}

// nearest returns the nearest day and the next ones: every count of palms and
// cupped hands is looked at, and the thumbs of each walked.
func nearest(a Aim, c Contents, b mealBounds) []found {
	s := search{aim: a, contents: c, fists: b.day[Fist][0]}
	s.thumbs = [2]int{b.day[Thumb][0], bound(float64(a.Fat), float64(c[Thumb].Nutrients.Fat), b.day[Thumb])}
	mostPalms := bound(float64(a.Protein), float64(c[Palm].Nutrients.Protein), b.day[Palm])
	mostCups := bound(float64(a.Carbohydrate), float64(c[CuppedHand].Nutrients.Carbohydrate), b.day[CuppedHand])
	base := totals{}.plus(c[Fist].Nutrients, s.fists)
	for s.palms = b.day[Palm][0]; s.palms <= mostPalms; s.palms++ {
		withPalms := base.plus(c[Palm].Nutrients, s.palms)
		for s.cups = b.day[CuppedHand][0]; s.cups <= mostCups; s.cups++ {
			s.walk(withPalms.plus(c[CuppedHand].Nutrients, s.cups))
		}
	}
	return s.best
}

// walk takes the halves of thumb that bring a day nearest to the aim, and those
// around it that belong among the nearest as well. The distance is a sum of
// convex functions of the thumbs, and so convex: walking downhill from anywhere
// ends at the least, and away from it every day is farther. The fat floor only
// cuts off the low end, because a thumb is richer in fat than any floor.
func (s *search) walk(day totals) {
	lowest := s.leastThumbs(day)
	at := min(max(s.at, lowest), s.thumbs[1])
	here := s.missAt(day, at)
	for _, step := range [...]int{1, -1} {
		for next := at + step; next >= lowest && next <= s.thumbs[1]; next += step {
			there := s.missAt(day, next)
			if there >= here {
				break
			}
			at, here = next, there
		}
	}
	s.at = at
	if !s.keep(at, here) {
		return
	}
	for _, step := range [...]int{1, -1} {
		for next := at + step; next >= lowest && next <= s.thumbs[1] && s.keep(next, s.missAt(day, next)); {
			next += step
		}
	}
}

// keep puts a day among the nearest, and reports whether it belongs there.
func (s *search) keep(thumbs int, miss float64) bool {
	n := len(s.best)
	if n == 1+alternatives && miss >= s.best[n-1].miss {
		return false
	}
	day := Measures{Palm: whole(s.palms), Fist: whole(s.fists), CuppedHand: whole(s.cups), Thumb: whole(thumbs)}
	if n <= alternatives {
		s.best = append(s.best, found{})
		n++
	}
	i := n - 1
	for ; i > 0 && s.best[i-1].miss > miss; i-- {
		s.best[i] = s.best[i-1]
	}
	s.best[i] = found{day, miss}
	return true
}

func (s *search) missAt(day totals, halves int) float64 {
	return s.aim.miss(day.plus(s.contents[Thumb].Nutrients, halves)) + tieBreak*float64(halves+s.palms+s.cups)
}

// leastThumbs returns the halves of thumb from which the day's fat holds the
// floor: fat energy less floor grows with each thumb. Where a wish does not
// allow so many, it returns the most that it allows.
func (s *search) leastThumbs(day totals) int {
	const perGram = 9
	floor := float64(s.aim.FatFloor) / 100
	thumb := s.contents[Thumb].Nutrients
	gain := (perGram*float64(thumb.Fat) - floor*float64(thumb.Energy)) / halvesInWhole
	lack := floor*day.energy - perGram*day.fat
	if lack <= 0 || gain <= 0 {
		return s.thumbs[0]
	}
	return min(max(s.thumbs[0], int(math.Ceil(lack/gain-1e-9))), s.thumbs[1])
}
