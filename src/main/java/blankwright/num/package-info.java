/**
 * Arithmetic everyone stands on: small matrices, exact signs, integrals, angles and lengths with units, progress, loops shared out to the cores.
 *
 * <p>In: numbers. Out: numbers. May use Commons Math, never in a public signature. Knows no mesh.
 * <p>Start reading at {@link Lengths}; then {@link Orientation}.
 */
package blankwright.num;
