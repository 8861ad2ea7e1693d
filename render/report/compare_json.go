package report

import (
	"encoding/json"
	"fmt"
	"io"

	"topplate/plan/measure"
	"topplate/route"
	"topplate/route/compare"
)

type jsonCompare struct {
	Schema      string            `json:"schema"`
	Units       map[string]string `json:"units"`
	A           jsonPlan          `json:"a"`
	B           jsonPlan          `json:"b"`
	Same        bool              `json:"same"`
	Outline     bool              `json:"outlines_differ"`
	House       []jsonThing       `json:"house"`
	Job         []jsonValue       `json:"job_values"`
	Drops       []jsonDrop        `json:"drops"`
	Routes      []jsonRoute       `json:"routes"`
	Holes       []jsonHole        `json:"holes"`
	Reused      []jsonReuse       `json:"reused"`
	Figures     []jsonFigure      `json:"figures"`
	Terms       []jsonFigure      `json:"terms"`
	OneCurrency bool              `json:"one_currency"`
}

type jsonPlan struct {
	Job      string `json:"job"`
	Number   string `json:"number,omitempty"`
	Revision string `json:"revision,omitempty"`
	Date     string `json:"date,omitempty"`
	House    string `json:"house"`
	Currency string `json:"currency"`
	Stops    bool   `json:"stops"`
}

type jsonValue struct {
	What string `json:"what"`
	A    string `json:"a"`
	B    string `json:"b"`
}

type jsonThing struct {
	Kind   string      `json:"kind"`
	ID     string      `json:"id,omitempty"`
	How    string      `json:"how"`
	Moved  float64     `json:"moved"`
	Values []jsonValue `json:"values"`
}

type jsonDrop struct {
	Tag    string      `json:"tag"`
	How    string      `json:"how"`
	Moved  float64     `json:"moved"`
	Wished float64     `json:"wished_moved"`
	Values []jsonValue `json:"values"`
	A      *drop       `json:"a,omitempty"`
	B      *drop       `json:"b,omitempty"`
}

type jsonRoute struct {
	Tag   string    `json:"tag"`
	Other bool      `json:"another_way"`
	CutA  float64   `json:"cut_a"`
	CutB  float64   `json:"cut_b"`
	OnlyA []jsonLeg `json:"only_a"`
	OnlyB []jsonLeg `json:"only_b"`
}

type jsonLeg struct {
	leg
	From [3]float64 `json:"from"`
	To   [3]float64 `json:"to"`
}

type jsonHole struct {
	How   string  `json:"how"`
	Moved float64 `json:"moved"`
	Size  bool    `json:"another_size"`
	There string  `json:"there,omitempty"`
	A     *hole   `json:"a,omitempty"`
	B     *hole   `json:"b,omitempty"`
}

type jsonReuse struct {
	ID  string `json:"id"`
	How string `json:"how"`
	A   int    `json:"cables_a"`
	B   int    `json:"cables_b"`
}

// Lengths are millimetres, so that figures need not be whole.
type jsonFigure struct {
	ID     string   `json:"id"`
	What   string   `json:"what"`
	Unit   string   `json:"unit"`
	A      float64  `json:"a"`
	B      float64  `json:"b"`
	Change *float64 `json:"change,omitempty"`
}

// CompareJSON writes what changed from plan A to plan B. Lengths are in
// millimetres, money in millionths of the currency's unit. A change in money
// is left out if the plans are in two currencies.
func CompareJSON(w io.Writer, d *compare.Difference) error {
	out := jsonCompare{
		Schema: CompareSchema, Units: map[string]string{"length": "mm", "money": "millionths of the currency's unit"},
		A: planOf(d, 0), B: planOf(d, 1), Same: d.Same(), Outline: d.Outline, OneCurrency: d.OneCurrency(),
		House: []jsonThing{}, Job: valuesOf(d.Job), Drops: []jsonDrop{}, Routes: []jsonRoute{}, Holes: []jsonHole{}, Reused: []jsonReuse{},
		Figures: []jsonFigure{jsonFigureOf(d, d.Cost)}, Terms: []jsonFigure{},
	}
	for i := range d.House {
		t := &d.House[i]
		out.House = append(out.House, jsonThing{t.Kind, t.ID, t.How.String(), t.Moved.Millimetres(), valuesOf(t.Values)})
	}
	for i := range d.Drops {
		out.Drops = append(out.Drops, jsonDropOf(d, &d.Drops[i]))
	}
	for i := range d.Routes {
		out.Routes = append(out.Routes, jsonRouteOf(d, &d.Routes[i]))
	}
	for i := range d.Holes {
		out.Holes = append(out.Holes, jsonHoleOf(d, &d.Holes[i]))
	}
	for _, r := range d.Reused {
		out.Reused = append(out.Reused, jsonReuse{r.ID, r.How.String(), r.Cables[0], r.Cables[1]})
	}
	for _, f := range d.Figures {
		out.Figures = append(out.Figures, jsonFigureOf(d, f))
	}
	for _, c := range d.Cables {
		length := compare.Figure{ID: "cable-" + c.ID, What: "cable to cut, " + c.ID, Unit: compare.Length, Is: [2]int64{int64(c.Length[0]), int64(c.Length[1])}}
		pieces := compare.Figure{ID: "pieces-" + c.ID, What: "pieces of " + c.ID, Is: [2]int64{int64(c.Cables[0]), int64(c.Cables[1])}}
		out.Figures = append(out.Figures, jsonFigureOf(d, length), jsonFigureOf(d, pieces))
	}
	for _, f := range d.Terms {
		out.Terms = append(out.Terms, jsonFigureOf(d, f))
	}
	enc := json.NewEncoder(w)
	enc.SetIndent("", "  ")
	if err := enc.Encode(out); err != nil {
		return fmt.Errorf("writing what changed: %w", err)
	}
	return nil
}

func planOf(d *compare.Difference, side int) jsonPlan {
	w := d.Plans[side]
	j := w.Job
	return jsonPlan{j.Name, j.Number, j.Revision, j.Date, j.House.Name, j.Rates.Currency, w.Stops()}
}

func valuesOf(values []compare.Value) []jsonValue {
	out := []jsonValue{}
	for _, v := range values {
		out = append(out, jsonValue{v.What, v.Is[0], v.Is[1]})
	}
	return out
}

func jsonDropOf(d *compare.Difference, x *compare.Drop) jsonDrop {
	out := jsonDrop{Tag: x.Tag, How: x.How.String(), Moved: x.Moved.Millimetres(), Wished: x.Wished.Millimetres(), Values: valuesOf(x.Values)}
	for side, to := range []**drop{&out.A, &out.B} {
		if i := x.In[side]; i >= 0 {
			it := dropOf(d.Plans[side].Result, &d.Plans[side].Routes[i])
			*to = &it
		}
	}
	return out
}

func jsonRouteOf(d *compare.Difference, x *compare.Route) jsonRoute {
	out := jsonRoute{Tag: x.Tag, Other: x.Other, CutA: x.Cut[0].Millimetres(), CutB: x.Cut[1].Millimetres(), OnlyA: []jsonLeg{}, OnlyB: []jsonLeg{}}
	for side, to := range []*[]jsonLeg{&out.OnlyA, &out.OnlyB} {
		r := &d.Plans[side].Routes[x.In[side]]
		all := dropOf(d.Plans[side].Result, r).Legs
		for _, i := range x.Only[side] {
			*to = append(*to, jsonLeg{all[i], mm3(r.Legs[i].From), mm3(r.Legs[i].To)})
		}
	}
	return out
}

func jsonHoleOf(d *compare.Difference, x *compare.Hole) jsonHole {
	out := jsonHole{How: x.How.String(), Moved: x.By.Millimetres(), Size: x.Size, There: x.There}
	for side, to := range []**hole{&out.A, &out.B} {
		if i := x.In[side]; i >= 0 {
			w := d.Plans[side]
			it := comparedHole(w.Result, &w.Holes[i])
			*to = &it
		}
	}
	return out
}

// comparedHole is what the routes tell of a hole, with its bores.
func comparedHole(res *route.Result, h *route.Hole) hole {
	out := boredHole(res, h)
	for _, b := range h.Bores {
		out.Bores = append(out.Bores, bore{Diameter: b.Bit.Millimetres()})
	}
	return out
}

var unitNames = map[compare.Unit]string{compare.Number: "number", compare.Money: "money", compare.Length: "length", compare.Minutes: "minutes"}

func jsonFigureOf(d *compare.Difference, f compare.Figure) jsonFigure {
	in := func(n int64) float64 {
		if f.Unit == compare.Length {
			return measure.Length(n).Millimetres()
		}
		return float64(n)
	}
	out := jsonFigure{ID: f.ID, What: f.What, Unit: unitNames[f.Unit], A: in(f.Is[0]), B: in(f.Is[1])}
	if f.Unit != compare.Money || d.OneCurrency() {
		change := in(f.Change())
		out.Change = &change
	}
	return out
}
