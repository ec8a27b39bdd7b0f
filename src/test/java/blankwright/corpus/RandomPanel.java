package blankwright.corpus;

import static blankwright.corpus.Mutations.between;
import static java.lang.Math.toRadians;

import blankwright.mesh.TriMesh;
import blankwright.shape.Catenoid;
import blankwright.shape.ConeFrustum;
import blankwright.shape.CrownedPanel;
import blankwright.shape.Cylinder;
import blankwright.shape.EllipsoidalCap;
import blankwright.shape.Fineness;
import blankwright.shape.FlangeStrip;
import blankwright.shape.FlangedOpening;
import blankwright.shape.Helicoid;
import blankwright.shape.Hole;
import blankwright.shape.ObliqueCone;
import blankwright.shape.Panel;
import blankwright.shape.Saddle;
import blankwright.shape.SphericalCap;
import blankwright.shape.TorusSection;
import blankwright.shape.TwistedPanel;
import blankwright.shape.UnfitValue;
import java.util.List;
import java.util.Random;

/** Every kind of panel a recipe can name, of random measures. */
final class RandomPanel {
    static final int KINDS = 16;

    private RandomPanel() { }

    /** Throws again where the measures contradict each other. */
    static TriMesh of(int kind, int triangles, Random random) {
        while (true) {
            try {
                return panel(kind % KINDS, random).mesh(Fineness.triangles(triangles));
            } catch (UnfitValue notMade) {
                continue;
            }
        }
    }

    private static Panel panel(int kind, Random r) {
        return switch (kind) {
            case 0 -> new Cylinder(between(r, 20, 400), between(r, 30, 900), toRadians(between(r, 10, 360)));
            case 1 -> new Cylinder(between(r, 20, 400), between(r, 30, 900), toRadians(360), Cylinder.Ends.values()[r.nextInt(3)]);
            case 2 -> new ConeFrustum(between(r, 100, 300), between(r, 1, 95), between(r, 10, 400), toRadians(between(r, 20, 359)));
            case 3 -> new ObliqueCone(between(r, 100, 200), between(r, 5, 90), between(r, 60, 300), between(r, 0, 90), 0,
                    toRadians(between(r, 30, 340)));
            case 4 -> new SphericalCap(between(r, 100, 900), toRadians(between(r, 3, 130)));
            case 5 -> new EllipsoidalCap(between(r, 50, 400), between(r, 50, 400), between(r, 60, 400), toRadians(between(r, 20, 130)));
            case 6 -> new TorusSection(between(r, 150, 400), between(r, 20, 140), toRadians(between(r, 10, 320)), toRadians(between(r, 10, 270)),
                    toRadians(between(r, -180, 180)));
            case 7 -> new Saddle(between(r, 100, 400), between(r, 50, 500));
            case 8 -> new CrownedPanel(between(r, 200, 900), between(r, 200, 900), between(r, -60, 90), between(r, 0, 90));
            case 9 -> new CrownedPanel(between(r, 500, 900), between(r, 300, 600), between(r, -20, 40), between(r, 0, 40),
                    new CrownedPanel.Step(between(r, 1, 6), between(r, 10, 30), between(r, 0, 4), toRadians(between(r, 20, 80))),
                    List.of(Hole.round(between(r, -150, -60), between(r, -60, 60), between(r, 5, 90)),
                            new Hole(between(r, 60, 150), between(r, -60, 60), between(r, 10, 90), between(r, 10, 90))));
            case 10 -> new FlangeStrip(between(r, 80, 400), toRadians(between(r, 10, 300)), between(r, 10, 40), between(r, 8, 30), between(r, 0, 6),
                    toRadians(between(r, 20, 140)), FlangeStrip.Edge.CONVEX);
            case 11 -> new FlangeStrip(between(r, 80, 400), toRadians(between(r, 10, 300)), between(r, 10, 40), between(r, 8, 30), between(r, 0, 6),
                    toRadians(between(r, 20, 140)), FlangeStrip.Edge.CONCAVE);
            case 12 -> new FlangedOpening(between(r, 300, 700), between(r, 300, 600), between(r, 0, 60), between(r, 0, 60), between(r, 80, 280),
                    between(r, 80, 280), between(r, 5, 25), between(r, 0, 6), toRadians(between(r, 20, 95)));
            case 13 -> new TwistedPanel(between(r, 100, 600), between(r, 100, 600), between(r, 5, 300));
            case 14 -> new Catenoid(between(r, 40, 200), between(r, -200, -10), between(r, 10, 200), toRadians(between(r, 20, 350)));
            default -> new Helicoid(between(r, 20, 200), between(r, -200, -10), between(r, 10, 200), toRadians(between(r, 20, 720)));
        };
    }
}
