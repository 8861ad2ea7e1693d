package record

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

func TestMain(m *testing.M) {
	if path := os.Getenv("TOPPLATE_RECORD_APPEND"); path != "" {
		appendForever(path)
	}
	os.Exit(m.Run())
}

// appendForever adds notes until it is killed, and says so after each.
func appendForever(path string) {
	who := os.Getenv("TOPPLATE_RECORD_WHO")
	for n := 0; ; n++ {
		note := fmt.Sprintf("%s %d %s", who, n, strings.Repeat("x", n*37%400))
		added, err := Add(path, func([]Entry) ([]Entry, error) {
			return []Entry{{When: day, Kind: NoteKind, Note: note}, {When: day, Kind: NoteKind, Note: note + "y"}}, nil
		})
		if err != nil {
			fmt.Println("error", err)
			os.Exit(1)
		}
		fmt.Printf("%d %s\n", added[0].Number, note)
	}
}

// killed starts a process that adds to path, kills it after so long, and puts
// what it acknowledged into acks.
func killed(t *testing.T, path string, run int, after time.Duration, acks map[int]string) {
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), "TOPPLATE_RECORD_APPEND="+path, fmt.Sprintf("TOPPLATE_RECORD_WHO=r%d", run))
	out, err := cmd.StdoutPipe()
	if err == nil {
		err = cmd.Start()
	}
	if err != nil {
		t.Error(err)
		return
	}
	var kill *time.Timer
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if kill == nil { // from the first entry on, so that there is something to lose
			kill = time.AfterFunc(after, func() { cmd.Process.Kill() })
		}
		number, note, _ := strings.Cut(lines.Text(), " ")
		n, err := strconv.Atoi(number)
		if err != nil {
			t.Error(lines.Text())
		}
		acks[n] = note
	}
	cmd.Wait()
}

// TestKilled kills 200 processes at random moments while two at a time add to
// one record: nothing that was acknowledged is lost, and the record always
// reads, without damage.
func TestKilled(t *testing.T) {
	dice := rand.New(rand.NewPCG(1, 2))
	path := filepath.Join(t.TempDir(), "job.record")
	acks := map[int]string{}
	for round := range 100 {
		var got [2]map[int]string
		var done [2]chan bool
		for i := range 2 {
			got[i], done[i] = map[int]string{}, make(chan bool)
			after := time.Duration(dice.IntN(4000)) * time.Microsecond
			go func() {
				killed(t, path, 2*round+i, after, got[i])
				close(done[i])
			}()
		}
		for i := range 2 {
			<-done[i]
			for n, note := range got[i] {
				if other, twice := acks[n]; twice {
					t.Fatalf("entry %d was acknowledged twice: %q and %q", n, other, note)
				}
				acks[n] = note
			}
		}
		if round%20 == 19 {
			checkAcks(t, path, acks)
			// The file starts anew now and then, so that reading it stays quick.
			acks = map[int]string{}
			path = filepath.Join(t.TempDir(), "job.record")
		}
	}
}

func checkAcks(t *testing.T, path string, acks map[int]string) {
	t.Helper()
	all, list, err := ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range list.Sorted() {
		if strings.Contains(d.Msg, "damage") {
			t.Errorf("%v: %s", d.Pos, d.Msg)
		}
	}
	notes := map[int]string{}
	for i := range all {
		notes[all[i].Number] = all[i].Note
	}
	for n, note := range acks {
		if notes[n] != note || notes[n+1] != note+"y" {
			t.Errorf("entry %d was acknowledged as %.40q and is %.40q", n, note, notes[n])
		}
	}
	if len(acks) < 40 {
		t.Errorf("only %d entries were acknowledged: the test tests nothing", len(acks))
	}
}

// three is a record of three entries.
func three(t *testing.T, path string) []byte {
	t.Helper()
	for i := range 3 {
		add(t, path, Entry{When: day, Kind: CableKind, ID: fmt.Sprintf("D1.%d", i+1), Note: "a note", Cable: Cable{Length: 61 * foot}})
	}
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

func add(t *testing.T, path string, e ...Entry) []Entry {
	t.Helper()
	added, err := Add(path, func([]Entry) ([]Entry, error) { return e, nil })
	if err != nil {
		t.Fatal(err)
	}
	return added
}

// TestTornAnywhere ends the file after every byte of its last entry: the
// entries before are read, what is torn is told, stays in the file, and the
// next entry is whole.
func TestTornAnywhere(t *testing.T) {
	dir := t.TempDir()
	src := three(t, filepath.Join(dir, "whole.record"))
	last := bytes.LastIndexByte(src[:len(src)-1], '\n') + 1
	for n := last; n <= len(src); n++ {
		for _, tail := range []string{"", "\x00\x00\x00"} { // some disks leave zeros
			path := filepath.Join(dir, fmt.Sprintf("torn%d-%d.record", n, len(tail)))
			torn := append(bytes.Clone(src[:n]), tail...)
			if err := os.WriteFile(path, torn, 0o644); err != nil {
				t.Fatal(err)
			}
			all, list, err := ReadFile(path)
			whole := n >= len(src)-1 && tail == "" || n == len(src)
			want := map[bool]int{true: 3, false: 2}[whole]
			told := len(list.Sorted()) == 1
			if err != nil || len(all) != want || told == (n == last && tail == "" || whole && tail == "") {
				t.Fatalf("%d of %d bytes%q: %d entries, %v %v", n, len(src), tail, len(all), list.Sorted(), err)
			}
			added := add(t, path, Entry{When: day, Kind: NoteKind, Note: "next"})
			now, _ := os.ReadFile(path)
			all, list, _ = ReadFile(path)
			if !bytes.HasPrefix(now, torn) || added[0].Number != want+1 || len(all) != want+1 || all[want].Note != "next" {
				t.Fatalf("%d bytes: then %d entries\n%s", n, len(all), now)
			}
			for _, d := range list.Sorted() {
				if strings.Contains(d.Msg, "damage") {
					t.Errorf("%d bytes: %s", n, d.Msg)
				}
			}
		}
	}
}

// TestDamage changes every byte of the entry in the middle: it is told that it
// is gone, and both others are read. An end of line in it makes two.
func TestDamage(t *testing.T) {
	src := three(t, filepath.Join(t.TempDir(), "job.record"))
	first := bytes.IndexByte(src, '\n') + 1
	second := first + bytes.IndexByte(src[first:], '\n')
	for n := first; n < second; n++ {
		changed := bytes.Clone(src)
		changed[n] ^= 1
		all, list := Read("r", changed)
		if len(all) != 2 || all[0].Number != 1 || all[1].Number != 3 || len(list.Sorted()) < 2 || !strings.Contains(fmt.Sprint(list.Sorted()[0].Msg, list.Sorted()[1].Msg), "damage: entry 2 is") {
			t.Fatalf("byte %d: %d entries, %v", n, len(all), list.Sorted())
		}
	}
	twice := append(bytes.Clone(src), src[first:]...)
	if all, list := Read("r", twice); len(all) != 3 || len(list.Sorted()) != 2 {
		t.Errorf("a copied line: %d entries, %v", len(all), list.Sorted())
	}
}

// TestAddTouchesNothing: not the file if nothing is to be added or choosing
// fails, and never what is in it.
func TestAddTouchesNothing(t *testing.T) {
	path := filepath.Join(t.TempDir(), "job.record")
	wrong := errors.New("wrong")
	if _, err := Add(path, func([]Entry) ([]Entry, error) { return nil, wrong }); !errors.Is(err, wrong) {
		t.Error(err)
	}
	if _, err := Add(path, func([]Entry) ([]Entry, error) { return nil, nil }); err != nil {
		t.Error(err)
	}
	if _, err := Add(path, func([]Entry) ([]Entry, error) {
		return []Entry{{Kind: NoteKind, When: day, Note: "two\nlines"}}, nil
	}); err == nil {
		t.Error("a note of two lines was written")
	}
	if _, err := os.Stat(path); err == nil {
		t.Error("the file was made")
	}
	full := filepath.Join(t.TempDir(), "full.record")
	if err := os.WriteFile(full, bytes.Repeat([]byte("\n"), mostFile-20), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := Add(full, func([]Entry) ([]Entry, error) { return []Entry{{When: day, Kind: NoteKind, Note: "n"}}, nil }); err == nil {
		t.Error("a record was made too large to be read")
	}
	if info, err := os.Stat(full); err != nil || info.Size() != mostFile-20 {
		t.Error("it was added to")
	}
	before := three(t, path)
	add(t, path, Entry{When: day, Kind: NoteKind, Note: "n"})
	after, _ := os.ReadFile(path)
	if !bytes.HasPrefix(after, before) {
		t.Error("what was there was changed")
	}
	if os.Chmod(path, 0o400); os.Getuid() != 0 {
		if _, err := Add(path, func([]Entry) ([]Entry, error) { return []Entry{{Kind: NoteKind, When: day, Note: "n"}}, nil }); err == nil {
			t.Error("added to what can't be written")
		}
	}
}
