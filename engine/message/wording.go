package message

import (
	_ "embed"

	"underpaint/engine/car"
	"underpaint/engine/strict"
)

//go:embed data/words.json
var wordsFile []byte

// caution is one caution with the place where it belongs.
type caution struct {
	id, where string
	text      car.Words
}

// wording holds the lists of plain sentences.
type wording struct {
	notInIt, limits []car.Words
	cautions        []caution
}

func loadWording() (*wording, error) {
	f, err := strict.Parse(wordsFile)
	if err != nil {
		return nil, err
	}
	t := &wording{notInIt: wordList(f.Get("not_in_it")), limits: wordList(f.Get("known_limits"))}
	for _, c := range f.Get("cautions").Items() {
		c.Keys("id", "where", "text", "source")
		t.cautions = append(t.cautions, caution{c.Get("id").Text(40), c.Get("where").Text(40), readWords(c.Get("text"))})
	}
	return t, f.Err()
}

func wordList(f strict.Field) (out []car.Words) {
	for _, w := range f.Items() {
		out = append(out, readWords(w))
	}
	return out
}

func readWords(f strict.Field) car.Words {
	f.Keys("us", "uk")
	return car.Words{US: f.Get("us").Text(400), UK: f.Get("uk").Text(400)}
}
