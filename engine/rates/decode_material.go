package rates

import (
	"slices"

	"underpaint/engine/car"
	"underpaint/engine/money"
	"underpaint/engine/strict"
)

func readMaterials(f strict.Field, c money.Currency) (materials []Material) {
	seen := map[string]bool{}
	for _, item := range f.Items() {
		m := readMaterial(item, c)
		unique(item, m.ID, seen)
		materials = append(materials, m)
		if f.Err() != nil {
			return nil
		}
	}
	return materials
}

// unique refuses an id that the same list has used before.
func unique(f strict.Field, id string, seen map[string]bool) {
	if seen[id] {
		f.Get("id").Complain("a different id; this one is used above")
	}
	seen[id] = true
}

func readMaterial(f strict.Field, c money.Currency) Material {
	f.Keys(materialKeys...)
	m := Material{
		ID:     word(f.Get("id")),
		Name:   words(f.Get("name")),
		Unit:   f.Get("unit").OneOf(Litre, Kilogram, Each),
		Price:  price(f.Get("price"), c),
		Area:   f.Get("area").OneOf(Reached, Outer, InsideAndUnder, Frame, Replaced, NoArea),
		Stage:  f.Get("stage").OneOf(StripStage, AfterStage),
		Note:   note(f),
		Source: text(f.Get("source"), longestSource),
	}
	readHow(f.Get("how"), &m)
	if m.How == ByFilm && m.Unit != Litre {
		f.Get("unit").Complain("\"litre\", because the quantity is a film of paint")
	}
	if (m.How == PerCar) != (m.Area == NoArea) {
		f.Get("area").Complain("\"none\" with a quantity for the car, an area with any other")
	}
	if m.Area == Replaced && m.Stage == StripStage {
		f.Get("area").Complain("another area: no part is replaced before the survey")
	}
	readFactor(f, &m)
	m.Scopes = [3]bool{true, true, true}
	if f.Has("scopes") {
		copy(m.Scopes[:], chosen(f.Get("scopes"), ScopeIDs, 1))
	}
	return m
}

// readHow reads the rule for the quantity, of which there must be exactly one.
func readHow(f strict.Field, m *Material) {
	f.Keys(howKeys...)
	names := f.Names()
	if len(names) != 1 {
		f.Complain("exactly one of \"film\", \"per_m2\", \"per_car\"")
		return
	}
	m.How = names[0]
	one := f.Get(m.How)
	if m.How != ByFilm {
		one.Keys(quantityKeys...)
		m.Quantity = one.Get("quantity").Number(0.0001, 10_000)
		return
	}
	one.Keys(filmKeys...)
	m.Film = Film{
		Coats:        one.Get("coats").Number(0.5, 12),
		DryUM:        one.Get("dry_um").Number(1, 2000),
		VolumeSolids: one.Get("volume_solids").Number(0.02, 1),
		Transfer:     one.Get("transfer").Number(0.1, 1),
		BaseShare:    1,
	}
	if one.Has("base_share") {
		m.Film.BaseShare = one.Get("base_share").Number(0.05, 1)
	}
}

// readFactor reads which standards use the material, and how much of it.
func readFactor(f strict.Field, m *Material) {
	standards := f.Get("standards")
	marks := chosen(standards, car.Standards, 1)
	for i, marked := range marks {
		if marked {
			m.Factor[i] = 1
		}
		if !marked && m.Stage == StripStage {
			standards.Complain("all three standards: the strip stage is the same for each")
		}
	}
	if !f.Has("factor") {
		return
	}
	factor := f.Get("factor")
	factor.Keys(car.Standards...)
	if m.Stage == StripStage {
		factor.Complain("no factor for the strip stage, which is the same for each standard")
	}
	for _, name := range factor.Names() {
		i := slices.Index(car.Standards, name)
		x := factor.Get(name).Number(0.05, 20)
		if i >= 0 && !marks[i] {
			factor.Get(name).Complain("only standards that use the material")
		} else if i >= 0 {
			m.Factor[i] = x
		}
	}
}
