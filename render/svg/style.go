package svg

import (
	"encoding/base64"
	"slices"
	"strconv"
	"strings"

	"topplate/render/font"
	"topplate/render/sheet"
)

// notice goes with an embedded font, whose licence asks for it.
const notice = "Fonts: Go, © 2016 Bigelow & Holmes Inc., under the licence of the Go project"

// An embedded font has a family name of its own. The names after it serve
// programs that ignore embedded fonts: first the same font as installed.
const (
	planFamily     = "PlanSans, Go, 'DejaVu Sans', sans-serif"
	planMonoFamily = "PlanMono, 'Go Mono', 'DejaVu Sans Mono', monospace"
)

// haloWidth is the width of the white outline of a text with a halo; half of
// it lies outside the letters.
const haloWidth = 1200 * sheet.Micrometre

func penClass(p sheet.Pen) string { return "p-" + p.Style().Name }

func letteringClass(l sheet.Lettering) string { return "t-" + l.Style().Name }

// styleRules returns the style sheet: the fonts and the pens and letterings
// that are used.
func styleRules(s *sheet.Sheet, o Options) []string {
	var rules []string
	if !o.NoFonts {
		rules = append(rules, fontRules(s)...)
	}
	rules = append(rules, "text{font-kerning:none;font-variant-ligatures:none}")
	for _, p := range withMask(s.Pens()) {
		rules = append(rules, penRule(p))
	}
	for _, l := range s.Letterings() {
		rules = append(rules, letteringRule(l))
	}
	return append(rules, ".open{fill:none}",
		".halo{stroke:"+sheet.White.Hex()+";stroke-width:"+num(haloWidth)+";stroke-linejoin:round;paint-order:stroke}")
}

// withMask adds the pen of the paper itself.
func withMask(pens []sheet.Pen) []sheet.Pen {
	if slices.Contains(pens, sheet.PenMask) {
		return pens
	}
	return append([]sheet.Pen{sheet.PenMask}, pens...)
}

func penRule(p sheet.Pen) string {
	s := p.Style()
	rule := "." + penClass(p) + "{fill:" + s.Fill.Hex() + ";fill-rule:evenodd;stroke:" + s.Stroke.Hex()
	if s.Stroke != sheet.NoColour {
		rule += ";stroke-width:" + num(s.Width) + ";stroke-miterlimit:2"
	}
	if dashes := s.Dashes(); len(dashes) > 0 {
		texts := make([]string, len(dashes))
		for i, d := range dashes {
			texts[i] = num(d)
		}
		rule += ";stroke-dasharray:" + strings.Join(texts, " ")
	}
	return rule + "}"
}

func letteringRule(l sheet.Lettering) string {
	s := l.Style()
	return "." + letteringClass(l) + "{font-family:" + family(s.Face) +
		";font-size:" + num(font.Size(l)) + "px;font-weight:" + strconv.Itoa(weight(s.Face)) +
		";fill:" + s.Colour.Hex() + "}"
}

func family(f sheet.Face) string {
	if f == sheet.Mono {
		return planMonoFamily
	}
	return planFamily
}

func weight(f sheet.Face) int {
	if f == sheet.Bold {
		return 700
	}
	return 400
}

// fontRules embeds, for each face, the glyphs that the sheet uses.
func fontRules(s *sheet.Sheet) []string {
	var used [3]strings.Builder
	for item := range s.All() {
		if t, ok := item.(sheet.Text); ok {
			used[t.Lettering.Style().Face].WriteString(t.Words)
		}
	}
	var rules []string
	for _, f := range sheet.Faces() {
		if data := font.Subset(f, used[f].String()); data != nil {
			name, _, _ := strings.Cut(family(f), ",")
			rules = append(rules, "@font-face{font-family:"+name+";font-weight:"+strconv.Itoa(weight(f))+
				";src:url(data:font/ttf;base64,"+base64.StdEncoding.EncodeToString(data)+")}")
		}
	}
	return rules
}
