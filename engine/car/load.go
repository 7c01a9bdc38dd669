package car

import (
	_ "embed"
	"strings"
	"sync"

	"underpaint/engine/strict"
)

// One variable per file, because embedding a folder would add a file system to the
// browser's download.

//go:embed data/two_door_unitary.json
var twoDoorUnitary []byte

//go:embed data/four_door_saloon.json
var fourDoorSaloon []byte

//go:embed data/convertible_unitary.json
var convertibleUnitary []byte

//go:embed data/open_two_seater.json
var openTwoSeater []byte

//go:embed data/pickup.json
var pickup []byte

//go:embed data/hardtop_on_frame.json
var hardtopOnFrame []byte

//go:embed data/common.json
var commonWords []byte

var bodyFiles = map[string][]byte{
	"two_door_unitary":    twoDoorUnitary,
	"four_door_saloon":    fourDoorSaloon,
	"convertible_unitary": convertibleUnitary,
	"open_two_seater":     openTwoSeater,
	"pickup":              pickup,
	"hardtop_on_frame":    hardtopOnFrame,
}

// BodyIDs are the six patterns, in the order in which they are offered.
var BodyIDs = []string{"two_door_unitary", "four_door_saloon", "convertible_unitary", "open_two_seater", "pickup", "hardtop_on_frame"}

// KnownBody reports whether id names a pattern.
func KnownBody(id string) bool {
	for _, b := range BodyIDs {
		if b == id {
			return true
		}
	}
	return false
}

// loaded caches the bodies read so far, by id and options.
var loaded struct {
	sync.Mutex
	bodies map[string]*Body
}

// Load returns one pattern with the given options (ids of Body.Options). The result is
// shared, so callers must not change it. The data is part of the program, so an error
// means an unknown id, an option that the body does not have, or a damaged build.
func Load(id string, options ...string) (*Body, error) {
	key := strings.Join(append([]string{id}, options...), " ")
	loaded.Lock()
	defer loaded.Unlock()
	if b := loaded.bodies[key]; b != nil {
		return b, nil
	}
	b, err := read(id, options)
	if err != nil {
		return nil, err
	}
	if loaded.bodies == nil {
		loaded.bodies = map[string]*Body{}
	}
	loaded.bodies[key] = b
	return b, nil
}

func read(id string, options []string) (*Body, error) {
	if !KnownBody(id) {
		return nil, &strict.Error{Path: "body", Found: id, Expected: "one of the six bodies"}
	}
	f, err := strict.Parse(bodyFiles[id])
	if err != nil {
		return nil, err
	}
	b := &Body{ID: id, partIndex: map[string]int{}, itemIndex: map[string]int{}}
	for _, o := range list(f, "options") {
		b.Options = append(b.Options, Option{ID: o.Get("id").Text(60), Name: words(o.Get("name"))})
	}
	if err := checkOptions(b, options); err != nil {
		return nil, err
	}
	readHead(f, b)
	readGroups(f, b)
	for _, p := range f.Get("parts").Items() {
		readPart(p, b, options)
	}
	linkPockets(b)
	return b, f.Err()
}

func checkOptions(b *Body, options []string) error {
	for _, want := range options {
		known := false
		for _, o := range b.Options {
			known = known || o.ID == want
		}
		if !known {
			return &strict.Error{Path: "options", Found: want, Expected: "an option of this body"}
		}
	}
	return nil
}

func list(f strict.Field, name string) []strict.Field {
	if !f.Has(name) {
		return nil
	}
	return f.Get(name).Items()
}

func words(f strict.Field) Words {
	f.Keys("us", "uk")
	return Words{US: f.Get("us").Text(200), UK: f.Get("uk").Text(200)}
}

func triple(f strict.Field) Hours {
	n := f.Numbers(3, 0, 1e6)
	if len(n) != 3 {
		return Hours{}
	}
	return Hours{n[0], n[1], n[2]}
}

func readHead(f strict.Field, b *Body) {
	f.Keys("format", "id", "name", "carries_the_load", "on_a_frame", "open_car", "sources", "stage_factor",
		"after_survey_factor", "getting_in", "options", "look_first", "zones", "pocket_groups", "parts")
	f.Get("format").OneOf("underpaint body 1")
	b.Name = words(f.Get("name"))
	b.CarriesTheLoad = words(f.Get("carries_the_load"))
	b.OnAFrame = f.Get("on_a_frame").Bool()
	b.OpenCar = f.Get("open_car").Bool()
	b.StageFactor = f.Get("stage_factor").Number(0.1, 5)
	b.AfterSurveyFactor = map[string]float64{}
	after := f.Get("after_survey_factor")
	for _, name := range after.Names() {
		b.AfterSurveyFactor[name] = after.Get(name).Number(0.1, 5)
	}
	for _, a := range f.Get("getting_in").Items() {
		a.Keys("id", "hours", "also", "price", "own_rust")
		g := GettingIn{ID: a.Get("id").Text(60), Hours: triple(a.Get("hours"))}
		if a.Has("price") {
			g.Price = triple(a.Get("price"))
		}
		if a.Has("also") {
			a.Get("also").Keys(TradeIDs[:]...)
			for t, id := range TradeIDs {
				if a.Get("also").Has(id) {
					g.Also[t] = triple(a.Get("also").Get(id))
				}
			}
		}
		if a.Has("own_rust") {
			rust := a.Get("own_rust")
			rust.Keys("chance", "metal")
			g.OwnRust = OwnRust{Chance: rust.Get("chance").Number(0, 1), Metal: triple(rust.Get("metal"))}
		}
		b.GettingIn = append(b.GettingIn, g)
	}
	for _, l := range f.Get("look_first").Items() {
		b.LookFirst = append(b.LookFirst, l.Text(60))
	}
}

func readGroups(f strict.Field, b *Body) {
	for _, z := range f.Get("zones").Items() {
		z.Keys("id", "name")
		b.Zones = append(b.Zones, Zone{ID: z.Get("id").Text(60), Name: words(z.Get("name"))})
	}
	for _, g := range f.Get("pocket_groups").Items() {
		g.Keys("id", "name")
		b.Groups = append(b.Groups, Group{ID: g.Get("id").Text(60), Name: words(g.Get("name"))})
	}
}

// linkPockets collects the pockets of each group, in the order of the groups.
func linkPockets(b *Body) {
	old := b.Pockets
	b.Pockets = nil
	moved := make([]int, len(old))
	for g := range b.Groups {
		for k := range old {
			if old[k].Group == g {
				moved[k] = len(b.Pockets)
				b.Groups[g].Pockets = append(b.Groups[g].Pockets, len(b.Pockets))
				b.Pockets = append(b.Pockets, Pocket{ID: old[k].ID, Group: g})
			}
		}
	}
	for i := range b.Items {
		b.Items[i].Pocket = moved[b.Items[i].Pocket]
		k := &b.Pockets[b.Items[i].Pocket]
		k.Items = append(k.Items, i)
	}
}
