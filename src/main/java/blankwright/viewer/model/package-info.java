/**
 * What the viewer decides, without a window: what is open, what is being done, what a place's numbers are, where the eye stands.
 *
 * <p>In: files, clicks as places on the skin, words typed. Out: properties that panes bind to. May use the rooms up to job and the
 * properties of JavaFX, but no node, so that every test here runs without a display.
 * <p>Start reading at {@link blankwright.viewer.model.Bench}; then {@link blankwright.viewer.model.Laid}, what a finished run becomes on
 * the screen, and {@link blankwright.viewer.model.Orbit}.
 */
package blankwright.viewer.model;
