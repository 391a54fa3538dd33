// Package bend solves the plane elastic rod: how a bent pipe stands between two feet, and how much more weight it would
// bear before it falls over. It knows nothing of pipes, lights or soil. All numbers are SI: metres, newtons, N·m², radians.
//
// The rod cannot stretch; its shape is the tangent's angle θ(s) along the length s. The shape makes
//
//	∫ ½·B·(θ' − κ₀)² ds + ∫ Q·sin θ − P·cos θ ds
//
// stationary, B the bending stiffness, κ₀ the bend the rod has when nothing acts on it, Q(s) the weight and P(s) the level push
// beyond s, under the two conditions that ∫cos θ ds and ∫sin θ ds reach the far foot. Their Lagrange multipliers are the
// forces at the feet. Euler's equation of it is the moment balance B·θ″ = −H·sin θ + V·cos θ, H less by P and V more by Q toward the start (A. E. H. Love, A Treatise on the
// Mathematical Theory of Elasticity, 4th ed., ch. XIX).
//
// θ is taken quadratic over each of some sixty parts: straight between the nodes plus one bubble, which is eliminated
// part by part, so that Newton's method meets a tridiagonal matrix bordered by the two conditions and takes a few
// microseconds a step. Node angles, forces and moments then converge with the fourth power of the parts' length. Stiff
// stretches, such as fittings, are exact: their whole length shares one unknown.
//
// The signs of the pivots tell how the second variation is made, and so whether a shape is stable (Sylvester's law of
// inertia): sideways from the same matrix, out of its plane from the second variation of the rod in space, Space.
package bend
