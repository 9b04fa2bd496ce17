package hand

// fillet lies on the palm: a piece of fish or meat of the palm's size.
func (p *pen) fillet(f palmFrame, opt Options) {
	shape := f.at.loop(-30, -70, -22, -92, -4, -101, 18, -97, 31, -82, 30, -58, 20, -34, 4, -16, -10, -14, -16, -26, -24, -46)
	p.fill(Paper, shape)
	p.ink(1, shape)
}
