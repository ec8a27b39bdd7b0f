package blankwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.num.LengthUnit;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SizeQuestionTest {
    @Test
    void aPanelInMetresIsRecognised() {
        assertEquals(Optional.of("nose.obj: is this really 0.840 mm (0.033 in) across? In metres it would be 840 mm (33.1 in) across:"
                + " say --units m. In feet it would be 256 mm (10.1 in) across: say --units ft."
                + " If it is right as it stands, say --units mm."), SizeQuestion.ask("nose.obj", 0.84, LengthUnit.MM));
    }

    @Test
    void theManualQuotesIt() throws IOException {
        assertTrue(Files.readString(Path.of("docs/manual/units.md")).contains(SizeQuestion.ask("nose.obj", 0.84, LengthUnit.MM).orElseThrow()));
    }

    @Test
    void whatNoUnitMakesAPanelSaysSo() {
        assertEquals(Optional.of("hull.stl: is this really 90,000 m (295,276 ft) across? No unit we know (mm, cm, m, in, ft) makes it the size of a panel:"
                + " check the file. If it is right as it stands, say --units mm."), SizeQuestion.ask("hull.stl", 9e7, LengthUnit.MM));
    }

    @Test
    void panelsAreNotAskedAbout() {
        assertEquals(Optional.empty(), SizeQuestion.ask("a", 20, LengthUnit.MM));
        assertEquals(Optional.empty(), SizeQuestion.ask("a", 6000, LengthUnit.MM));
        assertEquals(Optional.empty(), SizeQuestion.ask("a", 12, LengthUnit.IN));
    }
}
