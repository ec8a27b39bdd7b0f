package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OutputFolderTest {
    @TempDir Path temp;

    @Test
    void filesAppearTogetherWhenKept() throws IOException {
        Path dir = temp.resolve("a/b");
        try (OutputFolder folder = OutputFolder.open(dir)) {
            folder.write("one.txt", out -> out.write('1'));
            folder.write("two.txt", out -> out.write('2'));
            assertFalse(Files.exists(dir.resolve("one.txt")));
            assertEquals(List.of(dir.resolve("one.txt"), dir.resolve("two.txt")), folder.keep());
        }
        assertEquals(List.of("one.txt", "two.txt"), names(dir));
        assertEquals("1", Files.readString(dir.resolve("one.txt")));
    }

    @Test
    void nothingIsLeftWhenNotKept() throws IOException {
        try (OutputFolder folder = OutputFolder.open(temp.resolve("a/b"))) {
            folder.write("one.txt", out -> out.write('1'));
        }
        assertFalse(Files.exists(temp.resolve("a")), "folders made for nothing stay");
    }

    @Test
    void theOldFileStaysWhenTheNewOneFails() throws IOException {
        Files.writeString(temp.resolve("one.txt"), "old");
        try (OutputFolder folder = OutputFolder.open(temp)) {
            assertThrows(IOException.class, () -> folder.write("one.txt", out -> {
                out.write('n');
                throw new IOException("the disk is full");
            }));
        }
        assertEquals("old", Files.readString(temp.resolve("one.txt")));
        assertEquals(List.of("one.txt"), names(temp));
    }

    @Test
    void whatAKilledProgramLeftIsSweptButNotWhatARunningOneWrites() throws IOException {
        long own = ProcessHandle.current().pid();
        Files.writeString(temp.resolve(".blank.dxf.99999999999.part"), "half");
        Files.writeString(temp.resolve(".blank.svg." + own + ".part"), "being written");
        Files.writeString(temp.resolve(".notes.part"), "not ours");
        OutputFolder.open(temp).close();
        assertEquals(List.of(".blank.svg." + own + ".part", ".notes.part"), names(temp));
    }

    @Test
    void refusesAFileForAFolder() throws IOException {
        Path file = Files.writeString(temp.resolve("file"), "x");
        assertThrows(FileAlreadyExistsException.class, () -> OutputFolder.open(file));
    }

    @Test
    void noFileIsMovedWhereAFolderHasTheNameOfOne() throws IOException {
        Files.createDirectory(temp.resolve("two.txt"));
        try (OutputFolder folder = OutputFolder.open(temp)) {
            folder.write("one.txt", out -> out.write('1'));
            folder.write("two.txt", out -> out.write('2'));
            assertThrows(FileAlreadyExistsException.class, folder::keep);
        }
        assertEquals(List.of("two.txt"), names(temp));
    }

    @Test
    void nothingIsBegunAfterTheFolderWasClosed() throws IOException {
        OutputFolder folder = OutputFolder.open(temp);
        Map<String, OutputFolder.Content> files = new LinkedHashMap<>();
        files.put("one.txt", out -> folder.close());
        for (int i = 0; i < 20; i++) files.put(i + ".txt", out -> out.write('x'));
        assertThrows(IOException.class, () -> {
            folder.writeAll(files);
            folder.keep();
        });
        ForkJoinPool.commonPool().awaitQuiescence(10, TimeUnit.SECONDS);
        assertEquals(List.of(), names(temp));
    }

    private static List<String> names(Path dir) throws IOException {
        try (Stream<Path> all = Files.list(dir)) {
            return all.map(p -> p.getFileName().toString()).sorted().toList();
        }
    }
}
