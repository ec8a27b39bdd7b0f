/**
 * What the metal must do: the change of length, area and thickness between the blank and the form.
 *
 * <p>In: a form and its {@link blankwright.mesh.FlatMap}, from whatever source. Out: fields per triangle and per vertex, and a few numbers
 * for the whole piece. May use num, mesh. Knows kinematics only: no metal, no tool, no drawing.
 * <p>Start reading at {@link StrainField}; then {@link VertexStrain}, {@link RimChange}, {@link Developability}, {@link Curvature}.
 */
package blankwright.strain;
