package stock

// Kind is what an item of the shopping list is.
type Kind int

// The kinds.
const (
	PipeStick  Kind = iota + 1
	Tee             // at the crown of an end arch
	Cross           // at the crown of an arch between
	Coupling        // of two sticks end to end
	Bushing         // at the end of a ridge piece of another size
	Screw           // one through each socket
	Cement          // and primer
	SteelBar        // that stakes are cut from
	ReadyStake      // bought cut to length
	StakeCap
	LightString
	Supply // of low voltage
	ExtensionCord
	ThreeWay
	CordCover   // over a cord that is walked over
	PlugCover   // one a joint
	SocketCover // over one that stays open
	Timer
	PortableGFCI // in an outlet that has none
	PlugBox      // lockable, where three or more plugs meet low down
	Lantern      // on batteries, at both ends and between
	GuyLine      // for guys, and along the crowns where dry sockets do not hold the ridge
	Tightener
	GuyClamp   // below the knot of each guy and brace line
	BraceClamp // one at each end of a brace of pipe
	Webbing    // of crossed braces, with a buckle each
	SoleBoard  // of feet that stand on weighted bases, along each row
	JointPlate // over a joint of such boards
	PlateScrew
	BarSocket // that holds a bar upright on its board
	SandBag
	ZipTies
	MarkingPaint
	MarkingFlag // beside a dot that waits
	Lath        // for gauge and opening sticks
	Ribbon
	WriteOnTags
)

// Fitting reports whether it joins pipe.
func (k Kind) Fitting() bool { return k >= Tee && k <= Bushing }
