package dxf_test

import (
	"math/rand/v2"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"topplate/render/font"
	"topplate/render/sheet"
)

// words are texts that the format would read in a way of its own.
func words() []string {
	all := []string{
		"plain", "100 %", "%%", "%%c", "%%d%%p%%u", "a%%%b", "%%%%%%%", "%%065", "^", "^I", "^ ^", "a^",
		`\`, `\U+0041`, `\\U+0041`, `\u+0041`, `\M+1E0A1`, `%\U+0025d`, `\P`, "{}", "é½″°±Ø", "部屋", "\U0001F600 \U0010FFFF",
		"one\ntwo\r\n  0\nSECTION", "\x00\x01\x7f", "bad \xff\xfe", "  spaces  ", "6\u00A01/2", "",
		strings.Repeat("long ", 60), strings.Repeat("é", 99), strings.Repeat("%", 90),
	}
	const signs = "%%%%^\\\\UuMm+0123456789ABCDcdpuok é½部\U0001F600\n{};,."
	runes := []rune(signs)
	r := rand.New(rand.NewPCG(1, 2))
	for range 300 {
		var b strings.Builder
		for range r.IntN(30) {
			b.WriteRune(runes[r.IntN(len(runes))])
		}
		all = append(all, b.String())
	}
	return all
}

// wordSheet writes each of the words.
func wordSheet() *sheet.Sheet {
	s := sheet.New("s", "Words", sheet.A4)
	g := s.Group("", "words", "")
	for i, w := range words() {
		g.Text(sheet.LetterNote, sheet.Pt(0, sheet.Paper(i)*mm), sheet.Start, w)
	}
	return s
}

// Each text comes back as it was, through ezdxf, which decodes \U+XXXX, and
// the control codes of the format.
func TestWordsComeBack(t *testing.T) {
	entities := readAll(t)["words"].Entities
	i := 0
	for _, w := range words() {
		want := visible(w)
		if want == "" {
			continue
		}
		if i == len(entities) {
			t.Fatalf("only %d texts", i)
		}
		got := decode(t, entities[i].Text)
		i++
		if cut, ok := strings.CutSuffix(got, "..."); ok && len(w) > 50 {
			if !strings.HasPrefix(want, cut) || len(cut) < 20 {
				t.Errorf("%q came back as %q", w, got)
			}
			continue
		}
		if got != want {
			t.Errorf("%q came back as %q", w, got)
		}
	}
	if i != len(entities) {
		t.Errorf("%d texts, want %d", len(entities), i)
	}
}

// visible is what is to be seen of words; beyond the first 65 536 characters
// the format has none.
func visible(words string) string {
	return strings.Map(func(r rune) rune {
		if r > 0xFFFF {
			return font.Substitute
		}
		return r
	}, font.Plain(words))
}

var control = regexp.MustCompile(`%%%|%%\d{3}|%%.|\^.`)

// decode reads the control codes as the manuals of the format give them: %%%
// is the percent sign, ^ and a space the caret. Every other code is a fault.
func decode(t *testing.T, s string) string {
	return control.ReplaceAllStringFunc(s, func(code string) string {
		switch code {
		case "%%%":
			return "%"
		case "^ ":
			return "^"
		}
		t.Errorf("the control code %s in %q", strconv.Quote(code), s)
		return code
	})
}
