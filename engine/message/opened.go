package message

import (
	"slices"
	"strings"

	"underpaint/engine/car"
	"underpaint/engine/carfile"
	"underpaint/engine/evidence"
	"underpaint/engine/exposure"
	"underpaint/engine/strict"
	"underpaint/engine/work"
)

// opened tells the page about the shop, its rates, the bodies and the places.
func (s *Session) opened(id int64) []byte {
	r := s.Rates
	w := strict.NewWriter()
	w.Object(func() {
		head(w, id, "opened")
		w.Member("version", Version)
		w.Key("shop")
		w.Object(func() {
			w.Member("name", r.Shop.Name)
			w.Member("town", r.Shop.Town)
			w.Member("contact_text", r.Shop.Contact.Text)
			w.Member("contact_href", r.Shop.Contact.Href)
			w.Key("invented")
			w.Bool(r.Shop.Invented)
		})
		w.Key("rates")
		w.Object(func() { s.writeRates(w) })
		w.Member("words", r.Words)
		w.Member("units", r.Units)
		w.Member("currency", r.Currency.Code)
		w.Member("currency_symbol", r.Currency.Symbol)
		w.Key("labour")
		w.Array(func() { s.writeLabour(w) })
		w.Member("labour_note", s.labourNote())
		w.Key("made")
		w.Object(func() { writeYears(w) })
		w.Key("bodies")
		w.Array(func() { s.writeBodies(w) })
		w.Key("places")
		w.Array(func() { s.writePlaces(w) })
		w.Texts("terms", r.Terms)
		w.Texts("not_in_it", s.inWords(s.text.notInIt))
		s.writeCautions(w)
		w.Texts("warnings", warningTexts(r))
	})
	return w.Bytes()
}

func (s *Session) writeRates(w *strict.Writer) {
	r := s.Rates
	w.Member("line", "Rates of "+date(r.RatesOf)+", valid until "+date(r.ValidUntil))
	w.Member("check_code", r.CheckCode())
	w.Member("date", r.RatesOf)
	w.Member("valid_until", r.ValidUntil)
	w.Member("past_text", "These rates ran out on "+date(r.ValidUntil)+". Ask the shop for its present ones.")
}

func writeYears(w *strict.Writer) {
	w.Key("from")
	w.Whole(carfile.OldestYear)
	w.Key("to")
	w.Whole(carfile.NewestYear)
	w.Member("expected", "a year from 1920 to 1999")
}

func (s *Session) writeLabour(w *strict.Writer) {
	for t, one := range s.Rates.Labour.Trades {
		w.Object(func() {
			w.Member("name", s.common.Trades[t].In(s.Rates.Words))
			m, _ := s.Rates.Currency.Round(one.Rate.Published)
			w.Member("text", s.Rates.Currency.TextWhole(m)+" an hour")
		})
	}
}

func (s *Session) labourNote() string {
	names := map[string]string{"supplies": s.say("shop supplies", "consumables"), "booth": "the paint booth", "parts_chasing": "finding parts"}
	var in []string
	for _, id := range s.Rates.Labour.Includes {
		in = append(in, names[id])
	}
	if len(in) == 0 {
		return "The rate an hour includes nothing else."
	}
	return "The rate an hour includes " + strings.Join(in, ", ") + "."
}

func (s *Session) writeBodies(w *strict.Writer) {
	for _, id := range car.BodyIDs {
		b, err := car.Load(id)
		if err != nil {
			panic("engine: internal error: " + err.Error())
		}
		w.Object(func() {
			w.Member("id", id)
			w.Member("name", b.Name.In(s.Rates.Words))
			w.Member("carries", b.CarriesTheLoad.In(s.Rates.Words))
			w.Key("options")
			w.Array(func() {
				for _, o := range b.Options {
					w.Object(func() {
						w.Member("id", o.ID)
						w.Member("name", o.Name.In(s.Rates.Words))
					})
				}
			})
			w.Key("customer_places")
			w.Array(func() { s.writeCustomerPlaces(w, b) })
			if t, err := work.NewTable(b, s.common, s.Rates, "show", "whole_body"); err == nil {
				w.Key("stage")
				writeStage(w, s.stage(t))
			}
		})
	}
}

// customerPlaces are the eight places of the question "what can you see?", in
// the order in which one walks round a car, with the look that each is.
var customerPlaces = []struct {
	id    string
	name  car.Words
	look  string
	parts []string
}{
	{"behind_front_wheels", car.Words{US: "Front fenders behind the wheel", UK: "Front wings behind the wheel"}, "bubbles", []string{"fender_lower"}},
	{"rockers", car.Words{US: "Rockers", UK: "Sills"}, "bubbles", []string{"outer_sill"}},
	{"door_bottoms", car.Words{US: "Door bottoms", UK: "Door bottoms"}, "bubbles", []string{"door_lower", "rear_door_lower"}},
	{"rear_arches", car.Words{US: "Rear wheel openings", UK: "Rear wheel arches"}, "bubbles", []string{"wheel_arch_lip", "bed_side"}},
	{"behind_rear_wheels", car.Words{US: "Behind the rear wheels", UK: "Behind the rear wheels"}, "bubbles", []string{"quarter_lower_rear", "cab_corner"}},
	{"floors", car.Words{US: "Floor, with the carpet up", UK: "Floor, with the carpet up"}, "carpet", []string{"front_floor"}},
	{"trunk_floor", car.Words{US: "Trunk floor, with the mat up", UK: "Boot floor, with the mat up"}, "carpet", []string{"trunk_floor"}},
	{"glass", car.Words{US: "Round the front and rear glass", UK: "Round the front and rear glass"}, "open_hole", []string{"ws_channel", "rear_window"}},
}

func (s *Session) writeCustomerPlaces(w *strict.Writer, b *car.Body) {
	for _, p := range customerPlaces {
		looked := evidence.Items(b, p.look)
		var sides [3][]string
		for _, part := range p.parts {
			k, ok := b.PartNamed(part)
			if !ok {
				continue
			}
			for _, i := range b.Parts[k].Items {
				if slices.Contains(looked, i) {
					sides[b.Items[i].Side] = append(sides[b.Items[i].Side], b.Items[i].ID)
				}
			}
		}
		if len(sides[0])+len(sides[1])+len(sides[2]) == 0 {
			continue
		}
		w.Object(func() {
			w.Member("id", p.id)
			w.Member("name", p.name.In(s.Rates.Words))
			w.Member("look", p.look)
			w.Texts("left", sides[car.Left])
			w.Texts("right", sides[car.Right])
			w.Texts("whole", sides[car.NoSide])
		})
	}
}

// writePlaces lists the places by country, the shop's own country first.
func (s *Session) writePlaces(w *strict.Writer) {
	all := exposure.Places()
	var countries []string
	for _, p := range all {
		if !slices.Contains(countries, p.Country) {
			countries = append(countries, p.Country)
		}
	}
	own := countryName[s.Rates.Country]
	for _, first := range []bool{true, false} {
		for _, c := range countries {
			if (c == own) != first {
				continue
			}
			w.Object(func() {
				w.Member("country", c)
				w.Key("places")
				w.Array(func() { s.writeCountry(w, all, c) })
			})
		}
	}
}

func (s *Session) writeCountry(w *strict.Writer, all []exposure.Place, country string) {
	for _, p := range all {
		if p.Country == country {
			w.Object(func() {
				w.Member("id", p.ID)
				w.Member("name", car.Words(p.Name).In(s.Rates.Words))
				w.Key("coast")
				w.Bool(p.Coast)
			})
		}
	}
}

// countryName joins the code in a rates file to the name in the places table.
var countryName = map[string]string{"US": "United States", "CA": "Canada", "GB": "United Kingdom", "IE": "Ireland",
	"AU": "Australia", "NZ": "New Zealand"}

func (s *Session) inWords(list []car.Words) (out []string) {
	for _, w := range list {
		out = append(out, w.In(s.Rates.Words))
	}
	return out
}

func (s *Session) writeCautions(w *strict.Writer) {
	w.Key("cautions")
	w.Array(func() {
		for _, c := range s.text.cautions {
			w.Object(func() {
				w.Member("id", c.id)
				w.Member("where", c.where)
				w.Member("text", c.text.In(s.Rates.Words))
			})
		}
	})
}

var months = [...]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}

// date writes a checked YYYY-MM-DD as 3 June 2026.
func date(iso string) string {
	month := int(iso[5]-'0')*10 + int(iso[6]-'0')
	day := iso[8:]
	if day[0] == '0' {
		day = day[1:]
	}
	return day + " " + months[month-1] + " " + iso[:4]
}
