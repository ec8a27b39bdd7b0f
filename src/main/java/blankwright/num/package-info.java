/**
 * Arithmetic everyone stands on: small matrices, angles, areas, lengths with units, tolerances, progress.
 *
 * <p>In: numbers. Out: numbers. May use Commons Math, never in a public signature. Knows no mesh.
 * <p>Start reading at {@link Svd2}.
 */
package blankwright.num;
