package blankwright.job;

import blankwright.mesh.Finding;
import java.nio.file.Path;
import java.util.List;

/**
 * Where a recipe came from.
 *
 * @param name of the input as it stands in the summary, e.g. {@code nose.stl}
 * @param folder that a mesh file named in the recipe is relative to
 * @param findings made before the job began, e.g. about options that do nothing
 */
public record Given(String name, Path folder, List<Finding> findings) {
    public Given {
        findings = List.copyOf(findings);
    }

    public static Given file(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        return new Given(String.valueOf(file.getFileName()), folder, List.of());
    }

    public Given withFindings(List<Finding> more) {
        return new Given(name, folder, more);
    }
}
