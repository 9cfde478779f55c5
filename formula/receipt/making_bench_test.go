package receipt

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// copied are the receipts in words of the test data.
func copied(t testing.TB) []string {
	t.Helper()
	names, err := filepath.Glob("../../testdata/receipts-in-words/*/*.txt")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	var out []string
	for _, n := range names {
		b, err := os.ReadFile(n)
		require.NoError(t, err)
		out = append(out, string(b))
	}
	return out
}

// A mebibyte of receipts, one after another. The goal is 300 ms.
func BenchmarkReceipt(b *testing.B) {
	const mebibyte = 1 << 20
	r, texts := reader(b), copied(b)
	b.SetBytes(mebibyte)
	for b.Loop() {
		for read, i := 0, 0; read < mebibyte; i = (i + 1) % len(texts) {
			if f, _ := r.Receipt(texts[i], About{}); f == nil {
				b.Fatal("not read:", texts[i])
			}
			read += len(texts[i])
		}
	}
}
