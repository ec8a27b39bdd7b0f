package blankwright.viewer.model;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import blankwright.job.FlattenJob;
import blankwright.job.Given;
import blankwright.job.Packet;
import blankwright.job.Result;
import blankwright.num.Progress;
import blankwright.project.AlloyReader;
import blankwright.project.Clamps;
import blankwright.project.FormulaHole;
import blankwright.project.Metal;
import blankwright.project.Recipe;
import blankwright.project.RecipeReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Holes, clamps and the maker's own alloys decided in the viewer: each is a step that can be taken back, each is in the copy kept against a
 * kill, and the command line makes the same of the saved recipe, bit for bit.
 */
@Timeout(120)
class DecidedTest extends AtABench {
    private static final String SKIN = """
            blankwright-recipe: 1
            name: skin
            panel: {kind: crowned-panel, length: 400mm, width: 300mm, length-rise: 20mm, width-rise: 12mm}
            chord: 1mm
            thickness: 1mm
            alloy: 3003-O
            """;
    private static final String OWN = """
            blankwright-alloys: 1
            alloys:
              - metal: scrap-yard sheet
                temper: soft
                family: aluminium
                E: 70 GPa
                nu: 0.33
                density: 2700 kg/m3
                yield: 60 MPa
                tensile: 120 MPa
                elongation: 25 %
              - metal: door skin
                temper: as found
                family: steel
                E: 205 GPa
                nu: 0.3
                density: 7850 kg/m3
                yield: 180 MPa
                tensile: 300 MPa
                elongation: 36 %
            verdicts: {springs-in: 0.2 %}
            """;

    @BeforeEach
    void open() throws IOException {
        openedWell(Files.writeString(temp.resolve("skin.yaml"), SKIN));
    }

    /** Taken back and done again it is what it was; a kill leaves it; saved elsewhere, the command line's run of it is the blank shown. */
    private void holds(int steps, Recipe before) throws Exception {
        settle();
        assertEquals("", bench.troubleProperty().get());
        Recipe decided = now();
        for (int i = 0; i < steps; i++) bench.undo();
        assertEquals(before, now());
        assertFalse(bench.canUndoProperty().get());
        for (int i = 0; i < steps; i++) bench.redo();
        assertEquals(decided, now());
        settle();
        Path copy = autosave.copy();
        Path dead = temp.resolve("dead/left-999999999.yaml");
        Files.createDirectories(dead.getParent());
        Files.copy(copy, dead);
        assertEquals(List.of(decided), new Autosave(dead.getParent()).left().stream().map(Autosave.Left::recipe).toList());
        Path saved = temp.resolve("elsewhere/saved.yaml");
        assertTrue(bench.save(saved), bench.troubleProperty().get());
        Recipe back = RecipeReader.read(saved);
        assertEquals(now(), back);
        Result meant = FlattenJob.run(back, Given.file(saved), Progress.NONE), is = bench.laidProperty().get().result();
        assertArrayEquals(meant.pieces().get(0).map().positions(), is.pieces().get(0).map().positions());
        assertArrayEquals(meant.pieces().get(0).map().form().positions(), is.pieces().get(0).map().form().positions());
        assertEquals(meant.findings(), is.findings());
        assertEquals(meant.pieces().get(0).buckled().map(b -> b.blank().loadFactor()), is.pieces().get(0).buckled().map(b -> b.blank().loadFactor()));
        assertEquals(meant.pieces().get(0).demand().map(d -> d.margin(0)), is.pieces().get(0).demand().map(d -> d.margin(0)));
        assertEquals(Packet.drawing(meant).entities(), bench.laidProperty().get().drawing().entities());
    }

    @Test
    void holesOfAFormula() throws Exception {
        Recipe before = now();
        assertTrue(bench.change(FormulaHole::oneMore));
        assertTrue(bench.change(r -> new FormulaHole(60, -30, 80, 40).in(r, 0), "length"));
        assertTrue(bench.change(r -> new FormulaHole(60, -30, 90, 40).in(r, 0), "length"));
        bench.letGo();
        holds(2, before);
        assertEquals(1, bench.laidProperty().get().result().pieces().get(0).holes());
        assertFalse(bench.change(r -> FormulaHole.round(195, 0, 30).in(r, 0)), "it would break through the edge");
        assertTrue(bench.troubleProperty().get().contains("hole 1"), bench.troubleProperty().get());
    }

    @Test
    void placesWhereTheSheetIsHeld() throws Exception {
        Recipe before = now();
        Laid laid = bench.laidProperty().get();
        assertTrue(bench.hold(laid.onForm(0, 0, 0)));
        assertTrue(bench.hold(laid.onForm(120, 80, 0)));
        assertTrue(bench.change(r -> r.withClamps(r.clamps().map(c -> c.with(1, c.spots().get(1).withRadius(35))))));
        List<Clamps.Spot> spots = now().clamps().orElseThrow().spots();
        assertEquals(Bench.CLAMP, spots.get(0).radius());
        assertEquals(35, spots.get(1).radius());
        assertEquals(120, spots.get(1).x(), 3);
        assertEquals(80, spots.get(1).y(), 3);
        holds(3, before);
        assertTrue(bench.laidProperty().get().has(MapKind.BUCKLING));
        bench.change(r -> r.withClamps(r.clamps().map(c -> c.without(0))));
        assertEquals(List.of(spots.get(1)), now().clamps().orElseThrow().spots());
        bench.change(r -> r.withClamps(r.clamps().map(c -> c.without(0))));
        assertEquals(Optional.of(Clamps.NOWHERE), now().clamps());
    }

    /** A clamp that holds changes how it buckles: the program does take it in. */
    @Test
    void aClampedPlaceMakesTheSheetStiffer() {
        bench.change(r -> r.withClamps(Optional.of(Clamps.NOWHERE)));
        settle();
        double free = bench.laidProperty().get().result().pieces().get(0).buckled().orElseThrow().blank().loadFactor();
        Laid laid = bench.laidProperty().get();
        for (double x : new double[] {-150, 0, 150}) for (double y : new double[] {-100, 100}) assertTrue(bench.hold(laid.onForm(x, y, 0)));
        settle();
        double held = bench.laidProperty().get().result().pieces().get(0).buckled().orElseThrow().blank().loadFactor();
        assertTrue(held >= free * (1 - 1e-9), held + " held, " + free + " free");
        assertTrue(held > 1.01 * free, held + " held, " + free + " free");
    }

    @Test
    void withoutMetalItIsSaidWhatIsMissing() {
        bench.change(r -> r.withMetal(Optional.empty()));
        settle();
        assertFalse(bench.hold(bench.laidProperty().get().onForm(0, 0, 0)));
        assertTrue(bench.troubleProperty().get().contains("alloy"), bench.troubleProperty().get());
    }

    @Test
    void alloysOfTheMakersOwn() throws Exception {
        int shipped = AlloyReader.shipped().list().size();
        assertEquals(shipped, bench.metalsProperty().get().size());
        Recipe before = now();
        Path table = Files.writeString(Files.createDirectories(temp.resolve("lists")).resolve("mine.yaml"), OWN);
        assertTrue(bench.ownAlloys(table), bench.troubleProperty().get());
        List<Metal> all = bench.metalsProperty().get();
        assertEquals(shipped + 2, all.size());
        assertEquals("scrap-yard sheet-soft", all.get(0).alloy().name());
        assertTrue(all.get(0).isOwn() && all.get(1).isOwn() && !all.get(2).isOwn());
        assertEquals("3003-O", now().metal().orElseThrow().alloy().name(), "the metal stays, now judged by the list's bands");
        assertEquals(0.002, now().metal().orElseThrow().bands().springsIn(), 1e-12);
        bench.change(r -> r.withMetal(Optional.of(all.get(1))));
        holds(2, before);
        assertEquals("door skin-as found", now().metal().orElseThrow().alloy().name());
        assertEquals(Optional.of("../lists/mine.yaml"), now().metal().orElseThrow().table());
        assertEquals(shipped + 2, bench.metalsProperty().get().size());
        assertTrue(bench.metalsProperty().get().contains(now().metal().get()), "saved elsewhere, the list names the file as the recipe does");
        bench.leaveOwnAlloys();
        assertEquals(Optional.empty(), now().metal(), "no such steel comes with the program");
        assertEquals(shipped, bench.metalsProperty().get().size());
        bench.undo();
        assertEquals(shipped + 2, bench.metalsProperty().get().size());
    }

    /** A list changed by hand is read anew where it is chosen again, and a metal of the program's own list stays when it is left. */
    @Test
    void aListChosenAgainIsReadAnew() throws Exception {
        Path table = Files.writeString(temp.resolve("mine.yaml"), OWN);
        bench.ownAlloys(table);
        Files.writeString(table, OWN.replace("scrap-yard", "better"));
        assertTrue(bench.ownAlloys(table));
        assertEquals("better sheet-soft", bench.metalsProperty().get().get(0).alloy().name());
        bench.leaveOwnAlloys();
        assertEquals(Optional.of(Metal.shipped("3003-O")), now().metal());
    }

    @Test
    void aListThatIsNoneChangesNothing() throws Exception {
        Recipe before = now();
        assertFalse(bench.ownAlloys(temp.resolve("gone.yaml")));
        assertTrue(bench.troubleProperty().get().startsWith("gone.yaml cannot be read"), bench.troubleProperty().get());
        assertFalse(bench.ownAlloys(Files.writeString(temp.resolve("bad.yaml"), OWN.replace("yield:", "yeild:"))));
        assertTrue(bench.troubleProperty().get().contains("bad.yaml:9:"), bench.troubleProperty().get());
        assertEquals(before, now());
        assertFalse(bench.canUndoProperty().get());
    }
}
