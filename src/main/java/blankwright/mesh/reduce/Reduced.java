package blankwright.mesh.reduce;

import blankwright.mesh.TriMesh;

/**
 * A surface with fewer triangles.
 *
 * @param deviation largest distance found between it and the given surface, either way, mm
 */
public record Reduced(TriMesh mesh, double deviation) { }
