package plan

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"topplate/plan/cable"
	"topplate/plan/connector"
	"topplate/plan/diag"
	"topplate/plan/measure"
	"topplate/plan/rule"
)

// houses are the base house in either system of units.
func houses(t testing.TB) (imperial, metric string) {
	t.Helper()
	imperial = complete(t, "", "testdata/base_house.toml")
	return imperial, strings.Replace(imperial, `units = "imperial"`, `units = "metric"`, 1)
}

// What a job leaves out, all of it common practice, without a source.
func TestSupplyDefaults(t *testing.T) {
	imperial, metric := houses(t)
	for house, spool := range map[string]measure.Length{imperial: 1000 * foot, metric: 305 * measure.Metre} {
		j := jobOf(t, "", house)
		if len(j.OwnCables)+len(j.OwnConnectors)+len(j.Spools)+len(j.Have) != 0 || j.Switch != (Switch{}) {
			t.Errorf("got %+v", j)
		}
		if j.Buy.Of("cat6") != spool || j.Crew != (Crew{People: 1, Start: 480, Day: 480, OneDay: 720}) || j.Allowance != 10 || j.Closet.Panel != "A" {
			t.Errorf("got %+v, %+v, %d %%", j.Buy, j.Crew, j.Allowance)
		}
		parts := []LabelPart{{Field: "panel"}, {Field: "port"}, {Text: "-"}, {Field: "tag"}, {Text: "."}, {Field: "n"}}
		if diff := cmp.Diff(parts, j.Labels.Parts); diff != "" {
			t.Error(diff)
		}
		d := j.Drops[0]
		if d.Class != NoClass || d.Watts != 0 || d.End != connector.Jack || d.Connector.ID != "jack-6" || d.Exposure != NotExposed {
			t.Errorf("got %+v", d)
		}
		h := j.House
		// 140 degF is (140 - 32) / 1.8 = 60 degC.
		if h.Site != (Site{}) || h.AtticHot != 60_000 || h.AtticHotGiven || DefaultAtticHot.Source.Printed != "140 degF" {
			t.Errorf("got %+v, %d", h.Site, h.AtticHot)
		}
	}
}

// Each key of [[cable]] changes its own value, and says whose it is.
func TestOwnCable(t *testing.T) {
	house, _ := houses(t)
	base, _ := cable.Lookup("cat6")
	for _, tt := range []struct {
		keys   string
		change func(*cable.Type)
		of     []cable.Property
	}{
		{"", func(*cable.Type) {}, nil},
		{`title = "Mine"`, func(c *cable.Type) { c.Title = "Mine" }, nil},
		{`diameter = "6.2mm"`, func(c *cable.Type) { c.Diameter = 62 * mm / 10 }, []cable.Property{cable.OfDiameter}},
		{`core = "1mm"`, func(c *cable.Type) { c.Core = mm }, []cable.Property{cable.OfCore}},
		{`conductor = "0.55mm"`, func(c *cable.Type) { c.Conductor = 55 * mm / 100 }, []cable.Property{cable.OfConductor}},
		{`bend = 8`, func(c *cable.Type) { c.MinBendDiameters = 8 }, []cable.Property{cable.OfBend}},
		// 25 lbf is 111.2055 N, which the standard prints as 110 N.
		{`pull = "25lbf"`, func(c *cable.Type) { c.MaxPull = 111_206 }, []cable.Property{cable.OfPull}},
		{`pull = "110 N"`, func(c *cable.Type) { c.MaxPull = 110_000 }, []cable.Property{cable.OfPull}},
		// 27 lb/1000 ft is 27 × 453.59237 g / 304.8 m = 40.180 g/m.
		{`mass = "27lb/1000ft"`, func(c *cable.Type) { c.Mass = 40_180 }, []cable.Property{cable.OfMass}},
		{`mass = "42.5kg/km"`, func(c *cable.Type) { c.Mass = 42_500 }, []cable.Property{cable.OfMass}},
		// A wire table has 20.36 ohm/1000 ft and 66.8 ohm/km for 23 AWG.
		{`resistance = "20.36ohm/1000ft"`, func(c *cable.Type) { c.Resistance = 66_798 }, []cable.Property{cable.OfResistance}},
		{`resistance = "9.38ohm/100m"`, func(c *cable.Type) { c.Resistance = 93_800 }, []cable.Property{cable.OfResistance}},
		{`resistance = "93.8 ohm/km"`, func(c *cable.Type) { c.Resistance = 93_800 }, []cable.Property{cable.OfResistance}},
		{`jacket = "CMP"`, func(c *cable.Type) { c.Jacket = cable.CMP }, []cable.Property{cable.OfJacket}},
		{`sunlight = true`, func(c *cable.Type) { c.Sunlight = true }, []cable.Property{cable.OfSunlight}},
		{`screened = true`, func(c *cable.Type) { c.Screened = true }, []cable.Property{cable.OfScreen}},
		{`cold = "-4F"`, func(c *cable.Type) { c.Cold = -20_000 }, []cable.Property{cable.OfTemperature}},
		{`hot = "75°C"`, func(c *cable.Type) { c.Hot = 75_000 }, []cable.Property{cable.OfTemperature}},
		{`price = 0.85`, func(c *cable.Type) { c.PricePerMetre = 850 }, []cable.Property{cable.OfPrice}},
		// 190 for 1000 ft is 190 / 304.8 m = 0.6234 for a metre.
		{"price = 190\nper = \"1000ft\"", func(c *cable.Type) { c.PricePerMetre = 623 }, []cable.Property{cable.OfPrice}},
		// AWG01: 24 AWG has 0.511 mm and 84.2 ohm/km; seven strands of it are
		// 0.579 mm thick.
		{`gauge = 24`, func(c *cable.Type) { c.Gauge, c.Conductor, c.Resistance = 24, 510_559, 84_213 }, []cable.Property{cable.OfGauge}},
		{"gauge = 24\nstranded = true", func(c *cable.Type) { c.Gauge, c.Stranded, c.Conductor, c.Resistance = 24, true, 578_973, 84_213 }, []cable.Property{cable.OfGauge}},
		{"gauge = 24\nresistance = \"13ohm/100m\"", func(c *cable.Type) { c.Gauge, c.Conductor, c.Resistance = 24, 510_559, 130_000 }, []cable.Property{cable.OfGauge, cable.OfResistance}},
	} {
		j := jobOf(t, "[[cable]]\nid = \"mine\"\nlike = \"cat6\"\n"+tt.keys+"\n", house)
		want := base
		want.ID = "mine"
		tt.change(&want)
		for _, p := range tt.of {
			want.Sources[p] = rule.Source{Status: rule.SetByUser}
		}
		got, ok := j.Cable("mine")
		// What follows from a gauge is derived as that of the built-in kind.
		if diff := cmp.Diff(want, got); diff != "" || !ok {
			t.Errorf("%s: %s", tt.keys, diff)
		}
		if own := j.OwnCables[0]; own.Like != "cat6" || own.Pos.Line != 2 {
			t.Errorf("%s: %+v", tt.keys, own)
		}
	}
}

// A drop and a spool use the job's own cable by its name, wherever it stands in
// the file.
func TestOwnCableIsUsed(t *testing.T) {
	house, _ := houses(t)
	j := jobOf(t, "[[drop]]\ntag = \"A\"\nkind = \"wall plate\"\nroom = \"bed\"\nwall = \"west\"\nat = \"6ft\"\ncable = \"patch\"\n"+
		"[[spool]]\nid = \"S\"\ncable = \"patch\"\nleft = \"50ft\"\n[buy]\npatch = \"100m\"\n[[cable]]\nid = \"patch\"\nlike = \"cat6a\"\ndiameter = \"7mm\"\n", house)
	if c := j.Drops[0].Cable; c.ID != "patch" || c.Diameter != 7*mm || c != j.Spools[0].Cable || j.Drops[0].Connector.ID != "jack-6a" {
		t.Errorf("got %+v", c)
	}
	if j.Buy.Of("patch") != 100*measure.Metre || j.Buy.Of("cat6") != 1000*foot {
		t.Errorf("got %+v", j.Buy)
	}
	if _, ok := j.Cable("none"); ok {
		t.Error("there is a cable none")
	}
}

func TestOwnConnector(t *testing.T) {
	house, _ := houses(t)
	for _, tt := range []struct {
		like, keys string
		change     func(*connector.Type)
	}{
		{"plug-6", "", func(*connector.Type) {}},
		{"plug-6", `title = "Mine"`, func(c *connector.Type) { c.Title = "Mine" }},
		{"plug-6", "gauges = [23, 24]", func(c *connector.Type) { c.Thickest, c.Thinnest = 23, 24 }},
		{"plug-6", "gauges = [26, 22]", func(c *connector.Type) { c.Thickest, c.Thinnest = 22, 26 }},
		{"plug-6", "solid = false", func(c *connector.Type) { c.Solid = false }},
		{"jack-6", "stranded = true", func(c *connector.Type) { c.Stranded = true }},
		{"jack-6", `core = ["0.85mm", "1.6mm"]`, func(c *connector.Type) { c.Core = measure.Range{Min: 85 * mm / 100, Max: 16 * mm / 10} }},
		{"plug-6", `jacket = ["1/4in", "3/8in"]`, func(c *connector.Type) { c.Jacket = measure.Range{Min: inch / 4, Max: 3 * inch / 8} }},
		{"plug-6", "pass_through = true", func(c *connector.Type) { c.PassThrough = true }},
	} {
		j := jobOf(t, "[[connector]]\nid = \"mine\"\nlike = \""+tt.like+"\"\n"+tt.keys+"\n", house)
		want, _ := connector.Lookup(tt.like)
		source, title := want.Source, want.Title
		want.ID = "mine"
		tt.change(&want)
		if tt.keys != "" && want.Title == title {
			source = rule.Source{Status: rule.SetByUser}
		}
		want.Source = source
		got, ok := j.ConnectorType("mine")
		if diff := cmp.Diff(want, got); diff != "" || !ok || j.OwnConnectors[0].Like != tt.like {
			t.Errorf("%s: %s", tt.keys, diff)
		}
	}
}

func TestDropEnds(t *testing.T) {
	house, _ := houses(t)
	const (
		plate   = "kind = \"wall plate\"\nroom = \"bed\"\nwall = \"west\"\nat = \"6ft\"\n"
		ceiling = "kind = \"ceiling point\"\nat = [\"5ft\", \"5ft\"]\n"
		soffit  = "kind = \"soffit spot\"\nwall = \"south\"\nat = \"10ft\"\n"
	)
	for _, tt := range []struct {
		keys     string
		end      connector.Kind
		id       string
		exposure Exposure
		class    int
		watts    int64
	}{
		{plate, connector.Jack, "jack-6", NotExposed, NoClass, 0},
		{ceiling, connector.Plug, "plug-6", NotExposed, NoClass, 0},
		{soffit, connector.Plug, "plug-6", NotExposed, NoClass, 0},
		{soffit + `exposure = "none"`, connector.Plug, "plug-6", NotExposed, NoClass, 0},
		{soffit + `exposure = "aerial"`, connector.Plug, "plug-6", Aerial, NoClass, 0},
		{soffit + `exposure = "other building"`, connector.Plug, "plug-6", OtherBuilding, NoClass, 0},
		{plate + `end = "plug"`, connector.Plug, "plug-6", NotExposed, NoClass, 0},
		{ceiling + `end = "jack"`, connector.Jack, "jack-6", NotExposed, NoClass, 0},
		{plate + `plug = "pass-through-6"`, connector.Plug, "pass-through-6", NotExposed, NoClass, 0},
		{soffit + `jack = "jack-5e"`, connector.Jack, "jack-5e", NotExposed, NoClass, 0},
		{soffit + "end = \"plug\"\nplug = \"mine\"", connector.Plug, "mine", NotExposed, NoClass, 0},
		{plate + `cable = "cat6a"`, connector.Jack, "jack-6a", NotExposed, NoClass, 0},
		{soffit + `cable = "cat6a"`, connector.Plug, "plug-6a-wide", NotExposed, NoClass, 0},
		{soffit + `cable = "cat5e"`, connector.Plug, "plug-5e", NotExposed, NoClass, 0},
		{soffit + `cable = "coax6"`, connector.Plug, "coax-plug", NotExposed, NoClass, 0},
		{plate + `cable = "coax6"`, connector.Jack, "coax-jack", NotExposed, NoClass, 0},
		{plate + `cable = "speaker2"`, connector.Jack, "", NotExposed, NoClass, 0},
		{soffit + "class = 0", connector.Plug, "plug-6", NotExposed, 0, 0},
		{soffit + "class = 8\nwatts = 71.3", connector.Plug, "plug-6", NotExposed, 8, 71_300},
		{soffit + "watts = 12.95", connector.Plug, "plug-6", NotExposed, NoClass, 12_950},
	} {
		d := jobOf(t, "[[drop]]\ntag = \"A\"\n"+tt.keys+"\n[[connector]]\nid = \"mine\"\nlike = \"plug-6\"\n", house).Drops[0]
		if d.End != tt.end || d.Connector.ID != tt.id || d.Exposure != tt.exposure || d.Class != tt.class || d.Watts != tt.watts {
			t.Errorf("%s: got %v %q, %v, class %d, %d mW", tt.keys, d.End, d.Connector.ID, d.Exposure, d.Class, d.Watts)
		}
	}
}

func TestSpools(t *testing.T) {
	house, _ := houses(t)
	cat6, _ := cable.Lookup("cat6")
	for _, tt := range []struct {
		keys string
		want Spool
	}{
		{`left = "412ft"`, Spool{Left: 412 * foot, Down: true}},
		{`mark = "412ft"`, Spool{Left: 412 * foot, Marked: true, Mark: 412 * foot, Down: true}},
		{`mark = "125m"`, Spool{Left: 125 * measure.Metre, Marked: true, Mark: 125 * measure.Metre, Units: measure.Metric, Down: true}},
		{"mark = \"612ft\"\nleft = \"412ft\"", Spool{Left: 412 * foot, Marked: true, Mark: 612 * foot, Down: true}},
		{"mark = \"0ft\"\ncounts = \"up\"\nleft = \"1000ft\"", Spool{Left: 1000 * foot, Marked: true}},
		{"mark = \"588ft\"\ncounts = \"up\"\nleft = \"412ft\"", Spool{Left: 412 * foot, Marked: true, Mark: 588 * foot}},
	} {
		j := jobOf(t, "[[spool]]\nid = \"S\"\ncable = \"cat6\"\n"+tt.keys+"\n", house)
		tt.want.ID, tt.want.Cable = "S", cat6
		if diff := cmp.Diff([]Spool{tt.want}, j.Spools, cmpopts.IgnoreTypes(diag.Pos{})); diff != "" {
			t.Errorf("%s: %s", tt.keys, diff)
		}
	}
}

func TestCrewAndSwitch(t *testing.T) {
	house, _ := houses(t)
	j := jobOf(t, "[crew]\npeople = 2\nstart = \"23:59\"\nday = \"7.5h\"\n[switch]\nwatts = 62.5\nvolts = 53.5\n[estimate]\nallowance = 0\n", house)
	if j.Crew != (Crew{People: 2, Start: 1439, Day: 450, OneDay: 450}) || j.Switch.Watts != 62_500 || j.Switch.Volts != 53_500 || j.Switch.Pos.Line != 6 || j.Allowance != 0 {
		t.Errorf("got %+v, %+v, %d", j.Crew, j.Switch, j.Allowance)
	}
}

func TestHaveIsSorted(t *testing.T) {
	house, _ := houses(t)
	j := jobOf(t, "[have]\nplug-6 = 0\njack-6 = 12\n\"wall plate\" = 100000\n", house)
	want := []Stock{
		{"jack-6", diag.Pos{File: "job.toml", Line: 4, Col: 1}, 12},
		{"plug-6", diag.Pos{File: "job.toml", Line: 3, Col: 1}, 0},
		{"wall plate", diag.Pos{File: "job.toml", Line: 5, Col: 1}, 100_000},
	}
	if diff := cmp.Diff(want, j.Have); diff != "" {
		t.Error(diff)
	}
}

func TestLabelSchemes(t *testing.T) {
	house, _ := houses(t)
	for _, tt := range []struct {
		scheme string
		want   []LabelPart
	}{
		{"{port}", []LabelPart{{Field: "port"}}},
		{"{tag}", []LabelPart{{Field: "tag"}}}, // the one drop has one cable
		{"1{panel}-{port}", []LabelPart{{Text: "1"}, {Field: "panel"}, {Text: "-"}, {Field: "port"}}},
		{"{floor} {room} {tag}{n}/{job}!", []LabelPart{{Field: "floor"}, {Text: " "}, {Field: "room"}, {Text: " "}, {Field: "tag"}, {Field: "n"}, {Text: "/"}, {Field: "job"}, {Text: "!"}}},
	} {
		j := jobOf(t, "[labels]\nscheme = \""+tt.scheme+"\"\n[job]\nname = \"Network\"\nnumber = \"17\"\n", house)
		if diff := cmp.Diff(tt.want, j.Labels.Parts); diff != "" || j.Labels.Scheme != tt.scheme || j.Labels.Pos.Line != 3 {
			t.Errorf("%s: %+v %s", tt.scheme, j.Labels, diff)
		}
	}
}

func TestSite(t *testing.T) {
	imperial, _ := houses(t)
	for _, tt := range []struct {
		keys string
		site Site
		hot  int64
	}{
		{"latitude = 39.5\nlongitude = -98.25\nutc_offset = \"-06:00\"\n", Site{true, 39.5, -98.25, -360}, 60_000},
		{"latitude = -90\nlongitude = 180\nutc_offset = \"+14:00\"\n", Site{true, -90, 180, 840}, 60_000},
		{"latitude = 27.7\nlongitude = 85.3\nutc_offset = \"+05:45\"\nattic_hot = \"55C\"", Site{true, 27.7, 85.3, 345}, 55_000},
		// SAF02: 140 degF is 60 degC; the field record of 154 degF is 67.778.
		{"attic_hot = \"140F\"", Site{}, 60_000},
		{"attic_hot = \"154 °F\"", Site{}, 67_778},
	} {
		h := jobOf(t, "", strings.Replace(imperial, "[house]\n", "[house]\n"+tt.keys+"\n", 1)).House
		if h.Site != tt.site || h.AtticHot != tt.hot || h.AtticHotGiven != strings.Contains(tt.keys, "attic_hot") {
			t.Errorf("%s: got %+v, %d", tt.keys, h.Site, h.AtticHot)
		}
	}
}

// Quantities against conversions worked out apart: NIST Handbook 44, Appendix C
// has 1 lbf = 4.448 222 N and 1 lb = 453.592 37 g; -40 is the same in degrees of
// both scales.
func TestQuantities(t *testing.T) {
	for _, tt := range []struct {
		q    quantity
		text string
		want int64
	}{
		{temperatures, "-40F", -40_000},
		{temperatures, "-40 C", -40_000},
		{temperatures, "212F", 100_000},
		{temperatures, " 98.6°F ", 37_000},
		{temperatures, "+0.5C", 500},
		{forces, "1lbf", 4_448},
		{forces, "1000lbf", 4_448_222},
		{masses, "1000lb/1000ft", 1_488_164},
		{masses, "40g/m", 40_000},
		{resistances, "25.67ohm/1000ft", 84_219}, // the table prints 84.2 ohm/km beside it
	} {
		if got, ok := tt.q.parse(tt.text); !ok || got != tt.want {
			t.Errorf("%q is %d, %v; want %d", tt.text, got, ok, tt.want)
		}
	}
	for _, text := range []string{"", "C", "60", "60K", "60 degC", "6 0C", "1e2C", "NaNC", "infC", "60C or so", "--1C", "1.2.3C", strings.Repeat("9", 400) + "C", "60c", "0x10C"} {
		if got, ok := temperatures.parse(text); ok {
			t.Errorf("%q is %d", text, got)
		}
	}
	for _, q := range []quantity{temperatures, atticHeats, forces, masses, resistances} {
		if q.least() >= q.most() || q.most() == math.MaxInt64 {
			t.Errorf("%s goes from %d to %d", q.what, q.least(), q.most())
		}
	}
}

// One more of anything than is read.
func TestTooManySupplies(t *testing.T) {
	house, _ := houses(t)
	var parts strings.Builder
	parts.WriteString("[have]\n")
	for i := range mostParts + 1 {
		parts.WriteString("p" + string(rune('a'+i%26)) + strings.Repeat("x", i/26) + " = 1\n")
	}
	for keys, want := range map[string]string{
		strings.Repeat("[[cable]]\nid = \"c\"\nlike = \"cat6\"\n", mostOwn+1):                     "cable: found 101 of them; at most 100 are read",
		strings.Repeat("[[connector]]\nid = \"c\"\nlike = \"plug-6\"\n", mostOwn+1):               "connector: found 101 of them; at most 100 are read",
		strings.Repeat("[[spool]]\nid = \"c\"\ncable = \"cat6\"\nleft = \"9ft\"\n", mostSpools+1): "spool: found 201 of them; at most 200 are read",
		parts.String(): "have: found 501 parts; at most 500 are read",
	} {
		_, list := loadBoth(complete(t, "house = \"house.toml\"\n"+keys, "testdata/base_job.toml"), house)
		if got := print(t, list); strings.Count(got, "error") != 1 || !strings.Contains(got, want) {
			t.Errorf("got %.300s, want %s", got, want)
		}
	}
}
