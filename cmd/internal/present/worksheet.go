package present

// Worksheet is the page of a sheet for the bench.
func Worksheet(b *Bench) *Page {
	p := &Page{Title: b.Title, Under: b.Under, Lead: b.Lead}
	p.section(headCautions, plainList(b.Cautions), Paragraph(b.Deference))
	p.section(headFirst, plainList(b.First))
	var weigh []Block
	for i := range b.Parts {
		weigh = append(weigh, weighTable(&b.Parts[i]), plainList(b.Parts[i].Notes))
	}
	p.section(headWeigh, weigh...)
	p.section(headBake, plainList(b.Oven))
	var do []Block
	for _, ph := range b.Phases {
		do = append(do, Ticks(ph))
	}
	p.section(headSteps, do...)
	p.section(headTime, timeTable(b.Time), Paragraph(b.TimeNote))
	p.section(headStops, plainList(b.Stops))
	p.section(headShow, plainList(b.Show))
	p.section(headBuy, buyTable(b.Buy))
	p.section(headNotPut, plainList(b.Aside))
	p.section(headHanging, plainList(b.Assumed))
	p.section(headSources, List(b.Sources), Paragraph(b.OwnTables))
	return p
}

func plainList(texts []string) List {
	var out List
	for _, t := range texts {
		out = append(out, Entry{Text: t})
	}
	return out
}

// box is where a thing done is ticked off.
const box = "[ ]"

func weighTable(p *BenchPart) Table {
	caption := p.Name
	if p.Is != "" {
		caption += ": " + p.Is
	}
	t := Table{Caption: caption, Columns: []Column{{Name: ""}, {Name: "weigh", Right: true}, {Name: "between", Right: true}, {Name: "of"}, {Name: "in the book"}}}
	for _, l := range p.Lines {
		t.Rows = append(t.Rows, []string{box, l.Amount, l.Between, l.Of, l.Book})
	}
	t.Rows = append(t.Rows, []string{"", p.Total, "", "all together", ""})
	return t
}

func timeTable(list []BenchTime) Table {
	t := Table{Columns: []Column{{Name: "at", Right: true}, {Name: "begin"}, {Name: "for"}}}
	for _, e := range list {
		t.Rows = append(t.Rows, []string{e.When, e.What, e.For})
	}
	return t
}

func buyTable(list []BenchBuy) Table {
	t := Table{Columns: []Column{{Name: ""}, {Name: "buy", Right: true}, {Name: "of"}, {Name: ""}}}
	for _, e := range list {
		tick := box
		if e.Amount == "" && e.Note != byProportion {
			tick = ""
		}
		t.Rows = append(t.Rows, []string{tick, e.Amount, e.Of, e.Note})
	}
	return t
}
