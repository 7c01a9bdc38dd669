package exposure

import (
	_ "embed"
	"sync"

	"underpaint/engine/strict"
)

//go:embed data/climates.json
var climatesFile []byte

//go:embed data/places.json
var placesFile []byte

// chances is a list of values with chances that add to 1.
type chances []struct{ value, chance float64 }

type keptWay struct {
	share  float64 // of a year's weather that counts
	splash bool    // road splash rusts as the climate says; else like its air
}

type keptAnswer struct {
	id, onTheRoad, putAway string
	roadYearsTimes         float64
	ifNotSure              float64
}

// figures is everything in data/.
type figures struct {
	climates        []Climate
	kept            map[string]keptWay
	leastYears      float64
	doubt           chances
	keptAnswers     []keptAnswer
	roadYears       map[string]chances
	roadYearsTimes  chances
	placeNotSure    []Weighted
	shoreNotSure    []Weighted // ids inland, near, shore
	decade, notSure chances
	youngest        float64
	places          []Place
}

// data reads the embedded files once. They are part of the program: an error is
// a damaged build.
var data = sync.OnceValue(func() *figures {
	g := &figures{kept: map[string]keptWay{}, roadYears: map[string]chances{}}
	f, err := strict.Parse(climatesFile)
	if err == nil {
		g.readClimates(f)
		g.readAnswers(f)
		err = f.Err()
	}
	if err == nil {
		err = g.readPlaces()
	}
	if err != nil {
		panic("engine: internal error: exposure data: " + err.Error())
	}
	return g
})

func (g *figures) readClimates(f strict.Field) {
	for _, c := range f.Get("climates").Items() {
		c.Keys("id", "name", "air_um", "splash_um", "paint_life_factor", "road_years", "source")
		g.climates = append(g.climates, Climate{ID: c.Get("id").Text(20), Name: words(c.Get("name")), Source: c.Get("source").Text(400),
			AirUM: c.Get("air_um").Number(0.1, 700), SplashUM: c.Get("splash_um").Number(0.1, 700),
			PaintLifeFactor: c.Get("paint_life_factor").Number(0.1, 10), RoadYears: c.Get("road_years").Number(1, 60)})
	}
	for _, k := range f.Get("kept").Items() {
		k.Keys("id", "share", "splash", "source")
		g.kept[k.Get("id").Text(40)] = keptWay{k.Get("share").Number(0.01, 1), k.Get("splash").Bool()}
	}
	g.leastYears = f.Get("least_years").Number(0.01, 5)
	g.doubt = readChances(f.Get("doubt").Get("rates_times"))
}

func (g *figures) readAnswers(f strict.Field) {
	for _, k := range f.Get("kept_answers").Items() {
		g.keptAnswers = append(g.keptAnswers, keptAnswer{k.Get("id").Text(40), k.Get("on_the_road").Text(40),
			k.Get("put_away").Text(40), k.Get("road_years_times").Number(0.1, 2), k.Get("if_not_sure").Number(0, 1)})
	}
	for _, r := range f.Get("road_years_answers").Items() {
		g.roadYears[r.Get("id").Text(40)] = readChances(r.Get("years"))
	}
	g.roadYearsTimes = readChances(f.Get("road_years_not_sure").Get("times"))
	for _, c := range f.Get("place_not_sure").Get("climates").Items() {
		g.placeNotSure = append(g.placeNotSure, Weighted{c.Get("id").Text(20), c.Get("chance").Number(0, 1)})
	}
	shore := f.Get("shore_not_sure")
	for _, id := range []string{"inland", "near", "shore"} {
		g.shoreNotSure = append(g.shoreNotSure, Weighted{id, shore.Get(id).Number(0, 1)})
	}
	g.decade = readChances(f.Get("made_in_decade").Get("years"))
	g.notSure = readChances(f.Get("made_not_sure").Get("years"))
	g.youngest = f.Get("youngest_years").Number(0.1, 2)
}

func readChances(f strict.Field) (out chances) {
	for _, v := range f.Items() {
		v.Keys("value", "chance")
		out = append(out, struct{ value, chance float64 }{v.Get("value").Number(0, 1e4), v.Get("chance").Number(0, 1)})
	}
	return out
}

func (g *figures) readPlaces() error {
	f, err := strict.Parse(placesFile)
	if err != nil {
		return err
	}
	sources := f.Get("sources")
	for _, p := range f.Get("places").Items() {
		p.Keys("id", "country", "name", "climate", "coast", "source", "note")
		one := Place{ID: p.Get("id").Text(60), Country: p.Get("country").Text(60), Name: words(p.Get("name")),
			Climate: p.Get("climate").OneOf("dry", "mild", "damp", "salt", "sea"), Coast: p.Get("coast").Bool(),
			Source: sources.Get(p.Get("source").Text(40)).Text(400)}
		if p.Has("note") {
			one.Note = p.Get("note").Text(200)
		}
		g.places = append(g.places, one)
	}
	return f.Err()
}

func words(f strict.Field) Words { return Words{US: f.Get("us").Text(80), UK: f.Get("uk").Text(80)} }
