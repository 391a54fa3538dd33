package cutting

import (
	"math"
	"math/big"
	"math/bits"
	"slices"
)

// finest is the power of two that worths are multiplied by where prices leave room for it.
const finest = 22

// scale returns the largest power of two, the finest at most, at which the worth of all pieces stays within 62 bits.
func (j *job) scale() int64 {
	dearest := int64(1)
	for _, s := range j.stocks {
		dearest = max(dearest, s.Price)
	}
	room := 62 - bits.Len64(uint64(dearest)) - bits.Len64(uint64(j.pieces)) - 1
	return int64(1) << max(0, min(finest, room))
}

// worths rounds dual values down to integers, none below zero.
func (j *job) worths(values []float64) []int64 {
	scale := float64(j.scale())
	most := float64(1<<62) / float64(j.pieces) / 2
	worth := make([]int64, len(j.sizes))
	for i, v := range values {
		worth[i] = int64(max(0, min(v*scale, most)))
	}
	return worth
}

// prove returns the bound that worths give for plans with stock counts within the box, from the table filled with them. Where a stock
// that no count bounds would hold more worth than its price, all worths are shrunk until none does: rounded down, no pattern holds more
// than its share of what it held.
func (j *job) prove(worth []int64, in box) ([]int64, int64) {
	num, den := int64(1), int64(1)
	for s, stock := range j.stocks {
		price, held := j.scale()*stock.Price, j.exact.best[stock.Length]
		if !j.free[s] || in.hi[s] < j.pieces || held <= price {
			continue
		}
		if a, b := new(big.Int), new(big.Int); a.Mul(big.NewInt(price), big.NewInt(den)).Cmp(b.Mul(big.NewInt(num), big.NewInt(held))) < 0 {
			num, den = price, held
		}
	}
	if num < den {
		worth = slices.Clone(worth)
		for i, w := range worth {
			worth[i] = share(w, num, den)
		}
	}
	return worth, j.weigh(worth, in, num, den)
}

// share returns w·num/den rounded down, for num no more than den.
func share(w, num, den int64) int64 {
	hi, lo := bits.Mul64(uint64(w), uint64(num))
	q, _ := bits.Div64(hi, lo, uint64(den))
	return int64(q)
}

// weigh returns the bound that worths give where each pattern holds at most the share of what the table says.
func (j *job) weigh(worth []int64, in box, num, den int64) int64 {
	scale := j.scale()
	sum := new(big.Int)
	add := func(a int64, n int) { sum.Add(sum, new(big.Int).Mul(big.NewInt(a), big.NewInt(int64(n)))) }
	for i, w := range worth {
		add(w, j.demand[i])
	}
	for s, stock := range j.stocks {
		if over := scale*stock.Price - share(j.exact.best[stock.Length], num, den); over < 0 {
			add(over, in.hi[s])
		} else {
			add(over, in.lo[s])
		}
	}
	return roundUp(sum, scale)
}

// roundUp returns sum/scale rounded up, within 0 and the most that an int64 holds.
func roundUp(sum *big.Int, scale int64) int64 {
	if sum.Sign() <= 0 {
		return 0
	}
	up := sum.Add(sum, big.NewInt(scale-1))
	if up.Div(up, big.NewInt(scale)); !up.IsInt64() {
		return math.MaxInt64
	}
	return up.Int64()
}

// material returns worths in proportion to length at the least price per length that any unlimited stock offers: what the pieces must
// cost if nothing were wasted.
func (j *job) material() []float64 {
	values := make([]float64, len(j.sizes))
	rate := -1.0
	for s, stock := range j.stocks {
		if r := float64(stock.Price) / float64(stock.Length); j.free[s] && (rate < 0 || r < rate) {
			rate = r
		}
	}
	for i, w := range j.sizes {
		values[i] = max(rate, 0) * float64(w)
	}
	return values
}

// attainable returns the least sum of prices that is at least from, looking no further than to. The sums are listed once: no later call
// looks further than the first, since only cheaper plans follow.
func (j *job) attainable(from, to int64) int64 {
	step := int64(0)
	for _, s := range j.stocks {
		if s.Most > 0 {
			step = gcd(step, s.Price)
		}
	}
	if step == 0 || from >= to {
		return min(from, to)
	}
	from = (from + step - 1) / step
	if to /= step; to > mostSums {
		return from * step
	}
	if int64(len(j.sums)) <= to {
		j.sums = make([]bool, to+1)
		j.sums[0] = true
		for _, s := range j.stocks {
			if p := s.Price / step; p > 0 && s.Most > 0 {
				for c, reached := range j.sums[:max(0, to+1-p)] {
					j.sums[int64(c)+p] = j.sums[int64(c)+p] || reached
				}
			}
		}
	}
	for from < to && !j.sums[from] {
		from++
	}
	return from * step
}

// mostSums is how many sums of prices are looked at before a common divisor has to do.
const mostSums = 1 << 23

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
