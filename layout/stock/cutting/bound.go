package cutting

import (
	"math"
	"math/big"
	"math/bits"
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

// prove turns dual values into worths and the bound they give for plans with stock counts within the box. Values are rounded down to
// integers, and shrunk where a stock without a most would hold more worth than its price, until none does.
func (j *job) prove(values []float64, in box) (worth []int64, bound int64) {
	scale := j.scale()
	worth = make([]int64, len(j.sizes))
	for i, v := range values {
		worth[i] = int64(min(v*float64(scale), 1<<62/float64(j.pieces)/2))
	}
	t := &j.exact
	for { // each round takes one off every worth at least
		j.budget -= t.fill(j.sizes, j.demand, worth, j.length)
		shrink := 1.0
		for s, stock := range j.stocks {
			if held := t.best[stock.Length]; !j.bounded(s, in) && held > scale*stock.Price {
				shrink = min(shrink, float64(scale*stock.Price)/float64(held))
			}
		}
		if shrink == 1 {
			break
		}
		for i := range worth {
			worth[i] = int64(float64(worth[i]) * shrink)
		}
	}
	return worth, j.weigh(worth, in)
}

// weigh returns the bound that worths give, from the table just filled with them.
func (j *job) weigh(worth []int64, in box) int64 {
	scale := j.scale()
	sum := new(big.Int)
	add := func(a int64, n int) { sum.Add(sum, new(big.Int).Mul(big.NewInt(a), big.NewInt(int64(n)))) }
	for i, w := range worth {
		add(w, j.demand[i])
	}
	for s, stock := range j.stocks {
		if over := scale*stock.Price - j.exact.best[stock.Length]; over < 0 {
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

// attainable returns the least sum of prices that is at least from, looking no further than to.
func (j *job) attainable(from, to int64) int64 {
	step := int64(0)
	var prices []int64
	for _, s := range j.stocks {
		if s.Price > 0 && s.Most > 0 {
			prices = append(prices, s.Price)
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
	sums := make([]bool, to+1)
	sums[0] = true
	for _, p := range prices {
		p /= step
		for c := p; c <= to; c++ {
			sums[c] = sums[c] || sums[c-p]
		}
	}
	for from < to && !sums[from] {
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
