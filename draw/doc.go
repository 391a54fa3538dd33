// Package draw draws the sheets' pictures to scale, one file or a few of one name a picture. It decides nothing about the tunnel: every
// figure comes from the plan, and the room and the words beside a picture from its caller.
package draw
