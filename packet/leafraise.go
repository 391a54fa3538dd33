package packet

func (b *binder) raiseLeaf() []folio { return nil }
