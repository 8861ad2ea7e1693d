package tidy

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"topplate/plan/geom"
	"topplate/plan/measure"
	"topplate/plan/randomhouse"
	"topplate/plan/source"
)

// formatted formats a file that must be TOML, and holds what comes out against
// what the package promises.
func formatted(t testing.TB, src string, o Options) string {
	t.Helper()
	out, list := Format("f.toml", []byte(src), o)
	if out == nil {
		t.Fatalf("refused: %v\n%s", list.Sorted()[0].Msg, src)
	}
	again, _ := Format("f.toml", out, o)
	if diff := cmp.Diff(string(out), string(again)); diff != "" {
		t.Fatalf("formatting again changes (-first +second)\n%s\nof\n%s", diff, src)
	}
	if got, want := data(t, string(out)), data(t, src); !o.Lengths && got != want {
		t.Fatalf("the data changed: %s", cmp.Diff(want, got))
	}
	return string(out)
}

// data writes all that a file says, by asking for every key.
func data(t testing.TB, src string) string {
	t.Helper()
	root, list := source.Parse("f.toml", []byte(src))
	if root == nil {
		t.Fatalf("%v\n%s", list.Sorted()[0].Msg, src)
	}
	var b strings.Builder
	var walk func(x *source.Table, sorted bool)
	walk = func(x *source.Table, sorted bool) {
		keys := x.Keys()
		if sorted {
			slices.Sort(keys)
		}
		for _, k := range keys {
			fmt.Fprintf(&b, "%s:", x.Path(k))
			switch x.Kind(k) {
			case source.KindTable:
				in, _ := x.Table(k, true)
				walk(in, true)
			case source.KindArray:
				in, _ := x.Array(k, true)
				walk(in, false)
			case source.KindText:
				s, _ := x.Text(k, true)
				fmt.Fprintf(&b, "%q\n", s)
			case source.KindBoolean:
				v, _ := x.Bool(k, true)
				fmt.Fprintf(&b, "%v\n", v)
			default: // as it is written, up to what may follow
				pos := x.ValuePos(k)
				line, _ := source.Line([]byte(src), pos.Line)
				raw := line[pos.Col-1:]
				if i := strings.IndexAny(raw, ",]}#"); i >= 0 {
					raw = raw[:i]
				}
				fmt.Fprintln(&b, strings.TrimSpace(raw))
			}
		}
	}
	walk(root, true)
	return b.String()
}

func TestFormat(t *testing.T) {
	paths, err := filepath.Glob("testdata/*.txt")
	if err != nil || len(paths) < 5 {
		t.Fatalf("%d cases: %v", len(paths), err)
	}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		before, after, ok := strings.Cut(string(text), "=>\n")
		if !ok {
			t.Fatalf("%s has no result", path)
		}
		o := Options{Lengths: strings.Contains(path, "lengths")}
		if diff := cmp.Diff(after, formatted(t, before, o)); diff != "" {
			t.Errorf("%s (-want +got)\n%s", path, diff)
		}
		// Lines that end as on another system stay so.
		crlf := strings.ReplaceAll(before, "\n", "\r\n")
		if got := formatted(t, "\ufeff"+crlf, o); got != "\ufeff"+strings.ReplaceAll(after, "\n", "\r\n") {
			t.Errorf("%s: with other line ends: %q", path, got)
		}
	}
}

// The samples, the starter and the reference itself, whose examples are in the
// order that they are to show.
func referenceFiles(t testing.TB) map[string]string {
	t.Helper()
	files := map[string]string{}
	for _, pattern := range []string{"../../samples/*/*.toml", "../../cmd/topplate/starter/*.toml", "../testdata/good/*.toml", "../testdata/*.toml"} {
		paths, err := filepath.Glob(pattern)
		if err != nil || len(paths) == 0 {
			t.Fatalf("%s: %v", pattern, err)
		}
		for _, path := range paths {
			src, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			files[path] = string(src)
		}
	}
	src, err := os.ReadFile("../doc.go")
	if err != nil {
		t.Fatal(err)
	}
	name := ""
	for line := range strings.Lines(string(src)) {
		switch {
		case strings.HasPrefix(line, "// # The house file"):
			name = "reference house"
		case strings.HasPrefix(line, "// # A house of several levels"):
			name = "reference house of several levels"
		case strings.HasPrefix(line, "// # Checks"):
			name = "no reference"
		case strings.HasPrefix(line, "// # The job file"):
			name = "reference job"
		case strings.HasPrefix(line, "// # An included file"):
			name = "reference of an included file"
		case strings.HasPrefix(line, "//\t"), line == "//\n":
			files[name] += strings.TrimPrefix(strings.TrimPrefix(line, "//"), "\t")
		}
	}
	delete(files, "no reference")
	return files
}

// Tables of the reference are in its order, and this package knows all its
// keys: who adds a key to the comment of package plan adds it to order.go.
func TestOrderIsThatOfTheReference(t *testing.T) {
	for name, src := range referenceFiles(t) {
		if !strings.HasPrefix(name, "reference") {
			continue
		}
		doc, _ := scan(src)
		last := 0
		for _, s := range doc.sections {
			i := tableRank(firstPart(s.name))
			if i < 0 {
				t.Errorf("order.go does not know the table [%s]", s.name)
				continue
			}
			if i < last {
				t.Errorf("[%s] comes before [%s] in the reference", s.name, reference[last].name)
			}
			last = i
			place := 0
			for _, e := range s.items {
				keys := reference[i].keys
				k := slices.Index(keys, firstPart(e.key))
				if keys != nil && k < 0 {
					t.Errorf("order.go does not know the key %s of [%s]", e.key, s.name)
				}
				if keys != nil && k < place {
					t.Errorf("%s comes before %s in [%s] of the reference", keys[place], e.key, s.name)
				}
				place = max(place, k)
				// Lengths of the reference are known as such.
				if text := strings.Trim(e.value, `"`); strings.HasPrefix(e.value, `"`) {
					if _, err := measure.Parse(text); err == nil && reference[i].keys != nil && !slices.Contains(lengthKeys, e.key) && e.key != "per" {
						t.Errorf("lengths.go does not know the key %s of [%s]", e.key, s.name)
					}
				}
			}
		}
	}
}

func TestSamplesKeepTheirData(t *testing.T) {
	for name, src := range referenceFiles(t) {
		out := formatted(t, src, Options{})
		if count(src) != count(out) {
			t.Errorf("%s: %d marks of comments, then %d", name, count(src), count(out))
		}
		formatted(t, src, Options{Lengths: true})
	}
}

func count(s string) int { return strings.Count(s, "#") }

// disorder shuffles tables and the keys in them, changes spaces, and puts
// comments with numbers into the file; it returns the comments.
func disorder(rng *rand.Rand, src string) (string, []string) {
	var comments []string
	comment := func() string {
		c := fmt.Sprintf("# c%d %s", len(comments), []string{"", "x = 1", "[wall]", `"`, "'''", "---- Walls ----"}[rng.IntN(6)])
		if rng.IntN(5) == 0 {
			c = strings.Replace(c, "# c", "# ------ c", 1)
		}
		c = strings.TrimRight(c, " ")
		comments = append(comments, c)
		return c
	}
	var out strings.Builder
	noise := func(indent string) {
		for range rng.IntN(3) {
			switch rng.IntN(3) {
			case 0:
				out.WriteString("\n")
			default:
				out.WriteString(strings.Repeat(indent, rng.IntN(3)) + comment() + "\n")
			}
		}
	}
	line := func(text string) {
		text = strings.Replace(text, " = ", []string{"=", " =\t", "   = "}[rng.IntN(3)], 1)
		out.WriteString(strings.Repeat(" ", rng.IntN(3)) + text)
		if rng.IntN(3) == 0 {
			out.WriteString([]string{"", " ", "\t", "      "}[rng.IntN(4)] + comment())
			if rng.IntN(3) == 0 {
				out.WriteString("\n" + strings.Repeat(" ", 10+rng.IntN(20)) + comment())
			}
		}
		out.WriteString("\n")
	}
	noise(" ")
	for _, block := range strings.Split(strings.TrimSpace(src), "\n\n") {
		var header string
		var keys []string
		for l := range strings.SplitSeq(block, "\n") {
			switch {
			case strings.HasPrefix(l, "["):
				header = l
			case l != "" && !strings.HasPrefix(l, "#"):
				keys = append(keys, l)
			}
		}
		rng.Shuffle(len(keys), func(i, j int) { keys[i], keys[j] = keys[j], keys[i] })
		if header != "" {
			line(header)
		}
		for _, k := range keys {
			noise("\t")
			line(k)
		}
		noise(" ")
	}
	return out.String(), comments
}

// Random houses and jobs, with tables and keys in any order and comments
// anywhere, keep their data and every comment.
func TestDisorder(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	for seed := range uint64(60) {
		s := randomhouse.Generate(seed, randomhouse.Options{Shuffle: seed, Symmetry: geom.Symmetry(seed % 8)})
		for _, src := range []string{s.House, s.Job} {
			src, want := disorder(rng, src)
			out := formatted(t, src, Options{})
			for _, c := range want {
				if strings.Count(src, c+"\n") != strings.Count(out, c+"\n") {
					t.Fatalf("the comment %q is in the file %d times, then %d times\n%s\n=>\n%s", c, strings.Count(src, c+"\n"), strings.Count(out, c+"\n"), src, out)
				}
			}
			if count(src) != count(out) {
				t.Fatalf("%d comments, then %d", count(src), count(out))
			}
			ordered(t, out)
		}
	}
}

// ordered holds a tidy file against the order of the reference.
func ordered(t *testing.T, out string) {
	t.Helper()
	last := -1
	for line := range strings.Lines(out) {
		if !strings.HasPrefix(line, "[") {
			continue
		}
		name, _, _ := strings.Cut(strings.Trim(line, "["), "]")
		if i := tableRank(name); i < last {
			t.Fatalf("[%s] comes after [%s]\n%s", name, reference[last].name, out)
		} else {
			last = i
		}
	}
}

// Comments stay with what they are about: the line under a comment of a key or
// a table, or the line that it ends.
func TestCommentsTravel(t *testing.T) {
	rng := rand.New(rand.NewPCG(33, 34))
	for seed := range uint64(25) {
		s := randomhouse.Generate(seed, randomhouse.Options{Shuffle: seed + 1})
		var b strings.Builder
		want := map[string]string{} // what stands under or before a comment
		n := 0
		for line := range strings.Lines(s.House) {
			line = strings.TrimSuffix(line, "\n")
			if line == "" || strings.HasPrefix(line, "#") {
				b.WriteString(line + "\n")
				continue
			}
			n++
			mark := fmt.Sprintf("# m%d.", n)
			want[mark] = strings.Map(func(r rune) rune {
				if r == ' ' {
					return -1
				}
				return r
			}, line)
			if rng.IntN(2) == 0 {
				fmt.Fprintf(&b, "%s\n%s\n", mark, line)
			} else {
				fmt.Fprintf(&b, "%s %s\n", line, mark)
			}
		}
		lines := strings.Split(formatted(t, b.String(), Options{}), "\n")
		for i, line := range lines {
			at := strings.Index(line, "# m")
			if at < 0 {
				continue
			}
			code, mark := line[:at], line[at:]
			if at == 0 {
				code = lines[i+1]
				if k := strings.Index(code, "# m"); k >= 0 {
					code = code[:k]
				}
			}
			if code = strings.ReplaceAll(code, " ", ""); code != want[mark] {
				t.Fatalf("%s is about %q, then about %q", mark, want[mark], code)
			}
		}
	}
}

// What is given out is read again and compared: a result with other data, or
// without a comment, would not be given out.
func TestResultIsCompared(t *testing.T) {
	const src = "a = 1 # one\nb = \"6in\" # two\n"
	before, _ := source.Parse("f.toml", []byte(src))
	doc, _ := scan(src)
	for out, want := range map[string]bool{
		src:                                       true,
		"b = \"6in\" # one\na = 1 # two\n":        true,
		"a = 1 # one\nb = \"6in\"\n":              false,
		"a = 1 # one\nb = \"6in\" # one\n":        false,
		"a = 2 # one\nb = \"6in\" # two\n":        false,
		"a = 1 # one\nb = \"1/2ft\" # two\n":      false,
		"a = 1 # one\nb = \"6in\" # two\nc = 1\n": false,
		"a = 1 # one\nb = 6in # two\n":            false,
	} {
		if got := same("f.toml", before, doc.remarks(), out, Options{}); got != want {
			t.Errorf("%q: %v, want %v", out, got, want)
		}
	}
}

func TestRefuses(t *testing.T) {
	for _, tt := range []struct{ src, want string }{
		{"a = 1\nb = 5ft\n", "f.toml:2:6"},
		{"a = [1\n", "f.toml:"},
		{"[a]\nb = 1\nb = 2\n", "f.toml:3:1"},
		{"a = \"\x00\"\n", "f.toml:1:6"},
		{"[[a]\nb = 1\n", "f.toml:1:"},
	} {
		out, list := Format("f.toml", []byte(tt.src), Options{})
		if out != nil || !list.HasErrors() || !strings.HasPrefix(list.Sorted()[0].Pos.String(), tt.want) {
			t.Errorf("%q: %q, %v; want an error at %s", tt.src, out, list.Sorted(), tt.want)
		}
	}
}

// FuzzFormat: whatever is TOML is tidied or refused as a whole, without a
// change to its data; nothing panics.
func FuzzFormat(f *testing.F) {
	for _, src := range referenceFiles(f) {
		f.Add(src, false)
	}
	s := randomhouse.Generate(1, randomhouse.Options{Shuffle: 1})
	disordered, _ := disorder(rand.New(rand.NewPCG(1, 2)), s.House)
	f.Add(disordered, true)
	for _, src := range []string{
		"a = \"\"\"\nx\\\n  y\"\"\"\"\" # z\nb = '''\n# no'''\n", "a.b = 1 # x\na.\"c d\" = { e = [ ], f.g = {}}\n", "\ufeff[ a . b ]\r\nc=1\r\n#x",
		"a = 1979-05-27 07:32:00 # t\nb = [ 1e3,+inf,\n nan ]\n", "#\n#\n\n\n#", "at = \"12' 6\\\"\"\n[x]\nat = ['5m', \"0.5in\"]\n",
	} {
		f.Add(src, false)
		f.Add(src, true)
	}
	f.Fuzz(func(t *testing.T, src string, lengths bool) {
		o := Options{Lengths: lengths}
		out, list := Format("f.toml", []byte(src), o)
		if (out == nil) != list.HasErrors() {
			t.Fatalf("%v, %v", out, list.Sorted())
		}
		if out != nil {
			formatted(t, src, o)
		}
	})
}
