package hand

func drawCupped(p *pen, d Dimensions, opt Options) {
	p.scale(d.HandLength)
	f := newPalmFrame(d)
	c := loop(f.at(-80, -80), f.at(0, -70), f.at(80, -80), f.at(38, -20), f.at(0, 0), f.at(-38, -20))
	p.fill(Wash, c)
	p.ink(1, c)
}
