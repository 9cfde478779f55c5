package explain

import "assize/reference"

// Doneness is what the heat at the centre says of a bake.
type Doneness struct {
	C       float64
	Row     *reference.Doneness
	Verdict string // under | within | over
}

// doneness holds the heat that was measured against what the thing wants; nil
// when none was, or nothing is known of it.
func (b *Bake) doneness(of Seen) *Doneness {
	if b.Record == nil || !b.Record.Centre.IsPositive() || of.Texture.Kind != "filling" {
		return nil
	}
	row := b.Report.Parts[of.Part].Done.Set
	if row == nil {
		return nil
	}
	d := &Doneness{C: b.Record.Centre.InexactFloat64(), Row: row, Verdict: "within"}
	switch {
	case b.Record.Centre.LessThan(row.C.Low):
		d.Verdict = "under"
	case b.Record.Centre.GreaterThan(row.C.High):
		d.Verdict = "over"
	}
	return d
}
