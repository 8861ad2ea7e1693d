package check

import (
	"topplate/plan"
	"topplate/plan/rule"
	"topplate/route"
	"topplate/route/supply"
)

// A Device is a drop whose device takes its power over the cable.
type Device struct {
	Drop   int // index in Job.Drops
	Cables int // each of which has a device on it
	// Supply is how one of them is supplied; nil where that can't be worked out:
	// without a route, or where the switch has another voltage than the class.
	Supply *supply.Supply
}

// Devices works out how the devices of a solved job are powered, in the order
// of their tags. A device that tells its watts only is taken to be of the
// lowest class that allows them.
func Devices(res *route.Result) []Device {
	c := &checker{res: res, job: res.Job, house: res.Job.House, book: res.Job.Book()}
	var out []Device
	for i := range res.Routes {
		d := &c.job.Drops[res.Routes[i].Drop]
		if _, ok := classOf(d); ok {
			out = append(out, c.device(&res.Routes[i], d))
		}
	}
	return out
}

// classOf is the class of a drop's device, given or from its watts. ok is
// false if it is not powered over the cable, or takes more than any class.
func classOf(d *plan.Drop) (class supply.Class, ok bool) {
	if d.Class != plan.NoClass {
		return supply.LookupClass(d.Class)
	}
	if d.Watts == 0 {
		return class, false
	}
	for _, class := range supply.Classes()[1:] {
		if watts(d) <= class.DeviceWatts {
			return class, true
		}
	}
	return class, false
}

func watts(d *plan.Drop) float64 { return float64(d.Watts) / 1000 }

// device works out the supply over the cable and its cords. What a cord has is
// not known: its conductors count as the thinnest of horizontal cable.
func (c *checker) device(r *route.Route, d *plan.Drop) Device {
	dev := Device{Drop: r.Drop, Cables: d.Count}
	class, _ := classOf(d)
	if r.Blocked != nil || c.wrongVolts(class) {
		return dev
	}
	cords := supply.Leg{Length: c.book.Length(rule.CordLength), Temperature: c.room(), Conductor: supply.Horizontal()}
	s, err := supply.Solve(supply.Port{
		Class: class.Number, Watts: watts(d), Volts: float64(c.job.Switch.Volts) / 1000,
		Legs: append(c.legs(r, d), cords),
	})
	if err == nil {
		dev.Supply = s
	}
	return dev
}

// wrongVolts reports whether the switch has a voltage that no port of the
// class has.
func (c *checker) wrongVolts(class supply.Class) bool {
	v := float64(c.job.Switch.Volts) / 1000
	return v != 0 && (v < class.LeastVolts || v > class.MostVolts)
}
