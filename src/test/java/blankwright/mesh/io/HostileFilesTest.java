package blankwright.mesh.io;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import blankwright.mesh.EdgeTable;
import blankwright.mesh.repair.Repair;
import blankwright.mesh.repair.Repaired;
import blankwright.num.Progress;
import blankwright.oracle.HostileFiles;
import java.lang.management.ManagementFactory;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Thousands of damaged files: each is read or refused in a sentence, and what is read becomes a surface. */
class HostileFilesTest {
    private static final long SECOND = 1_000_000_000L;

    @Test
    void goodFilesAreReadAndBecomeSurfaces() throws FormatException {
        for (HostileFiles.File file : HostileFiles.good()) {
            RawMesh raw = MeshReader.read(file.bytes(), file.name(), Progress.NONE);
            EdgeTable.of(Repair.of(raw.xyz(), raw.triangles(), Progress.NONE).mesh());
        }
    }

    @Test
    void everyDamagedFileIsReadOrRefusedInASentence() {
        List<HostileFiles.File> files = HostileFiles.damaged(20_251, 400);
        assertTrue(files.size() > 4000, files.size() + " files");
        int read = 0, refused = 0;
        for (HostileFiles.File file : files) {
            long clock = System.nanoTime(), memory = allocated();
            try {
                RawMesh raw = MeshReader.read(file.bytes(), file.name(), Progress.NONE);
                read++;
                checkSurface(raw, file);
            } catch (FormatException e) {
                refused++;
                checkSentence(e, file);
            } catch (RuntimeException | Error e) {
                throw new AssertionError(file.name() + " " + file.what(), e);
            }
            assertTrue(System.nanoTime() - clock < 20 * SECOND, "hangs: " + file.name() + " " + file.what());
            long took = allocated() - memory, most = 40_000_000 + 400L * file.bytes().length;
            assertTrue(took < most, took + " bytes taken for " + file.bytes().length + ": " + file.name() + " " + file.what());
        }
        assertTrue(read > 500 && refused > 1500, read + " read, " + refused + " refused: the damage is one-sided");
    }

    private static long allocated() {
        return ((com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean()).getCurrentThreadAllocatedBytes();
    }

    private static void checkSentence(FormatException e, HostileFiles.File file) {
        String message = e.getMessage();
        assertTrue(message.startsWith(file.name() + ":") && message.length() > file.name().length() + 12, message);
        assertTrue(message.chars().allMatch(c -> c >= ' ' && c < 0x7F), "unprintable: " + message);
        assertTrue(!message.contains("Exception") && !message.contains("null") && message.length() < 400, message);
    }

    private static void checkSurface(RawMesh raw, HostileFiles.File file) {
        assertTrue(raw.triangleCount() > 0, file.what());
        Repaired once = Repair.of(raw.xyz(), raw.triangles(), Progress.NONE);
        EdgeTable.of(once.mesh());
        once.findings().forEach(f -> assertTrue(f.count() > 0 && f.text().length() > 10, f.text()));
        Repaired twice = Repair.of(once.mesh().positions(), once.mesh().corners(), Progress.NONE);
        if (!java.util.Arrays.equals(once.mesh().corners(), twice.mesh().corners())) fail("not settled: " + file.name() + " " + file.what());
        assertEquals(0, twice.findings().stream().filter(f -> f.kind() != blankwright.mesh.Finding.Kind.SLIVERS).count(),
                () -> twice.findings() + " " + file.name() + " " + file.what());
    }
}
