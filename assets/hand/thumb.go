package hand

func drawThumb(p *pen, d Dimensions, opt Options) {
	p.scale(d.PalmLength + d.ThumbLength)
	f := newPalmFrame(d)
	c := loop(f.at(-11, -160), f.at(11, -160), f.at(11, -80), f.at(38, -20), f.at(0, 0), f.at(-38, -20))
	p.fill(Wash, c)
	p.ink(1, c)
}
