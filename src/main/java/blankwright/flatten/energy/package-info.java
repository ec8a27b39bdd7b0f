/**
 * What a flattening makes least, triangle by triangle.
 *
 * <p>In: principal stretches of a 2x2 map. Out: value, derivatives, the positive part of the second derivative. May use num.
 * <p>Start reading at {@link TriangleEnergy}. A new energy is one class and one finite-difference test.
 */
package blankwright.flatten.energy;
