package tree

// A router builds plans: it lays the path of one member after the other, each
// cheapest with what the others have opened, and improves them by taking one
// up and laying it anew until that helps no more.
type router struct {
	*space
	base   []int64
	member []int32
	cables []int64
	uses   []int32 // paths on a state
	open   []int64 // fixed price still to be paid: none on a state in use
	crowd  *crowd
	hint   []int64 // added to the fixed price of a state not in use, only to lay paths; may be nil
	paths  [][]int32
	work   *meter

	dist  []int64
	pred  []int32
	seen  []int32
	queue queue
}

func newRouter(s *space, base []int64, member []int32, w *meter) *router {
	r := &router{space: s, base: base, member: member, work: w, crowd: newCrowd(s), uses: make([]int32, len(base)), open: append([]int64(nil), s.fixed...), paths: make([][]int32, len(member))}
	for _, t := range member {
		r.cables = append(r.cables, s.terms[t].Cables)
	}
	r.dist, r.pred = make([]int64, len(base)), make([]int32, len(base))
	for g := range r.dist {
		r.dist[g] = far
	}
	return r
}

// best lays and improves paths in so many orders, with and without a hint,
// and keeps the plan if it costs less than the one that was there. It tries no
// more once it has used its share of the work. It returns the cost of the plan
// kept.
func (r *router) best(orders int, hint []int64, least int64) int64 {
	kept := append([][]int32(nil), r.paths...)
	enough := r.work.left - r.work.left/buildShare
	for o := range 2 * orders {
		if r.work.left <= enough && o > 0 {
			break
		}
		if o%2 == 0 {
			r.layInOrder(o/2, hint)
		} else {
			r.layInOrder(o/2, nil)
		}
		if c := r.cost(); c < least {
			least, kept = c, append(kept[:0], r.paths...)
		}
	}
	r.set(kept)
	return least
}

const buildShare = 30

// layInOrder lays all paths anew in the o-th order, on a hint that may be nil,
// and improves them.
func (r *router) layInOrder(o int, hint []int64) {
	r.clear()
	r.hint = hint
	for _, i := range r.order(o) {
		r.lay(i)
	}
	r.hint = nil
	r.improve()
}

// set takes a plan over.
func (r *router) set(paths [][]int32) {
	r.clear()
	for i, p := range paths {
		r.put(i, p)
	}
}

// order is the o-th order of laying: nearest first, farthest first, then
// mixtures of both that are always the same.
func (r *router) order(o int) []int {
	order := make([]int, len(r.member))
	for i := range order {
		order[i] = i
	}
	near := func(i int) int64 {
		least := int64(far)
		for _, g := range r.start[r.member[i]] {
			least = min(least, r.base[g])
		}
		return least
	}
	sortBy(order, near)
	if o == 0 {
		return order
	}
	for i := range len(order) / 2 {
		order[i], order[len(order)-1-i] = order[len(order)-1-i], order[i]
	}
	mix := uint64(o)
	for i := len(order) - 1; i > 0 && o > 1; i-- {
		mix = mix*6364136223846793005 + 1442695040888963407
		j := int(mix >> 33 % uint64(i+1))
		order[i], order[j] = order[j], order[i]
	}
	return order
}

// improve takes up and lays anew one path after the other until a whole round
// saves next to nothing.
func (r *router) improve() {
	for saved := r.cost(); saved > 0 && saved >= r.cost()/worthARound && r.work.left > 0; {
		saved = 0
		for i := range r.paths {
			old := r.paths[i]
			was := r.take(i)
			if now := r.lay(i); now < was {
				saved += was - now
				continue
			}
			r.take(i)
			r.put(i, old)
		}
	}
}

// worthARound is the part of the cost that a round must save to be followed
// by another.
const worthARound = 1000

// lay gives member i the path that adds least to the plan, and returns what
// it adds.
func (r *router) lay(i int) int64 {
	q := r.cables[i]
	r.queue.reset()
	for _, g := range r.start[r.member[i]] {
		r.offer(g, -1, 0, q)
	}
	for r.queue.size > 0 {
		key, g := r.queue.pop()
		x := key - q*r.base[g]
		if x > r.dist[g] {
			continue
		}
		if g == r.exit {
			break
		}
		x += q*r.unit[g] + r.open[g]
		if r.hint != nil && r.uses[g] == 0 {
			x += r.hint[g]
		}
		if r.crowd.counts(g) {
			x += max(0, r.crowd.added(g, r.member[i]))
		}
		turns := r.turns(g)
		for _, t := range turns {
			r.offer(t.to, g, x+q*t.price, q)
		}
		r.work.spend(len(turns))
	}
	var path []int32
	for g := r.pred[r.exit]; g >= 0; g = r.pred[g] {
		path = append(path, g)
	}
	reverse(path)
	added := r.dist[r.exit]
	for _, g := range r.seen {
		r.dist[g] = far
	}
	r.seen = r.seen[:0]
	r.put(i, path)
	return added
}

func (r *router) offer(g, pred int32, x, q int64) {
	if x < r.dist[g] {
		if r.dist[g] == far {
			r.seen = append(r.seen, g)
		}
		r.dist[g], r.pred[g] = x, pred
		r.queue.push(x+q*r.base[g], g)
	}
}

func (r *router) put(i int, path []int32) {
	r.paths[i] = path
	for _, g := range path {
		r.uses[g]++
		r.open[g] = 0
		if r.crowd.counts(g) {
			r.crowd.enter(g, r.member[i])
		}
	}
}

// take removes the path of member i and returns what that saves.
func (r *router) take(i int) int64 {
	saved := r.own(i)
	for _, g := range r.paths[i] {
		if r.uses[g]--; r.uses[g] == 0 {
			r.open[g] = r.fixed[g]
			saved += r.fixed[g]
		}
		if r.crowd.counts(g) {
			r.crowd.leave(g, r.member[i])
			saved += r.crowd.added(g, r.member[i])
		}
	}
	r.paths[i] = nil
	return saved
}

// own is what the cables of member i pay, fixed prices left out.
func (r *router) own(i int) int64 {
	var sum int64
	for j, g := range r.paths[i] {
		sum += r.unit[g]
		if j+1 < len(r.paths[i]) {
			sum += r.turnTo(g, r.paths[i][j+1])
		}
	}
	return sum * r.cables[i]
}

func (r *router) turnTo(g, to int32) int64 {
	for _, t := range r.turns(g) {
		if t.to == to {
			return t.price
		}
	}
	return 0
}

func (r *router) clear() {
	for i := range r.paths {
		if r.paths[i] != nil {
			r.take(i)
		}
	}
}

// cost is what the plan costs in the space.
func (r *router) cost() int64 {
	sum := r.crowd.paid()
	for i := range r.paths {
		sum += r.own(i)
	}
	for g, u := range r.uses {
		if u > 0 {
			sum += r.fixed[g]
		}
	}
	return sum
}
