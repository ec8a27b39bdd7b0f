package blankwright.job;

import blankwright.flatten.Outcome;
import blankwright.mesh.FlatMap;
import blankwright.mesh.TriMesh;
import blankwright.mesh.cut.Opened;
import blankwright.mesh.cut.Seam;
import blankwright.shop.Demand;
import blankwright.shop.Flange;
import blankwright.shop.Fold;
import blankwright.shop.RolledArea;
import blankwright.shop.SheetThickness;
import blankwright.shop.Stations;
import blankwright.shop.ToolWork;
import blankwright.shop.Zones;
import blankwright.strain.Curvature;
import blankwright.strain.Developability;
import blankwright.strain.RimChange;
import blankwright.strain.StrainField;
import blankwright.strain.VertexStrain;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One connected part of the blank, in its place on the sheet, with all that was found out about it.
 *
 * @param outcome of the flattening; its map is the one before the pieces were laid side by side
 * @param strain of {@link #map}
 * @param rolled areas that are only bent, the largest first; none where the blank must not be cut
 * @param flanges edges that are turned; none where the blank must not be cut
 * @param folds straight ones that are no flanges; none where the blank must not be cut
 * @param curvature of the form before it was opened
 * @param opened the form, or its part between chosen seams, as it was laid flat, with its seams and the vertices it had before
 * @param holes rims besides the outer one
 * @param outline length of the outer rim on the blank, mm
 * @param tools what each does, where some are listed
 * @param thickness after forming, where that of the sheet is known
 * @param demand what the forming asks of the metal, where it and its thickness are known
 * @param overlaps true where the blank covers itself
 * @param buckled what it does unworked, where asked for
 * @param sensitivity how far it moves when what it is worked out from is a little off, where asked for
 */
public record Piece(Outcome outcome, StrainField strain, VertexStrain vertices, Developability developability, RimChange rim, Zones zones,
        Stations stations, List<RolledArea> rolled, List<Flange> flanges, List<Fold> folds, Curvature curvature, Opened opened, int holes, double outline, Optional<ToolWork> tools,
        Optional<SheetThickness> thickness, Optional<Demand> demand, boolean overlaps, Optional<Buckled> buckled,
        Optional<Sensitivity> sensitivity) {
    private static final double LEVEL = 1e-8;       // 1 less the cosine of a hundredth of a degree: 0.1 mm of crown on a metre are more

    public Piece {
        rolled = List.copyOf(rolled);
        flanges = List.copyOf(flanges);
        folds = List.copyOf(folds);
    }

    /** The piece in its place on the sheet. */
    public FlatMap map() {
        return strain.map();
    }

    public boolean converged() {
        return outcome instanceof Outcome.Converged;
    }

    /** Whether the form is flat already: all its triangles look the same way, within a hundredth of a degree in the mean. */
    public boolean isFlat() {
        TriMesh form = map().form();
        double[] all = new double[3];
        double area = 0;
        for (int t = 0; t < form.triangleCount(); t++) {
            double[] normal = form.normal(t);
            double a = form.area(t);
            area += a;
            for (int k = 0; k < 3; k++) all[k] += a * normal[k];
        }
        return Math.hypot(Math.hypot(all[0], all[1]), all[2]) >= (1 - LEVEL) * area;
    }

    /** Chosen ones first, each with the sides that belong to this piece; then those added so that it can lie flat. */
    public List<Seam> seams() {
        return opened.seams();
    }

    /** How many were added so that the form can lie flat. */
    public int addedSeams() {
        return (int) added().count();
    }

    /** Length of those, mm. */
    public double addedSeamLength() {
        return added().mapToDouble(Seam::length).sum();
    }

    private Stream<Seam> added() {
        return seams().stream().filter(seam -> seam.kind() == Seam.Kind.ADDED);
    }

    /** Largest and least thickness after forming as a factor of the sheet's: {least, largest}; {1, 1} where nothing is measured. */
    public double[] thicknessFactors() {
        double least = Double.POSITIVE_INFINITY, largest = 0;
        for (int t = 0; t < strain.triangleCount(); t++) {
            if (strain.degenerate(t)) continue;
            double factor = 1 / (strain.stretch1(t) * strain.stretch2(t));
            least = Math.min(least, factor);
            largest = Math.max(largest, factor);
        }
        return largest > 0 ? new double[] {least, largest} : new double[] {1, 1};
    }
}
