package blankwright.viewer;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The window itself on a virtual display, moved by mouse and keys; every scene leaves its picture in target/screens. */
@Tag("screen")
class ScreenTest {
    @TempDir static Path home;
    private static final String[] JAVA = {"-Xmx1g", "-XX:TieredStopAtLevel=1"};
    private static VirtualDisplay display;
    private static VirtualDisplay.Player player;

    @BeforeAll
    static void show() throws Exception {
        display = VirtualDisplay.start();
        player = display.player(home, JAVA);
    }

    @AfterAll
    static void hide() throws Exception {
        if (player != null) player.close();
        if (display != null) display.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"welcome", "turnSlideAndZoom", "keysReachTheFormAndTheBlank", "theColourAtASpotIsThatOfItsNumber",
            "aZoneIsFramedInBoth", "aFlangeIsFramedInBoth",
        "changesAreTypedAndTakenBack", "theBlankFollowsADrag", "theScreenIsMeasured", "numbersAreCopied", "aTapeIsLaid", "theUnworkedSheetBuckles", "theProposedSeamIsTaken", "aSeamIsCut",
                "theScaleIsDragged",
        "whatGoesToTheBenchIsShownAndWritten", "sheetsGoToThePrinter", "theUnitIsAsked",
        "measuresAndToolsAreChanged", "holesClampsAndOwnAlloysAreChosen", "aSeamIsMoved", "aLargePanelFollowsInFewTriangles",
        "aPadZoomsAndSlides", "aFileIsDropped", "seamsAreDragged", "filesAreAskedFor", "closingAsksOnce", "fromTheScanToThePattern",
        "theKeyboardReachesEverything", "inchFractions", "darkWithLargeLetters", "everythingHasAName", "everyControlTeachesOneThing", "theManualOpensAtTheRightPart", "soak"})
    void scene(String name) throws IOException {
        player.play(name);
    }

    /** Killed without warning; the next start offers what was there. */
    @Test
    void aKilledViewerLosesNothing(@TempDir Path own) throws Exception {
        try (VirtualDisplay.Player killed = display.player(own, JAVA)) {
            killed.play("leaveUnsaved");
        }
        try (VirtualDisplay.Player next = display.player(own, JAVA)) {
            next.play("recover");
        }
    }
}
