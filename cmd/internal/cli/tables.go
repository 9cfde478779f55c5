package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"assize/cmd/internal/present"
	"assize/reference"
)

const tablesLong = `Tables shows the reference tables: without a name the list of them, with a name
its rows and where each is from. Further words pick the rows in which all of them
stand.

  $ assize tables
  $ assize tables measures gill england
  $ assize tables ratios --format csv

Tables of your own are YAML files of the same names in a folder given with
--tables; their rows replace ours of the same id and are otherwise added.`

func newTables(r *run) *cobra.Command {
	format := choice{known: formats, value: formatText}
	cmd := &cobra.Command{
		Use:   "tables [NAME [WORD...]]",
		Short: "show the reference tables with their sources",
		Long:  tablesLong,
		RunE: r.start(func(_ *cobra.Command, args []string) error {
			return r.showTables(args, format.value)
		}),
	}
	cmd.Flags().Var(&format, "format", "how the table is written")
	return cmd
}

func (r *run) showTables(args []string, format string) error {
	t, err := r.loadTables()
	if err != nil {
		return err
	}
	if len(args) == 0 {
		return r.tableList(t, format)
	}
	rows, ok := present.RowsOf(t, args[0], args[1:])
	if !ok {
		return usageError{fmt.Sprintf("no table is called %q", args[0]), suggest(args[0], reference.TableNames(), "`assize tables` lists them")}
	}
	if rows.Len() == 0 {
		fmt.Fprintf(r.Err, "assize: no row of %s has %q\n", args[0], strings.Join(args[1:], " "))
	}
	switch format {
	case formatJSON:
		return r.written(rows.JSON(r.Out))
	case formatCSV:
		return r.written(rows.CSV(r.Out))
	}
	return r.page(rows.Page(), format)
}

func (r *run) tableList(t *reference.Tables, format string) error {
	switch format {
	case formatJSON:
		return r.written(present.TableListJSON(r.Out, t))
	case formatCSV:
		return r.written(present.TableListCSV(r.Out, t))
	}
	return r.page(present.TableList(t), format)
}

// page writes one page in text, Markdown or HTML.
func (r *run) page(p *present.Page, format string) error {
	switch format {
	case formatMarkdown:
		return r.written(p.Markdown(r.Out))
	case formatHTML:
		return r.written(present.HTML(r.Out, []*present.Page{p}))
	}
	return r.written(p.Text(r.Out, r.layout()))
}
