package exposure

import (
	_ "embed"
	"sync"

	"underpaint/engine/chance"
	"underpaint/engine/strict"
)

var (
	//go:embed data/climates.json
	climatesFile []byte
	//go:embed data/eras.json
	erasFile []byte
	//go:embed data/history.json
	historyFile []byte
	//go:embed data/kept.json
	keptFile []byte
	//go:embed data/places.json
	placesFile []byte
)

// chances is a list of values with chances that add to 1.
type chances []struct{ value, chance float64 }

// way is the effect of one way of keeping, during one use, on a year's weather.
type way struct {
	share  float64 // of a year's weather that counts
	splash bool    // road splash corrodes at the climate's splash rate; otherwise at its air rate
}

// keptRow is one way of keeping a car.
type keptRow struct {
	id        string
	ways      [3]way // by Use
	ifNotSure float64
}

// figures is everything in data/.
type figures struct {
	climates                   []Climate
	lnAir                      []float64 // logs of the climates' AirUM
	placeNotSure, shoreNotSure []Weighted
	kept                       []keptRow
	roadYears                  map[string]chances
	roadYearsTimes             chances
	thickness, paintLife, salt curve
	doubt                      chances
	lnLeastYears, youngest     float64
	againLife, lnAgainDepth    float64 // factors for paint over old rust: on its life, and (log) on the depth below it
	workAtMost, workShareOfAge float64 // when the restoration was, if its year is not known: years ago at most, share of the age
	decade, notSure            chances
	places                     []Place
}

// data reads the embedded files once. They are part of the program, so an error means a
// damaged build.
var data = sync.OnceValue(func() *figures {
	g := &figures{roadYears: map[string]chances{}}
	for _, part := range []struct {
		file []byte
		read func(strict.Field)
	}{{climatesFile, g.readClimates}, {keptFile, g.readKept}, {erasFile, g.readEras}, {historyFile, g.readHistory}, {placesFile, g.readPlaces}} {
		f, err := strict.Parse(part.file)
		if err == nil {
			part.read(f)
			err = f.Err()
		}
		if err != nil {
			panic("engine: internal error: exposure data: " + err.Error())
		}
	}
	return g
})

func (g *figures) readClimates(f strict.Field) {
	for _, c := range f.Get("climates").Items() {
		c.Keys("id", "name", "air_um", "splash_um", "paint_life_factor", "road_years", "source")
		one := Climate{ID: c.Get("id").Text(20), Name: words(c.Get("name")), Source: c.Get("source").Text(400),
			AirUM: c.Get("air_um").Number(0.1, 700), SplashUM: c.Get("splash_um").Number(0.1, 700),
			PaintLifeFactor: c.Get("paint_life_factor").Number(0.1, 10), RoadYears: c.Get("road_years").Number(1, 60)}
		g.climates = append(g.climates, one)
		g.lnAir = append(g.lnAir, chance.Log(one.AirUM))
	}
	for _, c := range f.Get("place_not_sure").Get("climates").Items() {
		g.placeNotSure = append(g.placeNotSure, Weighted{c.Get("id").Text(20), c.Get("chance").Number(0, 1)})
	}
	shore := f.Get("shore_not_sure")
	for _, id := range []string{"inland", "near", "shore"} {
		g.shoreNotSure = append(g.shoreNotSure, Weighted{id, shore.Get(id).Number(0, 1)})
	}
}

func (g *figures) readKept(f strict.Field) {
	for _, k := range f.Get("kept").Items() {
		k.Keys("id", "if_not_sure", "whole", "on_road", "off_road", "source")
		row := keptRow{id: k.Get("id").Text(40), ifNotSure: k.Get("if_not_sure").Number(0, 1)}
		for use, name := range []string{Whole: "whole", OnRoad: "on_road", OffRoad: "off_road"} {
			w := k.Get(name)
			w.Keys("share", "splash")
			row.ways[use] = way{w.Get("share").Number(0.01, 1), w.Get("splash").Bool()}
		}
		g.kept = append(g.kept, row)
	}
	for _, r := range f.Get("road_years_answers").Items() {
		g.roadYears[r.Get("id").Text(40)] = readChances(r.Get("years"))
	}
	g.roadYearsTimes = readChances(f.Get("road_years_not_sure").Get("times"))
}

func (g *figures) readEras(f strict.Field) {
	g.thickness = readCurve(f.Get("thickness").Get("times"))
	g.paintLife = readCurve(f.Get("paint_life").Get("times"))
	g.salt = readCurve(f.Get("road_salt").Get("share"))
}

func (g *figures) readHistory(f strict.Field) {
	g.doubt = readChances(f.Get("doubt").Get("rates_times"))
	g.lnLeastYears = chance.Log(f.Get("least_years").Get("value").Number(0.01, 5))
	r := f.Get("restoration")
	g.againLife = r.Get("painted_again_life_times").Number(0.1, 2)
	g.lnAgainDepth = chance.Log(r.Get("painted_again_depth_times").Number(0.1, 10))
	g.workAtMost = r.Get("years_ago_at_most").Number(0, 100)
	g.workShareOfAge = r.Get("share_of_age").Number(0, 1)
	g.decade = readChances(f.Get("made_in_decade").Get("years"))
	g.notSure = readChances(f.Get("made_not_sure").Get("years"))
	g.youngest = f.Get("youngest").Get("value").Number(0.1, 2)
}

func (g *figures) readPlaces(f strict.Field) {
	sources := f.Get("sources")
	for _, p := range f.Get("places").Items() {
		p.Keys("id", "country", "name", "climate", "coast", "source", "note")
		one := Place{ID: p.Get("id").Text(60), Country: p.Get("country").Text(60), Name: words(p.Get("name")),
			Climate: p.Get("climate").OneOf("dry", "mild", "damp", "salt", "sea"), Coast: p.Get("coast").Bool(),
			Source: sources.Get(p.Get("source").Text(40)).Text(600)}
		if p.Has("note") {
			one.Note = p.Get("note").Text(200)
		}
		g.places = append(g.places, one)
	}
}

func readChances(f strict.Field) (out chances) {
	for _, v := range f.Items() {
		v.Keys("value", "chance")
		out = append(out, struct{ value, chance float64 }{v.Get("value").Number(0, 1e4), v.Get("chance").Number(0, 1)})
	}
	return out
}

func words(f strict.Field) Words { return Words{US: f.Get("us").Text(80), UK: f.Get("uk").Text(80)} }
