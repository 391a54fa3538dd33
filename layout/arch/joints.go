package arch

import "hoopwright/layout/measure"

// Joint is a fitting on the arch: the pipe is straight and does not bend from one end of it to the other.
type Joint struct {
	From, To measure.Length // tape from the left foot, over both sockets
	Crown    bool           // the fitting at the crown; else a coupling
}

// Middle returns the tape of the fitting's middle.
func (j Joint) Middle() measure.Length { return (j.From + j.To) / 2 }

// Joints returns the couplings and the crown fitting, rising tape. A single stick has none.
func (k *Kind) Joints() []Joint {
	pipe := k.Spec.Pipe
	length, couplings := leg(k.Left, pipe.CouplingStop, pipe.Socket)
	var list []Joint
	for _, c := range couplings {
		list = append(list, Joint{From: c.from, To: c.to})
	}
	if len(k.Right) == 0 {
		return list
	}
	right, mirrored := leg(k.Right, pipe.CouplingStop, pipe.Socket)
	list = append(list, Joint{From: length - pipe.Socket, To: k.Length - right + pipe.Socket, Crown: true})
	for i := len(mirrored) - 1; i >= 0; i-- {
		list = append(list, Joint{From: k.Length - mirrored[i].to, To: k.Length - mirrored[i].from})
	}
	return list
}
