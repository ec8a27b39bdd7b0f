package blankwright;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.spi.ToolProvider;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** The package map of DEVELOPERS.md as code: asks the JDK's own jdeps which room uses which. */
class RoomOrderTest {
    private record Room(String name, String mayUse) {
        Set<String> doors() {
            return mayUse.isEmpty() ? Set.of() : Set.of(mayUse.split(" "));
        }
    }

    private record Use(String room, String target) { }

    private static final List<Room> ROOMS = List.of(            // from the ground up
            new Room("num", ""),
            new Room("sparse", "num"),
            new Room("mesh", "num"),
            new Room("mesh.query", "num mesh"),
            new Room("mesh.io", "num mesh"),
            new Room("mesh.repair", "num mesh mesh.query"),
            new Room("mesh.reduce", "num mesh mesh.query"),
            new Room("mesh.cut", "num mesh mesh.query"),
            new Room("outline", "num"),
            new Room("shape", "num mesh outline"),
            new Room("flatten.energy", "num"),
            new Room("flatten", "num sparse mesh flatten.energy"),
            new Room("strain", "num mesh"),
            new Room("metal", "num"),
            new Room("metal.buckling", "num sparse mesh metal"),
            new Room("shop", "num mesh mesh.query outline strain metal"),
            new Room("drawing", "num outline"),
            new Room("sheet", "num mesh outline strain shop drawing"),
            new Room("picture", "num mesh outline strain metal shop drawing"),
            new Room("project", "num mesh.cut shape flatten metal shop"),
            new Room("job", "num mesh mesh.query mesh.io mesh.repair mesh.reduce mesh.cut outline shape flatten flatten.energy strain metal metal.buckling shop"
                    + " drawing sheet picture project"),
            new Room("cli", "num mesh strain metal shop drawing project job"),
            new Room("viewer.model", "num mesh mesh.query mesh.cut outline strain metal metal.buckling shop drawing picture project job"),
            new Room("viewer", "num mesh mesh.query mesh.cut outline strain metal metal.buckling shop drawing picture project job viewer.model"),
            new Room("", "cli viewer"));                        // Launcher

    private static final Map<String, Set<String>> LIBRARY_ONLY_IN = Map.ofEntries(
            Map.entry("javafx", Set.of("viewer", "viewer.model")),
            Map.entry("javafx.scene", Set.of("viewer")),
            Map.entry("atlantafx", Set.of("viewer")),
            Map.entry("org.kordamp", Set.of("viewer")),
            Map.entry("org.locationtech.jts", Set.of("outline", "shop")),
            Map.entry("org.apache.commons.math3", Set.of("num", "metal")),
            Map.entry("org.apache.commons.csv", Set.of("job")),
            Map.entry("org.apache.pdfbox", Set.of("drawing")),
            Map.entry("org.apache.fontbox", Set.of("drawing")),
            Map.entry("com.fasterxml.jackson", Set.of("project", "job")),
            Map.entry("picocli", Set.of("cli")),
            Map.entry("me.tongfei", Set.of("cli")));

    private static final List<Use> USES = new ArrayList<>();

    @BeforeAll
    static void askTheCompiledClasses() {
        StringWriter out = new StringWriter();
        ToolProvider.findFirst("jdeps").orElseThrow().run(new PrintWriter(out), new PrintWriter(out),
                "-verbose:package", "--ignore-missing-deps", "--multi-release", "base", "target/classes");
        for (String line : out.toString().split("\\R")) {
            String[] words = line.trim().split("\\s+");
            if (words.length > 2 && words[1].equals("->") && isOurs(words[0])) USES.add(new Use(room(words[0]), words[2]));
        }
        assertTrue(USES.size() > 3, "jdeps said nothing we understand:\n" + out);
    }

    @Test
    void noRowOfTheTableLooksDown() {
        Set<String> above = new HashSet<>();
        for (Room room : ROOMS) {
            assertTrue(above.containsAll(room.doors()), room + " names a room that is not above it");
            above.add(room.name());
        }
    }

    /** The table of DEVELOPERS.md is the one above. */
    @Test
    void thePageForDevelopersTellsTheSameOrder() throws java.io.IOException {
        List<String> told = new ArrayList<>(), meant = new ArrayList<>();
        for (String line : java.nio.file.Files.readAllLines(java.nio.file.Path.of("DEVELOPERS.md"))) {
            String[] cells = line.split("\\|", -1);
            if (cells.length == 5 && cells[1].strip().startsWith("`"))
                told.add(cells[1].strip().replace("`", "") + ": " + cells[3].strip().replace(",", ""));
        }
        for (Room room : ROOMS) meant.add((room.name().isEmpty() ? "Launcher" : room.name()) + ": " + room.mayUse());
        assertEquals(meant, told);
    }

    @Test
    void everyDoorBetweenRoomsIsInTheTable() {
        Map<String, Set<String>> doors = ROOMS.stream().collect(Collectors.toMap(Room::name, Room::doors));
        Set<String> wrong = new TreeSet<>();
        for (Use use : USES) {
            if (!doors.containsKey(use.room())) wrong.add(use.room() + " is not a room of the table");
            else if (isOurs(use.target()) && !use.room().equals(room(use.target())) && !doors.get(use.room()).contains(room(use.target())))
                wrong.add(use.room() + " -> " + room(use.target()));
        }
        assertEquals(Set.of(), wrong);
    }

    @Test
    void eachLibraryStaysInItsRooms() {
        Set<String> wrong = new TreeSet<>();
        for (Use use : USES) {
            LIBRARY_ONLY_IN.forEach((library, rooms) -> {
                if (use.target().startsWith(library) && !rooms.contains(use.room())) wrong.add(use.room() + " -> " + use.target());
            });
        }
        assertEquals(Set.of(), wrong);
    }

    @Test
    void everyRoomSaysWhichWayItsDoorsOpen() {
        for (String room : USES.stream().map(Use::room).filter(r -> !r.isEmpty()).collect(Collectors.toSet())) {
            var page = java.nio.file.Path.of("src/main/java/blankwright", room.replace('.', '/'), "package-info.java");
            assertTrue(java.nio.file.Files.exists(page), "missing " + page);
        }
    }

    private static boolean isOurs(String target) {
        return target.equals("blankwright") || target.startsWith("blankwright.");
    }

    private static String room(String packageName) {
        return Arrays.stream(packageName.split("\\.")).skip(1).collect(Collectors.joining("."));
    }
}
