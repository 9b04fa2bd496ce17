package hand

import "testing"

func BenchmarkDraw(b *testing.B) {
	for b.Loop() {
		Draw(Palm, Reference(), Options{})
	}
}

func BenchmarkRaster(b *testing.B) {
	for _, px := range []float64{32, 64, 454} {
		svg := SVG(Draw(Fist, Reference(), Options{Detail: DetailFor(px)}), light, px)
		b.Run(num(px), func(b *testing.B) {
			for b.Loop() {
				if _, err := raster(svg, hex(light.Paper)); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(len(svg)), "bytes")
		})
	}
}
