package packet

func (b *binder) takedownLeaf() []folio { return nil }
