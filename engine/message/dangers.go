package message

import "underpaint/engine/wording"

func askDangers(o *openShop, q carRequest) (Reply, error) {
	b, work, err := o.Work(q.car)
	if err != nil {
		return nil, err
	}
	return &DangersReply{Strip: dangerLines(o.text, o.text.StripDangers(&work)), ToDo: dangerLines(o.text, o.text.ToDoDangers(b, &work)),
		Closing: o.text.LocalCaution()}, nil
}

func dangerLines(t *wording.Text, list []wording.Danger) (out []DangerLine) {
	for _, d := range list {
		out = append(out, DangerLine{d.On, d.Line, cautionMessages(t, d.Cautions, nil)})
	}
	return out
}
