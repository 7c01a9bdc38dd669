package pricing

import (
	_ "embed"
	"sync"

	"underpaint/engine/car"
	"underpaint/engine/chance"
	"underpaint/engine/strict"
)

//go:embed data/work.json
var figuresFile []byte

// wayChances is the probability of each way by kind of part and condition.
type wayChances [4][car.Conditions][car.Ways]float64

// partKinds index wayChances. They are the names by which a part chooses its table.
var partKinds = []string{"outer", "hidden", "structural", "structural_near_mounting"}

type opening struct {
	id            string
	parts         []string
	atLeast       car.Way
	sameSide      bool
	unless        string
	unlessAtLeast car.Way
	raise         []raising
	why           car.Words
}

type raising struct {
	part, end string
	to        car.Way
}

type fromAbove struct {
	id, part, end, floor, elseFloor string
	atLeast, atMost                 car.Way
	metal                           car.Hours
	why                             car.Words
}

// trigger is the condition of a line for getting in: any of the parts is worked on in
// this way or more (exactly this way, if exact).
type trigger struct {
	parts []string
	way   car.Way
	exact bool
}

type gettingIn struct {
	id            string
	name          car.Words
	trade         car.Trade
	per           string
	when          []trigger // one, or one for the front and one for the rear
	unless        string
	unlessAtLeast car.Way
	unlessExact   bool // exactly that way
	notIfDone     []string
	covers        []string
	parts         []string
	chance        map[string]float64
}

type step struct {
	id           string
	name         car.Words
	trade        car.Trade
	hours        car.Hours
	charged      string
	outsideOnly  float64 // share that remains when underside and inside stay painted; 1 = all
	perLeadJoint bool
	onAFrame     *step
}

type afterWork struct {
	id     string
	name   car.Words
	trade  car.Trade
	scopes []string
	hours  [3]car.Hours // by standard
}

type figures struct {
	standard              [3][car.Trades]float64
	sdMetal, sdOther, rho float64
	seam                  float64
	wholePanel            float64 // pieces may cost this many times the price of a full panel
	done                  [3]wayChances
	openings              []opening
	above                 []fromAbove
	gettingIn             []gettingIn
	takeOut, failedLead   car.Hours
	finding               [3]car.Hours // patch over rust, filler over a hole, filler over a dent
	found                 []Finding
	reach                 reach
	steps                 []step
	after                 []afterWork
}

// loadFigures reads the embedded figures once. Nothing changes them afterwards.
var loadFigures = sync.OnceValues(readFigures)

func readFigures() (*figures, error) {
	f, err := strict.Parse(figuresFile)
	if err != nil {
		return nil, err
	}
	g := &figures{}
	factors := f.Get("standards").Get("factors")
	done := f.Get("what_is_done").Get("standards")
	for s, id := range car.Standards {
		for t, trade := range car.TradeIDs {
			g.standard[s][t] = factors.Get(id).Get(trade).Number(0.1, 5)
		}
		for k, kind := range partKinds {
			for c, condition := range car.ConditionIDs {
				copy(g.done[s][k][c][:], done.Get(id).Get(kind).Get(condition).Numbers(int(car.Ways), 0, 1))
			}
		}
	}
	whole := f.Get("whole_car")
	g.sdMetal, g.sdOther = whole.Get("metal").Number(0, 1), whole.Get("other_trades").Number(0, 1)
	g.rho = whole.Get("correlation").Number(0, 1)
	g.seam = f.Get("seam_credit").Get("share").Number(0, 1)
	g.wholePanel = f.Get("whole_panel").Get("times").Number(1, 2)
	g.readOpenings(f)
	for _, one := range f.Get("getting_in").Items() {
		g.gettingIn = append(g.gettingIn, readGettingIn(one))
	}
	g.takeOut = triple(f.Get("lead_joint").Get("take_out"))
	g.readFindings(f.Get("findings"))
	strip := f.Get("strip_and_survey")
	g.readReach(strip)
	for _, s := range strip.Get("steps").Items() {
		g.steps = append(g.steps, g.readStep(s))
	}
	for _, w := range f.Get("after_survey").Get("work").Items() {
		one := afterWork{id: w.Get("id").Text(60), name: words(w.Get("name")), trade: tradeOf(w.Get("trade")), scopes: texts(w.Get("scopes"))}
		for s, id := range car.Standards {
			one.hours[s] = triple(w.Get(id))
		}
		g.after = append(g.after, one)
	}
	return g, f.Err()
}

func (g *figures) readStep(f strict.Field) step {
	s := step{id: f.Get("id").Text(60), name: words(f.Get("name")), trade: tradeOf(f.Get("trade")), hours: triple(f.Get("hours")), charged: f.Get("charged").Text(20), outsideOnly: 1}
	if f.Has("outside_only") {
		s.outsideOnly = f.Get("outside_only").Number(0, 1)
	}
	s.perLeadJoint = f.Has("per_lead_joint")
	if f.Has("on_a_frame") {
		o := f.Get("on_a_frame")
		lift := s
		lift.id, lift.name, lift.hours = o.Get("id").Text(60), words(o.Get("name")), triple(o.Get("hours"))
		s.onAFrame = &lift
	}
	return s
}

// threePoint makes the distribution of a checked triple; it is nil if the triple or
// times is zero.
func threePoint(h car.Hours, times float64) (*chance.ThreePoint, error) {
	if h == (car.Hours{}) || times == 0 {
		return nil, nil
	}
	t, err := chance.NewThreePoint(h[0]*times, h[1]*times, h[2]*times)
	if err != nil {
		return nil, err
	}
	return &t, nil
}
