package check

import (
	"fmt"

	"topplate/plan"
	"topplate/plan/rule"
	"topplate/route/supply"
)

// power holds every powered device against its class, its cable and the
// switch.
func (c *checker) power() {
	devices := Devices(c.res)
	for i := range c.res.Routes {
		d := &c.job.Drops[c.res.Routes[i].Drop]
		if class, ok := classOf(d); ok {
			c.class(d, class)
		} else if d.Watts > 0 {
			c.add(rule.ClassWatts, at(d, "the device takes %s; the highest class allows %.4g W", wattsText(d), mostOfAnyClass()))
		}
	}
	for i := range devices {
		if devices[i].Supply != nil {
			c.supplied(&c.job.Drops[devices[i].Drop], devices[i].Supply)
		}
	}
	c.budget(devices)
}

func wattsText(d *plan.Drop) string { return fmt.Sprintf("%.4g W", watts(d)) }

func mostOfAnyClass() float64 {
	all := supply.Classes()
	return all[len(all)-1].DeviceWatts
}

// class holds a device and the switch against the class.
func (c *checker) class(d *plan.Drop, class supply.Class) {
	if watts(d) > class.DeviceWatts {
		c.add(rule.ClassWatts, at(d, "the device takes %s; class %d allows %.4g W", wattsText(d), class.Number, class.DeviceWatts))
	}
	if c.wrongVolts(class) {
		c.add(rule.SwitchVolts, at(d, "the switch puts %.4g V on the cable; class %d has %.4g to %.4g V",
			float64(c.job.Switch.Volts)/1000, class.Number, class.LeastVolts, class.MostVolts))
	}
}

// supplied reports what is wrong with how a device is supplied.
func (c *checker) supplied(d *plan.Drop, s *supply.Supply) {
	reach := ""
	if s.Longest > 0 && s.Longest < s.Length {
		reach = fmt.Sprintf("; %s of cable and cords would do", c.text(s.Longest))
	}
	for _, p := range s.Problems {
		switch p {
		case supply.NoCurrent:
			c.add(rule.DeviceVolts, at(d, "over %s of cable and cords, %.4g ohm warm, the device does not get its %.4g W at any voltage%s",
				c.text(s.Length), s.Ohms, s.Watts, reach))
		case supply.LowVolts:
			c.add(rule.DeviceVolts, at(d, "%.2f V reach the device, which takes %.4g W over %s of cable and cords; class %d needs %.4g V%s",
				s.DeviceVolts, s.Watts, c.text(s.Length), s.Class.Number, s.Class.DeviceVolts, reach))
		case supply.OverSwitch:
			c.add(rule.PortWatts, at(d, "the port gives %.2f W, of which the cable takes %.2f W; class %d has %.4g W%s",
				s.Drawn, s.Lost, s.Class.Number, s.Class.SwitchWatts, reach))
		case supply.OverLoop:
			c.add(rule.LoopOhms, at(d, "the loop has %.2f ohm over %s of cable and cords, warm; class %d is made for %.4g ohm%s",
				s.PairsetOhms, c.text(s.Length), s.Class.Number, s.Class.LoopOhms, reach))
		}
	}
}

// budget holds what all ports take against what the switch has.
func (c *checker) budget(devices []Device) {
	var ports []*supply.Supply
	for i := range devices {
		for range devices[i].Cables {
			if devices[i].Supply != nil {
				ports = append(ports, devices[i].Supply)
			}
		}
	}
	budget, err := supply.Sum(float64(c.job.Switch.Watts)/1000, ports)
	if err != nil || len(ports) == 0 {
		return
	}
	name, pos := c.job.Closet.Name, c.job.Switch.Pos
	switch {
	case c.job.Switch.Watts == 0:
		f := of(c.job.Closet.Pos, name, "%d ports give %.1f W, or %.1f W where the switch keeps what each class may take; the job does not tell what it has",
			len(ports), budget.Drawn, budget.Reserved)
		f.Change = "watts under [switch]"
		c.addNote(rule.SwitchBudget, f)
	case budget.SpareDrawn < 0:
		c.add(rule.SwitchBudget, of(pos, name, "%d ports give %.1f W; the switch has %.4g W", len(ports), budget.Drawn, budget.Watts))
	case budget.SpareReserved < 0:
		c.addNote(rule.SwitchBudget, of(pos, name, "%d ports give %.1f W of the switch's %.4g W; if it keeps what each class may take, %.1f W, some stay off",
			len(ports), budget.Drawn, budget.Watts, budget.Reserved))
	}
}
