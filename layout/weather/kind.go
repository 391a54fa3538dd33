package weather

import (
	"hoopwright/layout/arch"
	"hoopwright/layout/bend"
	"hoopwright/layout/measure"
	"hoopwright/layout/spec"
)

// Arch is one arch of the tunnel: its number and its kind.
type Arch struct {
	Number int
	*Kind
}

// Kind is a kind of arch with what wind and ice do to it.
type Kind struct {
	*arch.Kind
	built  *model // nil where it is only drawn
	braced *braced
}

// model is an arch's body with its figures at hand.
type model struct {
	*arch.Body
	in            *arch.Input
	spec          spec.Arch
	length, crown measure.Length
	rod           bend.Rod
	shape         *bend.Shape
}

func modelOf(k *arch.Kind, b *arch.Body) *model {
	return &model{Body: b, in: b.In, spec: k.Spec, length: k.Length, crown: k.CrownTape, rod: b.Rod, shape: b.Shape}
}
