package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.oracle.HostileFiles;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Thousands of damaged files through the whole program: each ends in 0, 3 or 4 and a sentence, and leaves a packet or nothing. */
class HostileFilesEndWellTest {
    private static final int PER_FILE = 190, ALL_FORMATS_EVERY = 100;

    @TempDir Path temp;

    @Test
    void everyDamagedFileEndsInASentence() throws IOException {
        List<HostileFiles.File> files = HostileFiles.damaged(20261125, PER_FILE);
        List<String> wrong = new ArrayList<>();
        Map<ExitCode, Integer> ends = new EnumMap<>(ExitCode.class);
        for (int i = 0; i < files.size(); i++) {
            HostileFiles.File file = files.get(i);
            Path input = Files.write(temp.resolve("input-" + i), file.bytes()), out = temp.resolve("out-" + i);
            String formats = i % ALL_FORMATS_EVERY == 0 ? "obj,dxf,svg,pdf,png,vtu,csv" : "obj,dxf,csv";
            Run run = Run.of("flatten", input, "--units", "mm", "--out", out, "--formats", formats);
            ends.merge(run.exit(), 1, Integer::sum);
            String trouble = trouble(run, out);
            if (!trouble.isEmpty()) wrong.add(file.what() + ": " + trouble + ": " + run.exit() + " " + run.said().strip());
            delete(out);
            Files.delete(input);
        }
        assertTrue(files.size() > 2000, files.size() + " files");
        assertEquals(List.of(), wrong.subList(0, Math.min(10, wrong.size())), wrong.size() + " of " + files.size());
        assertTrue(ends.get(ExitCode.DONE) > 100 && ends.get(ExitCode.BAD_INPUT) > 100, "the mutants are all alike: " + ends);
    }

    private static String trouble(Run run, Path out) throws IOException {
        switch (run.exit()) {
            case FAILED, WRONG_COMMAND:
                return "exit code";
            case BAD_INPUT:
                if (run.err().strip().length() < 15 || run.err().contains("Exception") || run.err().contains("null")) return "no sentence";
                return Files.exists(out) ? "a folder is left" : "";
            default:
                if (!run.out().contains("Written to") || run.out().contains("NaN") || run.out().contains("null")) return "no report";
                try (Stream<Path> all = Files.list(out)) {
                    return all.anyMatch(p -> p.toString().endsWith(".part") || p.toFile().length() == 0) ? "half a file" : "";
                }
        }
    }

    private static void delete(Path dir) throws IOException {
        if (!Files.exists(dir)) return;
        List<Path> files;
        try (Stream<Path> all = Files.list(dir)) {
            files = all.toList();
        }
        for (Path file : files) Files.delete(file);
        Files.delete(dir);
    }
}
