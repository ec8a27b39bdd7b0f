package blankwright.job;

import blankwright.mesh.cut.Opened;
import blankwright.mesh.repair.Component;

/**
 * A part of the panel that becomes one piece.
 *
 * @param component of the mended mesh that it belongs to, as it was given
 * @param opened the part, on the middle of the sheet, opened to lie flat
 */
record Part(Component component, Opened opened) { }
