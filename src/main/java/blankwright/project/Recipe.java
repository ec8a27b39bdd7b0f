package blankwright.project;

import blankwright.mesh.cut.DrawnSeam;
import blankwright.num.LengthUnit;
import blankwright.num.Lengths;
import blankwright.num.Sentence;
import blankwright.num.Unfit;
import blankwright.shape.Fineness;
import blankwright.shape.Panel;
import blankwright.shop.DrawnTape;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is to be made and how. Immutable; lengths in mm.
 *
 * @param name of the panel, not blank
 * @param chord largest distance of a formula's triangles from its skin; without meaning for a mesh file
 * @param detail how far the surface may stray from a mesh file's where its triangles are thinned out; 0 keeps every triangle, empty
 *               thins out only what is far denser than any work needs
 * @param thickness of the sheet, where known
 * @param face which side of the sheet the form is; outside and inside need a thickness
 * @param stations spacing of the station lines, above 0
 * @param trim metal left on beyond the finished edge, above 0; empty where none
 * @param notes free text, may be empty
 * @param seams where the maker wants the form cut, in its own coordinates
 * @param metal of the sheet, where known
 * @param handwork lean and tools; without meaning for another aim than work
 * @param clamps where the sheet is held while it is bent onto its form: asks how it buckles if it is not worked; needs metal and thickness
 * @param scales where the colours of the maps end
 * @param tapes laid over the panel by hand, in the coordinates of the form
 * @param sensitivity true asks how far the blank moves when what it is worked out from is a little off: several flattenings more
 */
public record Recipe(String name, Source source, double chord, OptionalDouble detail, OptionalDouble thickness, Face face, Aim aim,
                     double stations, OptionalDouble trim, Optional<Hand> hand, String notes, List<DrawnSeam> seams, Optional<Metal> metal,
                     Handwork handwork, Optional<Clamps> clamps, Scales scales, List<DrawnTape> tapes, boolean sensitivity) {
    /** The version this program writes, and the latest it reads. */
    public static final int VERSION = 1;
    /** Station lines every 100 mm, where nothing is said. */
    public static final double USUAL_STATIONS = 100;
    /** mm; nothing thicker is worked by hand, and a bare 16 or 18 is a gauge number. */
    private static final double THICKEST = 10;

    public Recipe {
        seams = List.copyOf(seams);
        tapes = List.copyOf(tapes);
        if (name.isBlank()) throw new IllegalArgumentException("name: must not be empty");
        within("chord", chord, 1e-4, 50);
        within("stations", stations, 1, 10_000);
        if (detail.isPresent() && detail.getAsDouble() != 0) within("detail", detail.getAsDouble(), 1e-3, 10);
        if (thickness.isPresent()) within("thickness", thickness.getAsDouble(), 0.01, THICKEST);
        if (trim.isPresent()) within("trim", trim.getAsDouble(), 0.1, 500);
        if (face != Face.MIDDLE && thickness.isEmpty())
            throw new IllegalArgumentException("face " + face.word() + " needs the thickness of the sheet");
        if (clamps.isPresent() && (thickness.isEmpty() || metal.isEmpty()))
            throw new IllegalArgumentException("clamped asks how the sheet buckles, which needs its alloy and its thickness");
    }

    /** A formula with everything else as usual. */
    public static Recipe of(String name, Panel panel) {
        return of(name, new Source.OfPanel(panel));
    }

    /** A mesh file, as the command line gives it, with everything else as usual. */
    public static Recipe ofMesh(String name, String file, Optional<LengthUnit> units) {
        return of(name, new Source.OfMesh(file, units));
    }

    private static Recipe of(String name, Source source) {
        return new Recipe(name, source, Fineness.USUAL.chord(), OptionalDouble.empty(), OptionalDouble.empty(), Face.MIDDLE, Aim.EVEN,
                USUAL_STATIONS, OptionalDouble.empty(), Optional.empty(), "", List.of(), Optional.empty(), Handwork.ANY,
                Optional.empty(), Scales.USUAL, List.of(), false);
    }

    public Recipe withName(String other) {
        return new Recipe(other, source, chord, detail, thickness, face, aim, stations, trim, hand, notes, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withSource(Source other) {
        return new Recipe(name, other, chord, detail, thickness, face, aim, stations, trim, hand, notes, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withChord(double mm) {
        return new Recipe(name, source, mm, detail, thickness, face, aim, stations, trim, hand, notes, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withDetail(OptionalDouble mm) {
        return new Recipe(name, source, chord, mm, thickness, face, aim, stations, trim, hand, notes, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    /** The sheet: its thickness and the side the form is. */
    public Recipe withSheet(OptionalDouble thicknessMm, Face side) {
        return new Recipe(name, source, chord, detail, thicknessMm, side, aim, stations, trim, hand, notes, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withAim(Aim other) {
        return new Recipe(name, source, chord, detail, thickness, face, other, stations, trim, hand, notes, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withStations(double mm) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, mm, trim, hand, notes, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withTrim(OptionalDouble mm) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, mm, hand, notes, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withHand(Optional<Hand> side) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, trim, side, notes, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withNotes(String text) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, trim, hand, text, seams, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withSeams(List<DrawnSeam> drawn) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, trim, hand, notes, drawn, metal, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withMetal(Optional<Metal> other) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, trim, hand, notes, seams, other, handwork,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withHandwork(Handwork other) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, trim, hand, notes, seams, metal, other,
                clamps, scales, tapes, sensitivity);
    }

    public Recipe withClamps(Optional<Clamps> held) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, trim, hand, notes, seams, metal, handwork,
                held, scales, tapes, sensitivity);
    }

    public Recipe withScales(Scales ends) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, trim, hand, notes, seams, metal, handwork,
                clamps, ends, tapes, sensitivity);
    }

    public Recipe withTapes(List<DrawnTape> laid) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, trim, hand, notes, seams, metal, handwork,
                clamps, scales, laid, sensitivity);
    }

    public Recipe withSensitivity(boolean asked) {
        return new Recipe(name, source, chord, detail, thickness, face, aim, stations, trim, hand, notes, seams, metal, handwork,
                clamps, scales, tapes, asked);
    }

    private static void within(String key, double mm, double low, double high) {
        if (!(mm >= low && mm <= high))
            throw new Unfit("%s %s: must be %s to %s; check the unit%s", key, Sentence.typed(mm), Sentence.typed(low), Sentence.typed(high),
                    key.equals("thickness") ? ", and measure the sheet: a gauge number is no thickness" : "");
    }
}
