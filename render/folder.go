package render

import (
	"bytes"
	"fmt"

	"topplate/render/report"
	"topplate/render/sheet"
	"topplate/render/svg"
	"topplate/route"
)

// A File is one file of a job folder.
type File struct {
	Name string
	Data []byte
}

// Sheets draws every sheet of the set, in order. If there are two plans to
// choose from or more, the last sheet compares them.
func Sheets(res *route.Result, plans ...route.Choice) []*sheet.Sheet {
	of := 2
	if len(plans) < 2 {
		return []*sheet.Sheet{floorSheet(res, 1, of), atticSheet(res, 2, of)}
	}
	of++
	return []*sheet.Sheet{floorSheet(res, 1, of), atticSheet(res, 2, of), choicesSheet(res, plans, of, of)}
}

// Folder makes the files of a job folder: the sheets as SVG, the schedule as
// text, the results as JSON.
func Folder(res *route.Result, plans ...route.Choice) ([]File, error) {
	var files []File
	for _, s := range append(Sheets(res, plans...), Details(res)...) {
		var b bytes.Buffer
		if err := svg.Write(&b, s, svg.Options{}); err != nil {
			return nil, fmt.Errorf("drawing sheet %s: %w", s.ID, err)
		}
		files = append(files, File{s.ID + ".svg", b.Bytes()})
	}
	var text, results bytes.Buffer
	if err := report.Schedule(&text, res); err != nil {
		return nil, err
	}
	if err := report.JSON(&results, res); err != nil {
		return nil, err
	}
	return append(files, File{"schedule.txt", text.Bytes()}, File{"results.json", results.Bytes()}), nil
}
