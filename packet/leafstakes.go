package packet

func (b *binder) stakesLeaf() []folio { return nil }
