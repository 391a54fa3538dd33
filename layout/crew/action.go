// What is done, said, wanted and mended, as values: packet has a word for each.

package crew

// Action is what is done: one verb and one object.
type Action int

// The actions, in the order of the work.
const (
	FindMarks        Action = iota // go to the fixed marks and see that they are as named
	ChooseFirst                    // where the organiser wants L1
	ChooseEnd                      // so far from L1, where the organiser wants the row's end
	FindByTapes                    // dots where two tapes from marks meet
	SetEnd                         // the row's end at its length, on the string to where the tapes met
	PaintRow                       // dots along a string, off one tape
	MakeGauge                      // a stick as long as the arch is wide
	SquareFirst                    // R1 by the gauge stick and the long diagonal
	SquareByTriangle               // R1 by 3-4-5
	PaintByGauge                   // right dots by the tape from R1 and the gauge stick
	SetWidths                      // right dots at the gauge stick's end, toward where tapes met
	PaintByBays                    // dots from the bay before
	PaintChords                    // dots off strings that are carried on
	PaintGuys                      // guy stakes' dots
	CheckDots                      // every check of the dots
	ChooseMarks                    // marks for next year, with their tapes
	AskOwner                       // what lies buried, where nobody knows
	MarkPrivate                    // a private line, by its owner
	CallLocator
	FlagDots   // beside each dot that waits, once every line is marked
	ReadTicket // with it in hand, at every painted or flagged line
	LookUp     // for lines overhead
	CheckAgain // widths and diagonals of dots that have waited
	TapeDepths // round every stake
	PullTest
	DriveStakes
	SetBases // bars on their boards
	MeasureWidths
	WeighDown // every bag on boards and at guys and braces

	CutLegs
	CutTrial // the first ridge piece
	NameSticks
	JoinSticks  // by couplings
	MarkLegs    // tape marks on the legs, and where guys are tied
	CutLines    // guys and brace lines, with their ribbons, and the line along the crowns
	SawOpenings // laths to opening sticks
	SawSteel    // bars to stakes, in the yard or before the day
	CutRidge    // the other ridge pieces

	TestStrings
	TagStrings
	TryWrapped // legs that were kept with their strings on
	FlagRows
	JoinForWrap // both legs into the crown, before a wrap of the whole arch
	WindPipe

	TrialArch // one wrapped arch, guyed and measured, before the rest is cut

	CheckDay // gusts, cold, people, names
	WatchLine
	JoinCrown
	TieGuysFlat // while the arch lies
	SetFirst    // foot
	WalkLast    // foot
	StretchGuys
	FixBraces // from the arch's legs to their pegs
	MeasureArch
	RaiseSame // an arch as the first one
	SpringRidge
	MeasureBay
	RaiseRest
	ScrewSockets
	SightAlong

	HangRows
	HangDrops
	TryOpening

	TestOutlets
	LayCords
	HangCords // up legs, along pipe and rows
	JoinPlugs // all but those of the outlets
	CheckCords
	SetTimers
	PlugRuns
	FeelPlugs
	TestLoaded
	DarkWalk

	NoonCall
	NightTest
	NightStakes
	NightPipe
	NightLights
	NightWay
	NightClose

	Unplug
	MeasureSag
	NameLegs
	CoilCords
	TakeStrings // rows and drops
	LowerArches
	Unwind
	OpenJoints
	PullStakes
	LookOver
	Store
	NextYear
	Actions // how many there are
)

// Warning is what is said before a task.
type Warning int

// The warnings.
const (
	NoWarning Warning = iota
	PaintOnly
	BuriedKills
	NoHolding // a stake that is hit; cap each at once
	Warnings  // how many there are
)

// Wanted is what a figure is of, or a state that is wanted.
type Wanted int

// The figures and states.
const (
	MarkAsNamed Wanted = iota
	DotCheck           // Figure.Checks
	GaugeLength
	TriangleSide // Length, of the three in turn
	ClearOfLine  // stakes of a buried line
	TicketInDate
	NoticeGiven // business days between call and stake
	OwnersAnswered
	KeepOverhead
	DepthTaped // of stakes
	Shows      // above the ground
	PullUp     // height of the hook
	PullForce
	PullMoves
	Plumb
	Leaning // stakes
	GuyLean // of stakes that are pulled one way alone
	Weighs  // on each foot, or at each guy's or brace's end
	Capped
	Ribbons // one on L, two on R, three on the others
	FootWidth

	CutLength
	Square // square and scraped
	NamedAndWhole
	NoGap // at a socket's stop
	TapeMark
	GuyMark // tape of the guy's mark from the foot, left then right
	BraceMark

	AllLit
	Tagged
	FlagAt
	Wound // as the light plan has it
	BandBare
	EndsBare

	GustBelow
	WarmerThan
	SlowBelow
	PeopleThere
	CrownHigh
	BayLength
	BayTurn
	BayClimb
	RunLength // along the crowns
	Plugged   // leg to leg at the crowns of Arches, or the ridge pieces of Bays to the lights beside them; Count joints, each covered
	EndsShut  // covers on Count sockets at the crowns of Arches, or of the ridge pieces of Bays, that nothing is plugged into
	CapsBack
	NothingLeans

	RowAt
	Sag
	LowestDrop
	OpeningHigh
	OpeningWide

	TestTrips
	BreakerReads
	NoneAcross // no cord across the way uncovered
	JointsHigh
	AsDrawn // cords and three-ways as drawn
	RunAmps
	NotWarm
	TimersRight
	BothWays // lit, from each end
	LitEarly // the same, days before it opens

	ForecastBelow
	LaidFlat // before a forecast of it
	StakesHold
	PipeWhole // and every socket home
	CrownKept // no lower than on the first night by more than Limit
	OpeningKept
	PlugsDry
	WayEven
	LampsOut // everyone out, lights out, both ends barred

	SaidUnplugged
	NoneLeft // of the stakes
	DryAndLabelled
	CrownFound
)

// Remedy is what is done when a figure is off.
type Remedy int

// The remedies.
const (
	Ask Remedy = iota // stop, and ask the organiser
	FindDotAgain
	MoveDotAcross
	SlideTheRow
	ReadTapeAgain
	MoveOnString // the end's dot, to its length
	WaitOrCall
	LeaveBare // the dot, without a stake
	DriveDeeper
	LongerStakes // for the whole tunnel
	BesideHole
	MoveAlong  // with its pair
	MoveAcross // both ways alike lowers or lifts the crown: Then
	MoveGuy
	DoNotMove // ask: the keep band or the opening forbids it
	DriveAgain

	CutAnother
	PutOut // of use: cracked
	DriveHome
	MeasureFromFoot
	RejectString
	OpenTurns

	OtherDay
	NotEnough // people: raise nothing
	EvenGuys
	LookAtFaults // the fault list of the arch profile
	OtherPieces  // cut every other ridge piece by the difference
	FindCap

	LetOut // slack
	TieUp

	LayAgain
	DryAndTry
	SwapIt
	Electrician
	CloseTonight
	Mend
	DeadWaits // for daylight, unplugged

	WarmWater
	FindStake
	CutThrough // with an X
)
