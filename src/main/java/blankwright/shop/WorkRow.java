package blankwright.shop;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * One line of the list of work: a zone of a piece in the units of the bench, mm, degrees and percent.
 *
 * @param piece from 1
 * @param zone from 1 within the piece
 * @param takeInMm of the zone's line; null where the line is to be let out
 * @param letOutMm of the zone's line; null where it is to be taken in
 * @param effectiveStrain with the rest null where the metal is not known
 * @param annealings also null where no number of them helps
 * @param standsOn the numbers of the verdict
 */
public record WorkRow(int piece, int zone, String todo, double areaMm2, double strainMaxPercent, double strainMeanPercent,
        double strainAcrossPercent, double directionDegOnBlank, double lineBlankMm, double lineFormMm, Double takeInMm,
        Double letOutMm, double u, double v, double x, double y, double z, String verdict, Double effectiveStrain, Double limitMargin,
        Integer annealings, Double thinnestMm, String standsOn) {
    /** Names of the columns, in the order of {@link #values}. */
    public static final List<String> COLUMNS = List.of("piece", "zone", "do", "area_mm2", "strain_max_percent", "strain_mean_percent",
            "strain_across_percent", "direction_deg_on_blank", "line_blank_mm", "line_form_mm", "take_in_mm", "let_out_mm", "u_mm", "v_mm",
            "x_mm", "y_mm", "z_mm", "verdict", "effective_strain", "limit_margin", "annealings", "thinnest_mm", "stands_on");

    static WorkRow of(int piece, Zone zone, Optional<Demand.OfZone> asked) {
        TapeLine line = zone.line();
        double change = line.change();
        return new WorkRow(piece, zone.number(), zone.instruction().word(), zone.area(), 100 * zone.largestStrain(),
                100 * zone.meanStrain(),
                100 * zone.acrossStrain(), Math.toDegrees(zone.directionOnBlank()), line.blankLength(), line.formLength(),
                change < 0 ? Double.valueOf(-change) : null, change < 0 ? null : Double.valueOf(change), zone.worst().u(), zone.worst().v(),
                zone.worst().x(), zone.worst().y(), zone.worst().z(), zone.verdict().words(), asked.map(Demand.OfZone::effective).orElse(null),
                asked.map(Demand.OfZone::margin).orElse(null), asked.map(WorkRow::annealings).orElse(null),
                asked.map(Demand.OfZone::thinnest).orElse(null), asked.map(a -> String.join("; ", a.judgement().basis())).orElse(null));
    }

    private static Integer annealings(Demand.OfZone asked) {
        int count = asked.judgement().annealings();
        return count == Judgement.BEYOND ? null : Integer.valueOf(count);
    }

    /** In the order of {@link #COLUMNS}; Integer, Double, String or null for what does not apply. */
    public List<Object> values() {
        return Arrays.asList(piece, zone, todo, areaMm2, strainMaxPercent, strainMeanPercent, strainAcrossPercent, directionDegOnBlank,
                lineBlankMm, lineFormMm, takeInMm, letOutMm, u, v, x, y, z, verdict,
                effectiveStrain, limitMargin, annealings, thinnestMm, standsOn);
    }
}
