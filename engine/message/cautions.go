package message

import (
	"underpaint/engine/session"
	"underpaint/engine/wording"
)

// customersCautions are those for the customer of a car with this work; nil stands for
// any car.
func customersCautions(t *wording.Text, work *session.Work) []CautionMessage {
	return cautionMessages(t, t.CustomersCautions(work), work)
}

func cautionMessages(t *wording.Text, list []wording.Caution, work *session.Work) (out []CautionMessage) {
	for k := range list {
		c := &list[k]
		out = append(out, CautionMessage{c.ID, c.Where, t.Caution(*c), wording.CustomerDoes(c, work)})
	}
	return out
}
