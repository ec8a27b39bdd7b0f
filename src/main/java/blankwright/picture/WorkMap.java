package blankwright.picture;

import blankwright.shop.Zone;
import java.util.ArrayList;
import java.util.List;

/**
 * The picture of what must be shrunk and stretched, once on the blank and once on the form, both in the same colours.
 *
 * <p>Landscape A4 at 300 elements an inch. Coloured is, at each place, the principal strain that is larger in size, as the zones take it.
 */
public final class WorkMap {
    private static final double PER_MM = 300 / 25.4;

    private final Caption caption;
    private final List<MapPiece> pieces;
    private final List<WorkField> fields;
    private final StrainScale scale;

    private WorkMap(Caption caption, List<MapPiece> pieces, List<WorkField> fields, StrainScale scale) {
        this.caption = caption;
        this.pieces = pieces;
        this.fields = fields;
        this.scale = scale;
    }

    /**
     * @param neutral strain the zones leave alone, engineering, 0 or above
     * @param pieces at least one, as they lie on the sheet without covering each other
     */
    public static WorkMap of(Caption caption, double neutral, List<MapPiece> pieces) {
        if (pieces.isEmpty()) throw new IllegalArgumentException("a work map of no piece");
        double ground = Math.max(neutral, 1e-6);
        List<WorkField> fields = pieces.stream().map(p -> WorkField.of(p.map(), p.strain(), ground)).toList();
        List<double[]> amounts = new ArrayList<>(fields.stream().map(WorkField::amounts).toList());
        // where both ways need work a zone's number may be the smaller of the two, which is not coloured: the scale must hold it too
        for (MapPiece piece : pieces) amounts.add(piece.worked().stream().mapToDouble(Zone::largestStrain).toArray());
        StrainScale scale = StrainScale.of(ground, amounts.toArray(double[][]::new));
        return new WorkMap(caption, List.copyOf(pieces), fields, scale);
    }

    /** The same map with its colours ending at another strain, engineering, above neutral ground. */
    public WorkMap withLimit(double end) {
        return new WorkMap(caption, pieces, fields, scale.withLimit(end));
    }

    /** Colours and limits of both pictures. */
    public StrainScale scale() {
        return scale;
    }

    /** What is coloured, one field for each piece in their order. */
    public List<WorkField> fields() {
        return List.copyOf(fields);
    }

    /** The pieces flat on the sheet, outside face up. */
    public Picture onBlank() {
        return drawnBlank().picture();
    }

    /** The form from several sides. */
    public Picture onForm() {
        return drawnForm().picture();
    }

    Canvas drawnBlank() {
        Canvas canvas = new Canvas(Frame.WIDTH, Frame.HEIGHT, PER_MM);
        new BlankPicture(canvas, scale, pieces, fields).draw(caption);
        return canvas;
    }

    Canvas drawnForm() {
        Canvas canvas = new Canvas(Frame.WIDTH, Frame.HEIGHT, PER_MM);
        new FormPicture(canvas, scale, pieces, fields).draw(caption);
        return canvas;
    }
}
