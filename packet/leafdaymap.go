package packet

// siteMaps is the map of the site, or two where one does not hold all of it.
func (b *binder) siteMaps() []side { return nil }
