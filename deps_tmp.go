//go:build depskeep

package main

import (
	_ "codeberg.org/go-pdf/fpdf"
	_ "fyne.io/fyne/v2/app"
	_ "fyne.io/fyne/v2/test"
	_ "github.com/jmoiron/sqlx"
	_ "github.com/johnfercher/maroto/v2"
	_ "github.com/klippa-app/go-pdfium/webassembly"
	_ "github.com/pdfcpu/pdfcpu/pkg/api"
	_ "github.com/pressly/goose/v3"
	_ "golang.org/x/image/font/gofont/goregular"
	_ "golang.org/x/text/unicode/norm"
	_ "modernc.org/sqlite"
	_ "pgregory.net/rapid"
)
