package packet

func (b *binder) nightsLeaf() []folio { return nil }
