package packet

func (b *binder) powerLeaf() []folio { return nil }
