/**
 * What the metal can do: alloys with the basis of each number, hardening, forming limits, bends and springback.
 *
 * <p>In: strains, radii, thickness. Out: stresses, margins, lengths. May use num and Commons Math. Knows no mesh, no tool, no file.
 * <p>Start reading at {@link blankwright.metal.Alloy}; then {@link blankwright.metal.Hardening}, {@link blankwright.metal.Anisotropy},
 * {@link blankwright.metal.Bend}.
 */
package blankwright.metal;
