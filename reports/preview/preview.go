// Package preview turns a PDF into pictures of its pages, without cgo and
// without a program beside ours: the renderer is a WebAssembly module that is
// compiled in. It sees no file of the machine.
//
// Its first start takes some seconds of one processor, as the module is compiled
// for the machine. Start, called early with a folder to keep the result in, makes
// later starts take a tenth of a second. After that a page takes milliseconds.
package preview

import (
	"context"
	"errors"
	"fmt"
	"image"
	"image/draw"
	"io"
	"os"
	"sync"

	"github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/responses"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/experimental"
)

// The resolutions that are accepted, in dots an inch.
const (
	LeastDPI = 36
	MostDPI  = 600
)

// ErrResolution says that a resolution is outside LeastDPI to MostDPI.
var ErrResolution = errors.New("a preview has 36 to 600 dots an inch")

// ErrNotPDF says that the renderer could not read the document.
var ErrNotPDF = errors.New("the document cannot be shown: it is no readable PDF")

// renderer is the one pool of the program.
var renderer struct {
	once  sync.Once
	ready chan struct{}
	pool  pdfium.Pool
	err   error
}

// Start begins to start the renderer in the background and returns at once.
// The folder, which is made where it is missing, keeps the compiled module (about
// 21 MB) for the next start; it must belong to the user alone, as what lies there
// is run. With no folder, or one that cannot be used, nothing is kept. Only the
// first call counts.
func Start(cacheFolder string) { _ = started(cacheFolder) }

func started(cacheFolder string) <-chan struct{} {
	renderer.once.Do(func() {
		renderer.ready = make(chan struct{})
		go func() {
			defer close(renderer.ready)
			// One worker is enough: a practice looks at one paper at a time.
			renderer.pool, renderer.err = webassembly.Init(webassembly.Config{
				MinIdle: 1, MaxIdle: 1, MaxTotal: 1, ReuseWorkers: true,
				FSConfig: wazero.NewFSConfig(), // no folder is mounted
				Stdout:   io.Discard, Stderr: io.Discard,
				RuntimeConfig: runtimeConfig(cacheFolder),
			})
		}()
	})
	return renderer.ready
}

// runtimeConfig has what the module needs beyond WebAssembly 2: exceptions.
func runtimeConfig(cacheFolder string) wazero.RuntimeConfig {
	config := wazero.NewRuntimeConfig().WithCoreFeatures(
		api.CoreFeaturesV2 | experimental.CoreFeaturesExceptionHandling)
	if cacheFolder == "" || os.MkdirAll(cacheFolder, 0o700) != nil {
		return config
	}
	cache, err := wazero.NewCompilationCacheWithDir(cacheFolder)
	if err != nil {
		return config
	}
	return config.WithCompilationCache(cache)
}

// Pages returns a picture of each page at a resolution of LeastDPI to MostDPI.
// It starts the renderer where Start was not called. The error wraps
// [ErrResolution], [ErrNotPDF] or the context's error; a context is heeded
// while the renderer starts and between pages.
func Pages(ctx context.Context, pdf []byte, dpi int) ([]image.Image, error) {
	if dpi < LeastDPI || dpi > MostDPI {
		return nil, fmt.Errorf("%w: %d", ErrResolution, dpi)
	}
	if len(pdf) == 0 {
		return nil, ErrNotPDF
	}
	select {
	case <-started(""):
	case <-ctx.Done():
		return nil, ctx.Err()
	}
	if renderer.err != nil {
		return nil, fmt.Errorf("the preview could not start: %w", renderer.err)
	}
	worker, err := renderer.pool.GetInstanceWithContext(ctx)
	if err != nil {
		return nil, fmt.Errorf("the preview is busy: %w", err)
	}
	pages, err := render(ctx, worker, pdf, dpi)
	return pages, errors.Join(err, worker.Close())
}

func render(ctx context.Context, worker pdfium.Pdfium, pdf []byte, dpi int) ([]image.Image, error) {
	document, err := worker.OpenDocument(&requests.OpenDocument{File: &pdf})
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrNotPDF, err)
	}
	count, err := worker.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: document.Document})
	if err != nil {
		return nil, fmt.Errorf("%w: %w", ErrNotPDF, err)
	}
	pages := make([]image.Image, 0, count.PageCount)
	for i := range count.PageCount {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		page, err := worker.RenderPageInDPI(&requests.RenderPageInDPI{
			DPI:  dpi,
			Page: requests.Page{ByIndex: &requests.PageByIndex{Document: document.Document, Index: i}},
		})
		if err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
		pages = append(pages, kept(page))
	}
	return pages, nil
}

// kept copies a picture out of the renderer's memory, which it then gives back.
func kept(page *responses.RenderPageInDPI) image.Image {
	defer page.Cleanup()
	shown := page.Result.RenderedImage
	own := image.NewRGBA(shown.Bounds())
	draw.Draw(own, own.Bounds(), shown, shown.Bounds().Min, draw.Src)
	return own
}
