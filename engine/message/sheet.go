package message

import (
	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// sheet is the reply that holds everything the page "This car" needs and that
// recording does not change.
func (s *Session) sheet(id int64, c *carfile.Car) ([]byte, error) {
	b, t, err := s.oneBody(c)
	if err != nil {
		return nil, err
	}
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "sheet")
		w.Member("body", b.ID)
		w.Member("body_name", b.Name.In(s.Rates.Words))
		w.Member("drawing", b.ID)
		s.writeScale(w)
		w.Key("zones")
		w.Array(func() {
			for z := range b.Zones {
				w.Object(func() { s.writeSheetZone(w, b, z) })
			}
		})
		w.Key("items")
		w.Object(func() {
			for i := range b.Items {
				w.Key(b.Items[i].ID)
				w.Object(func() { s.writeSheetItem(w, b, i) })
			}
		})
		s.writeBoxes(w, b)
		s.writeWalk(w, b)
		w.Objects("stages", len(carfile.StageIDs), func(i int) {
			w.Member("id", carfile.StageIDs[i])
			w.Member("name", s.stageName(carfile.StageIDs[i]))
		})
		s.writeStripTrades(w, t)
		s.writeCautions(w)
	})
	return w.Bytes(), nil
}

// oneBody loads the only body of the car, with a table for it.
func (s *Session) oneBody(c *carfile.Car) (*car.Body, *work.Table, error) {
	b, err := c.OneBody()
	if err != nil {
		return nil, nil, err
	}
	t, err := work.NewTable(b, s.common, s.Rates, c.OneStandard(), c.Scope)
	return b, t, err
}
