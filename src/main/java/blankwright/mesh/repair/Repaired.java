package blankwright.mesh.repair;

import blankwright.mesh.Finding;
import blankwright.mesh.TriMesh;
import java.util.List;

/**
 * A surface and what was done to get it.
 *
 * @param mesh every edge carries one or two triangles running opposite ways, the triangles round each vertex hang together, none is flat,
 *     every vertex is used. Without triangles where nothing was usable: whoever asks for a panel must refuse that, saying the findings.
 */
public record Repaired(TriMesh mesh, List<Finding> findings) {
    public Repaired {
        findings = List.copyOf(findings);
    }

    public boolean isEmpty() {
        return mesh.triangleCount() == 0;
    }
}
