/**
 * The viewer: form on one hand, blank on the other, the list of work between them.
 *
 * <p>In: a file to open, or nothing. Out: a window, and the files its user takes away. May use viewer.model and the rooms up to job; JavaFX
 * lives only here. Panes show and pass on; what to show is decided in {@link blankwright.viewer.model.Bench}.
 * <p>Start reading at {@link blankwright.viewer.Viewer}; then {@link blankwright.viewer.BenchPane}.
 */
package blankwright.viewer;
