package receipt

// parts reads parts of eggs and fruits named before their number: "the yolks of
// eight eggs", "the grated rind and the juice of two lemons", "grated rind 1
// lemon", "half the rind of a lemon".
func (w *weave) parts(i int) (mention, bool) {
	ts := w.ts[i:]
	shift, share := 0, phrase(nil)
	if f := fraction(ts); f.used > 0 && f.err == nil && ts.key(f.used) == "the" {
		shift, share = f.used, ts[:f.used]
	}
	n, ok := w.r.partsWords(ts[shift:])
	if !ok {
		return mention{}, false
	}
	n += shift
	c := number(ts[n:])
	end := i + n + c.used
	_, to := w.nameAt(end, false)
	if to == 0 {
		to = end
		// "the rind of one and the juice of two lemons", "the yolks of six"
		for j := end; j < min(len(w.ts), end+3); j++ {
			if m, ok := w.r.partsWords(w.ts[j:]); ok {
				d := number(w.ts[j+m:])
				if _, e := w.nameAt(j+m+d.used, false); e > 0 {
					to = e
				}
				break
			}
		}
	}
	to = w.moreParts(i, to)
	written, note := "", ""
	if to == end && c.fraction && c.used == 2 && w.key(end-2) == "a" && eggSides.of(w.ts, end-4) != "" { // "two eggs, and the yolk of a third"
		written, note = w.say(i, end-2)+" one egg", "of one egg more"
	}
	if to == end && w.key(to) == "of" && w.pointsBack(to+1) && share == nil { // "the whites of but two of them"
		if m, ok := w.reads(i, to, to, "", ""); ok {
			m.to = to + 2
			return m, true
		}
	}
	if share != nil {
		if !c.article && !(c.used > 0 && c.span.IsExact() && c.span.Likely.Equal(one)) {
			return mention{}, false
		}
		rest := w.say(i+shift, i+n)
		written = rest + " " + share.String() + " a " + w.say(end, to)
		note = "a part of one is taken as one in part"
	}
	if m, ok := w.reads(i, w.tail(to, true), to, written, note); ok || !w.participleAt(to-1) || written != "" {
		return m, ok
	}
	return w.reads(i, to-1, to-1, "", "") // "the rinds of two Seville oranges boiled"
}

// sideOfThose reads "the whites of the six eggs": when the eggs are listed whole nothing
// is put in that was not there before.
func (w *weave) sideOfThose(i int) (mention, bool) {
	j := i
	if w.key(j) == "the" {
		j++
	}
	if eggSides.of(w.ts, j) == "" || w.key(j+1) != "of" || w.key(j+2) != "the" {
		return mention{}, false
	}
	j += 3
	c := number(w.ts[min(j, len(w.ts)):])
	if c.used == 0 || c.fraction || c.err != nil {
		return mention{}, false
	}
	eggs, to := w.nameAt(j+c.used, false)
	if to == 0 || eggs.Ingredient == nil || eggs.Ingredient.ID != egg {
		return mention{}, false
	}
	if on := w.amountOf(eggs); on != nil {
		return mention{from: i, to: to, how: again}, true
	}
	return w.reads(i, to, to, w.say(i, j-1)+" "+w.say(j, to), "of the eggs that were parted")
}

// crumb reads "the crumb of a roll", "the crumb of a penny loaf, grated" and "a penny
// loaf", of which no weight is known.
func (w *weave) crumb(i int) (mention, bool) {
	j := i
	for w.key(j) == "the" || w.ts.is(j, grated) {
		j++
	}
	k, crumb := j, w.ts.is(j, crumbWords) && w.key(j+1) == "of"
	if crumb {
		k = j + 2
	} else if j > i || overlaps(w.keys[max(0, i-2):i], makingWords) {
		return mention{}, false
	}
	n := number(w.ts[min(k, len(w.ts)):])
	if n.used == 0 {
		return mention{}, false
	}
	to := k + n.used
	for to < min(len(w.ts), k+5) && w.ts[to].kind == word && !w.ts.is(to, rollOrLoaf) && !glue.has(w.keys[to]) {
		to++
	}
	if !w.ts.is(to, rollOrLoaf) || !crumb && !w.ts.is(to, loaf) || w.key(to+1) == "sugar" || w.key(to+1) == "flour" {
		return mention{}, false
	}
	end := to + 1
	if w.key(end) == "of" && w.key(end+1) == "bread" {
		end += 2
	}
	if m, ok := w.reads(i, w.tail(end, false), end, "", ""); ok {
		return m, true
	}
	const note = "a loaf went by its price and the price of corn: it has no fixed weight"
	m, ok := w.reads(i, end, end, "bread crumb, quantity not given", note)
	m.how = bare
	return m, ok
}

var (
	crumbWords = words("crumb crumbs")
	grated     = words("grated stale fine")
	rollOrLoaf = words("roll rolls loaf loaves manchet manchets brick bricks")
)

// moreParts takes in further parts of the same things: "and the juice of 3", "and
// half the whites".
func (w *weave) moreParts(from, to int) int {
	for {
		j := to
		for j < len(w.ts) && (w.keys[j] == "and" || w.keys[j] == "with" || w.ts[j].kind == mark && w.ts[j].key == ",") {
			j++
		}
		if j == to {
			return to
		}
		n, ok := w.r.partsWords(w.ts[j:])
		if !ok {
			return to
		}
		c := number(w.ts[j+n:])
		end := j + n + c.used
		if _, e := w.nameAt(end, false); e > 0 {
			return to // it names its own
		}
		if _, tr := w.quiet.read(w.ts[from:end]); len(tr) > 0 {
			return to
		}
		to = end
	}
}

// partsWords reads the words for parts up to the number of the things they are
// of, and tells how many tokens those are.
func (r *Reader) partsWords(ts phrase) (int, bool) {
	i := 0
	if ts.key(0) == "and" {
		return 0, false
	}
	for i < min(len(ts), 6) {
		k := ts.key(i)
		if ts.is(i, sideOrPart) && k != "peeled" && k != "skinned" {
			break
		}
		if ts[i].kind != word || k != "the" && (!ts.participle(i) || ts.is(i, imperatives)) && !ts.is(i, partAdjectives) || i == 0 && ts.is(0, adverbs) && ts.key(1) == "the" {
			return 0, false
		}
		i++
	}
	if i == min(len(ts), 6) {
		return 0, false
	}
	n, _, ok := partsAt(ts, sideOrPart)
	return n, ok
}

var partAdjectives = words("very thin yellow outer outward outside outermost well finely clear fresh whole and stiff")
