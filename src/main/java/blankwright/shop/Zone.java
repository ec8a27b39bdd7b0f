package blankwright.shop;

/**
 * A connected area with one instruction.
 *
 * <p>The instruction's strain is the larger principal strain in a stretch zone and the smaller in a shrink zone; where nothing is to be
 * done it is the larger in magnitude of the zone's mean.
 *
 * @param number from 1, in the order of area
 * @param area on the form, mm²
 * @param largestStrain engineering, at the vertex where the instruction's strain, averaged to vertices, is most: negative = shrink. The
 *     work map colours the same averages, so it shows no more of the instruction in the zone; one bad triangle hardly counts
 * @param meanStrain engineering, area-weighted mean of the instruction's log strain, whatever its direction
 * @param acrossStrain the same of the other principal strain, at right angles: a shrink zone may have to be stretched the other way
 * @param directionOnBlank of the instruction's strain in the mean tensor, rad, -π/2 < angle <= π/2
 * @param directionX with Y and Z the unit vector on the form into which it goes, mean over the zone
 * @param worst where the largest strain is: that vertex, with a triangle of the zone that holds it
 * @param label a place well inside the zone for its number
 * @param line the line its work is measured along, see {@link Zones}
 * @param verdict of the largest strain, or of its {@link Demand} where the metal is known; a zone to be left springs in
 */
public record Zone(int number, Instruction instruction, int triangles, double area, double largestStrain, double meanStrain,
        double acrossStrain, double directionOnBlank, double directionX, double directionY, double directionZ,
        Spot worst, Spot label, TapeLine line, Verdict verdict) {
    Zone withVerdict(Verdict other) {
        return new Zone(number, instruction, triangles, area, largestStrain, meanStrain, acrossStrain, directionOnBlank, directionX, directionY,
                directionZ, worst, label, line, other);
    }
}
