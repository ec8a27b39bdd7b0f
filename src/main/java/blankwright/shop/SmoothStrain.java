package blankwright.shop;

import blankwright.mesh.TriMesh;
import blankwright.strain.VertexStrain;

/** Log strain per triangle, on the blank, as the mean of the tensors at its three corners: the field that zones and their lines follow. */
final class SmoothStrain {
    private final double[] mean;    // (Euu + Evv) / 2
    private final double[] c;       // (Euu - Evv) / 2
    private final double[] s;       // Euv

    private SmoothStrain(int n) {
        mean = new double[n];
        c = new double[n];
        s = new double[n];
    }

    static SmoothStrain of(TriMesh form, VertexStrain at) {
        SmoothStrain out = new SmoothStrain(form.triangleCount());
        for (int t = 0; t < out.mean.length; t++) {
            for (int k = 0; k < 3; k++) {
                int v = form.corner(t, k);
                out.mean[t] += (at.strainUu(v) + at.strainVv(v)) / 6;
                out.c[t] += (at.strainUu(v) - at.strainVv(v)) / 6;
                out.s[t] += at.strainUv(v) / 3;
            }
        }
        return out;
    }

    int triangleCount() {
        return mean.length;
    }

    double strain1(int t) {
        return mean[t] + Math.sqrt(c[t] * c[t] + s[t] * s[t]);
    }

    double strain2(int t) {
        return mean[t] - Math.sqrt(c[t] * c[t] + s[t] * s[t]);
    }

    /** Direction of strain1 on the blank, rad, -π/2..π/2. */
    double direction1(int t) {
        return Math.atan2(s[t], c[t]) / 2;
    }

    /** How much the strain prefers a direction, 0 (none) to 1 (one strain is 0, or they differ in sign). */
    double preference(int t) {
        double e1 = strain1(t), e2 = strain2(t), sum = Math.abs(e1) + Math.abs(e2);
        return sum > 0 ? (e1 - e2) / sum : 0;
    }
}
