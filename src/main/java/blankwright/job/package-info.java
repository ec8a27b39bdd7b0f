/**
 * Runs a recipe from the mesh as given to the files on the bench; the only door for every front end.
 *
 * <p>In: a {@link blankwright.project.Recipe}. Out: an immutable {@link Result}, and with {@link Packet} the files that go to the bench.
 * <p>May use every room below it but sparse and flatten.energy. Prints nothing, asks no clock but for the seconds it reports.
 * <p>Start reading at {@link FlattenJob}; then {@link Packet}.
 */
package blankwright.job;
