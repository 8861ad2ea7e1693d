package report

import (
	"bytes"
	"encoding/csv"
	"testing"
)

// Every table of every sample has rows as long as its head, reads back the same
// by a CSV reader, and has no cell that a spreadsheet would run.
func TestTablesReadBack(t *testing.T) {
	for _, path := range jobs {
		for _, table := range Tables(sample(t, path)) {
			var b bytes.Buffer
			if err := table.CSV(&b); err != nil {
				t.Fatal(err)
			}
			rows, err := csv.NewReader(&b).ReadAll() // which wants rows of one length
			if err != nil {
				t.Fatalf("%s, table %s: %v", path, table.ID, err)
			}
			if len(rows) != 1+len(table.Rows) {
				t.Errorf("%s, table %s: %d rows read back, want %d", path, table.ID, len(rows), 1+len(table.Rows))
			}
			for i, row := range rows[1:] {
				for j, cell := range row {
					if cell != table.Rows[i][j] && cell != "'"+table.Rows[i][j] {
						t.Errorf("%s, table %s: cell %q reads back as %q", path, table.ID, table.Rows[i][j], cell)
					}
				}
			}
		}
	}
}

func TestFormulasAreTexts(t *testing.T) {
	table := Table{ID: "x", Head: []string{"a"}, Rows: [][]string{{"=1+1"}, {"@x"}, {"-2"}, {"+3"}, {"a=b"}}}
	var b bytes.Buffer
	if err := table.CSV(&b); err != nil {
		t.Fatal(err)
	}
	if want := "a\r\n'=1+1\r\n'@x\r\n'-2\r\n'+3\r\na=b\r\n"; b.String() != want {
		t.Errorf("%q, want %q", b.String(), want)
	}
}
