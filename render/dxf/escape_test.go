package dxf

import (
	"regexp"
	"strconv"
	"strings"
	"testing"

	"topplate/render/font"
)

var coded = regexp.MustCompile(`\\U\+[0-9A-F]{4}|%%%|%%|\^.|\^$`)

// Whatever the words, what is written is short ASCII, and reading the codes
// gives the words again, or their beginning.
func FuzzEscape(f *testing.F) {
	for _, s := range []string{"12′-6 1/2″", "%%c%%%", "^^I", `\U+0041\M+1`, "部屋 \U0001F600", strings.Repeat("é%", 60)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		got := escape(s)
		if len(got) > maxText || strings.ContainsFunc(got, func(r rune) bool { return r < ' ' || r > '~' }) {
			t.Fatalf("%q is written as %q", s, got)
		}
		want := strings.Map(func(r rune) rune {
			if r > 0xFFFF {
				return font.Substitute
			}
			return r
		}, font.Plain(s))
		back := coded.ReplaceAllStringFunc(got, func(code string) string {
			switch {
			case code == "%%%":
				return "%"
			case code == "^ ":
				return "^"
			case code[0] == '\\':
				n, _ := strconv.ParseUint(code[3:], 16, 32)
				return string(rune(n))
			}
			t.Fatalf("%q is written as %q, with the code %q", s, got, code)
			return ""
		})
		cut, ok := strings.CutSuffix(back, more)
		if back != want && (!ok || !strings.HasPrefix(want, cut) || len(got) < maxText-20) {
			t.Fatalf("%q is written as %q, which reads %q", s, got, back)
		}
	})
}
