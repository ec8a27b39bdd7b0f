package blankwright.corpus;

import blankwright.mesh.TriMesh;
import java.util.Random;

/**
 * Meshes of one kind, numbered; a number always makes the same mesh.
 *
 * @param uncut true where the meshes are disks already and go to the flattening as they are
 * @param count of meshes in a whole run
 */
record Family(String name, boolean uncut, int count, Maker maker) {
    interface Maker {
        TriMesh make(int number, Random random);
    }

    TriMesh mesh(int number) {
        return maker.make(number, new Random(1_000_003L * name.hashCode() + number));
    }
}
