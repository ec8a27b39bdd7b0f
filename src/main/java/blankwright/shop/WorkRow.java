package blankwright.shop;

import java.util.Arrays;
import java.util.List;

/**
 * One line of the list of work: a zone of a piece in the units of the bench, mm, degrees and percent.
 *
 * @param piece from 1
 * @param zone from 1 within the piece
 * @param takeInMm of the zone's line; null where the line is to be let out
 * @param letOutMm of the zone's line; null where it is to be taken in
 */
public record WorkRow(int piece, int zone, String todo, double areaMm2, double strainMaxPercent, double strainMeanPercent,
        double strainAcrossPercent, double directionDegOnBlank, double lineBlankMm, double lineFormMm, Double takeInMm,
        Double letOutMm, double u, double v, double x, double y, double z, String verdict) {
    /** Names of the columns, in the order of {@link #values}. */
    public static final List<String> COLUMNS = List.of("piece", "zone", "do", "area_mm2", "strain_max_percent", "strain_mean_percent",
            "strain_across_percent", "direction_deg_on_blank", "line_blank_mm", "line_form_mm", "take_in_mm", "let_out_mm", "u_mm", "v_mm",
            "x_mm", "y_mm", "z_mm", "verdict");

    static WorkRow of(int piece, Zone zone) {
        TapeLine line = zone.line();
        double change = line.change();
        return new WorkRow(piece, zone.number(), zone.instruction().word(), zone.area(), 100 * zone.largestStrain(),
                100 * zone.meanStrain(),
                100 * zone.acrossStrain(), Math.toDegrees(zone.directionOnBlank()), line.blankLength(), line.formLength(),
                change < 0 ? Double.valueOf(-change) : null, change < 0 ? null : Double.valueOf(change), zone.worst().u(), zone.worst().v(),
                zone.worst().x(), zone.worst().y(), zone.worst().z(), zone.verdict().words());
    }

    /** In the order of {@link #COLUMNS}; Integer, Double, String or null for what does not apply. */
    public List<Object> values() {
        return Arrays.asList(piece, zone, todo, areaMm2, strainMaxPercent, strainMeanPercent, strainAcrossPercent, directionDegOnBlank,
                lineBlankMm, lineFormMm, takeInMm, letOutMm, u, v, x, y, z, verdict);
    }
}
