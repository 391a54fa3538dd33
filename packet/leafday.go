package packet

func (b *binder) dayLeaf() []folio { return nil }
