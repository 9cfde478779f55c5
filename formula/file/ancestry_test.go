package file_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"assize/formula"
	"assize/formula/file"
)

// A changed formula keeps where it comes from, through writing and reading.
func TestAncestry(t *testing.T) {
	const text = `title: Lemon pudding, changed
year: 1838
place: england
ancestry:
  of: Lemon pudding
  page: Millrace House manuscript, leaf 12
  doubt:
    - "4 oz butter or 8 oz butter: blotted numeral"
  trial: the first, too close
  change:
    - "egg: 7 instead of 8"
parts:
  - name: filling
    kind: filling
    lines:
      - 7 eggs
`
	f, faults := file.Read("pudding.yaml", []byte(text), tables(t))
	require.NoError(t, faults.Err())
	require.Equal(t, &formula.Ancestry{
		Of: "Lemon pudding", Page: "Millrace House manuscript, leaf 12", Doubt: []string{"4 oz butter or 8 oz butter: blotted numeral"},
		Trial: "the first, too close", Change: []string{"egg: 7 instead of 8"},
	}, f.Ancestry)
	out, err := file.Write(f)
	require.NoError(t, err)
	again, faults := file.Read("pudding.yaml", out, tables(t))
	require.NoError(t, faults.Err())
	require.Equal(t, f.Ancestry, again.Ancestry)
}
