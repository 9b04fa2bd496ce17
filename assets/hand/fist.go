package hand

func drawFist(p *pen, d Dimensions, opt Options) {
	p.scale(d.PalmLength)
	f := newPalmFrame(d)
	c := loop(f.at(-41.6, -80), f.at(0, -100), f.at(41.6, -80), f.at(38, -20), f.at(0, 0), f.at(-38, -20))
	p.fill(Wash, c)
	p.ink(1, c)
}
