/**
 * The command line: words in, files and an exit code out.
 *
 * <p>In: arguments. Out: what {@link blankwright.job} wrote, a short report for the bench, and one of the {@link ExitCode}s.
 * <p>May use num, mesh, strain, metal, shop, drawing, project and job. The only room besides the viewer that turns failures into words.
 * <p>Start reading at {@link Blankwright}; then {@link FlattenCommand}, {@link BendCommand}.
 */
package blankwright.cli;
