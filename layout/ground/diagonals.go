package ground

// diagonals returns the check distances over stakes in the order L1, R1, L2, R2 …: for each bay L to R of the next arch,
// then R to L of the next; last L1 to the far R and R1 to the far L. With two arches the whole is the one bay again.
func diagonals(stakes []Stake) []Diagonal {
	var list []Diagonal
	add := func(from, to Stake) {
		list = append(list, Diagonal{From: from.StakeID, To: to.StakeID, Distance: Distance(from.At(), to.At())})
	}
	n := len(stakes)
	for i := 0; i+3 < n; i += 2 {
		add(stakes[i], stakes[i+3])
		add(stakes[i+1], stakes[i+2])
	}
	if n >= 4 {
		add(stakes[0], stakes[n-1])
		add(stakes[1], stakes[n-2])
	}
	return list
}
