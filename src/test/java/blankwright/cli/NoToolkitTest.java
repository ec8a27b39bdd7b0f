package blankwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command line needs no display, and the virtual machine itself says that no class of the viewer's toolkit was loaded. */
class NoToolkitTest {
    @TempDir Path temp;

    @Test
    void aRunLoadsNoClassOfTheViewer() throws Exception {
        Path said = temp.resolve("said");
        int exit = Child.start(List.of("-Xlog:class+load"), said, "flatten", "models/vent-cowl.yaml", "--out", temp.resolve("out")).waitFor();
        String text = Files.readString(said);
        assertEquals(0, exit, text.lines().filter(l -> !l.contains("source:")).toList().toString());
        assertTrue(text.contains("blankwright.job.FlattenJob source:"), "the log of classes is missing");
        for (String room : List.of("javafx.", "com.sun.javafx.", "atlantafx.", "org.kordamp.", "blankwright.viewer.")) assertFalse(text.contains(room), room);
    }
}
