package packet

func (b *binder) tagsLeaf() []folio { return nil }
