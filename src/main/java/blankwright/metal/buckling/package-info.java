/**
 * Where a thin sheet gives way instead of shrinking.
 *
 * <p>In: a form, what forming asks of each of its triangles, a {@link Sheet}, where it is held. Out: load factors and shapes of buckling,
 * tucks, the strain at which each place gives way. May use num, sparse, mesh, metal. Knows nothing of shops, drawings or files.
 * <p>Start reading at {@link Buckling}; the elements are {@link Bending} and {@link Membrane}.
 */
package blankwright.metal.buckling;
