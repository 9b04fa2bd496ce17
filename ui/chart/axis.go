package chart

// axis lays a span of values over a span of places. From and to may be either
// way round.
type axis struct {
	low, high float64
	from, to  float32
}

// at returns the place of a value.
func (a axis) at(value float64) float32 {
	if a.high == a.low {
		return a.from
	}
	return a.from + (a.to-a.from)*float32((value-a.low)/(a.high-a.low))
}

// value returns the value at a place; it is the inverse of at.
func (a axis) value(place float32) float64 {
	if a.to == a.from {
		return a.low
	}
	return a.low + (a.high-a.low)*float64((place-a.from)/(a.to-a.from))
}

// point is a place in the chart, in units, from the top left corner.
type point struct{ X, Y float32 }

// extent is a width and a height.
type extent struct{ W, H float32 }

// box is a place with an extent.
type box struct{ X, Y, W, H float32 }

func (b box) right() float32  { return b.X + b.W }
func (b box) bottom() float32 { return b.Y + b.H }

// overlaps reports whether two boxes share more than an edge.
func (b box) overlaps(o box) bool {
	return b.X < o.right() && o.X < b.right() && b.Y < o.bottom() && o.Y < b.bottom()
}

// spread moves places of labels of one height apart so that none overlap,
// between top and bottom, in their order, as little as need be. Places come and
// go as the middles of the labels; they must be sorted.
func spread(middles []float32, height, top, bottom float32) []float32 {
	placed := append([]float32(nil), middles...)
	for i := range placed {
		least := top + height/2
		if i > 0 {
			least = placed[i-1] + height
		}
		placed[i] = max(placed[i], least)
	}
	for i := len(placed) - 1; i >= 0; i-- {
		most := bottom - height/2
		if i < len(placed)-1 {
			most = placed[i+1] - height
		}
		placed[i] = min(placed[i], most)
	}
	return placed
}
