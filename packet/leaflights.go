package packet

func (b *binder) lightsLeaf() []folio { return nil }
