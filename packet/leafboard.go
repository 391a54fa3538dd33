package packet

func (b *binder) boardLeaf() []folio { return nil }
