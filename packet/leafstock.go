package packet

func (b *binder) stockLeaf() []folio { return nil }
