package reports

import (
	"bytes"
	"fmt"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/filter"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"
)

// pdfcpu otherwise writes its settings into the home folder.
func init() { model.ConfigPath = "disable" }

// bind lays each page's vectors beneath its text, and says which language the
// paper speaks. The title names the kind of paper and nobody.
func (s *sheet) bind(pdf []byte) ([]byte, error) {
	settings := model.NewDefaultConfiguration()
	// Plain objects and a plain table of them cost a few kilobytes and save time.
	settings.WriteObjectStream, settings.WriteXRefStream = false, false
	ctx, err := api.ReadContext(bytes.NewReader(pdf), settings)
	if err != nil {
		return nil, paperError(err)
	}
	if err := ctx.EnsurePageCount(); err != nil {
		return nil, paperError(err)
	}
	if ctx.PageCount != len(s.pages) {
		return nil, paperError(fmt.Errorf("%d pages of text, %d of drawings", ctx.PageCount, len(s.pages)))
	}
	objects, err := s.objects(ctx)
	if err != nil {
		return nil, paperError(err)
	}
	for i, vectors := range s.pages {
		if err := under(ctx, i+1, vectors.Bytes(), objects); err != nil {
			return nil, paperError(err)
		}
	}
	if err := s.describe(ctx); err != nil {
		return nil, paperError(err)
	}
	var out bytes.Buffer
	if err := api.WriteContext(ctx, &out); err != nil {
		return nil, paperError(err)
	}
	return out.Bytes(), nil
}

// objects puts the drawings and the logo into the document, by name.
func (s *sheet) objects(ctx *model.Context) (types.Dict, error) {
	objects := types.NewDict()
	for _, p := range s.pictures {
		err := insert(ctx, objects, p.name, p.stream, types.Dict{
			"Type": types.Name("XObject"), "Subtype": types.Name("Form"),
			"BBox":      types.NewNumberArray(0, 0, p.wide, p.high),
			"Resources": types.NewDict(),
		})
		if err != nil {
			return nil, err
		}
	}
	l := s.opt.logo
	if l == nil {
		return objects, nil
	}
	return objects, insert(ctx, objects, logoName, deflated(l.pixels), types.Dict{
		"Type": types.Name("XObject"), "Subtype": types.Name("Image"),
		"Width": types.Integer(l.cols), "Height": types.Integer(l.rows),
		"ColorSpace": types.Name("DeviceRGB"), "BitsPerComponent": types.Integer(8),
	})
}

const logoName = "Logo"

// insert adds a deflated stream under a name.
func insert(ctx *model.Context, objects types.Dict, name string, stream []byte, about types.Dict) error {
	ref, err := addStream(ctx, stream, about)
	if err != nil {
		return err
	}
	objects[name] = *ref
	return nil
}

func addStream(ctx *model.Context, stream []byte, about types.Dict) (*types.IndirectRef, error) {
	length := int64(len(stream))
	about["Filter"], about["Length"] = types.Name(filter.Flate), types.Integer(length)
	return ctx.IndRefForNewObject(types.StreamDict{
		Dict: about, Raw: stream, StreamLength: &length,
		FilterPipeline: []types.PDFFilter{{Name: filter.Flate}},
	})
}

// under puts content before a page's own and lets it use the objects.
func under(ctx *model.Context, number int, content []byte, objects types.Dict) error {
	dict, _, _, err := ctx.PageDict(number, false)
	if err != nil {
		return err
	}
	ref, err := addStream(ctx, deflated(content), types.NewDict())
	if err != nil {
		return err
	}
	dict["Contents"] = types.Array{*ref, dict["Contents"]}
	resources, err := ctx.DereferenceDict(dict["Resources"])
	if err != nil {
		return err
	}
	all, err := ctx.DereferenceDict(resources["XObject"])
	if err != nil {
		return err
	}
	if all == nil {
		all = types.NewDict()
	}
	for name, object := range objects {
		all[name] = object
	}
	resources["XObject"] = all
	return nil
}

func (s *sheet) describe(ctx *model.Context) error {
	root, err := ctx.Catalog()
	if err != nil {
		return err
	}
	root["Lang"] = types.StringLiteral("en-GB")
	root["ViewerPreferences"] = types.Dict{"DisplayDocTitle": types.Boolean(true)}
	if ctx.Info == nil {
		return fmt.Errorf("the engine's document describes itself nowhere")
	}
	info, err := ctx.DereferenceDict(*ctx.Info)
	if err != nil {
		return err
	}
	info["Title"] = types.StringLiteral(s.opt.title)
	info["Creator"] = types.StringLiteral("Handbreadth")
	return nil
}
