package blankwright.viewer.model;

import blankwright.mesh.query.SkinPoint;

/**
 * A place of the panel: the same on form and blank.
 *
 * @param piece of the blank, from 0
 */
public record Place(int piece, SkinPoint at) { }
