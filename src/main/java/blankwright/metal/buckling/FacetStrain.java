package blankwright.metal.buckling;

import blankwright.mesh.TriMesh;

/** Principal strains written in the frame of each triangle, its first axis along its first edge. */
public final class FacetStrain {
    private FacetStrain() { }

    /**
     * @param larger principal strain of each triangle
     * @param smaller the one at right angles
     * @param direction 3 per triangle: unit vector on the form along the larger
     * @return 3 per triangle: exx, eyy, exy (tensor); zeros where a triangle has no area
     */
    public static double[] of(TriMesh form, double[] larger, double[] smaller, double[] direction) {
        double[] strain = new double[3 * form.triangleCount()];
        Facet f = new Facet();
        for (int t = 0; t < form.triangleCount(); t++) {
            if (f.of(form, t).empty) continue;
            double c = 0, s = 0;
            for (int i = 0; i < 3; i++) {
                c += f.axis[i] * direction[3 * t + i];
                s += f.axis[3 + i] * direction[3 * t + i];
            }
            strain[3 * t] = c * c * larger[t] + s * s * smaller[t];
            strain[3 * t + 1] = s * s * larger[t] + c * c * smaller[t];
            strain[3 * t + 2] = c * s * (larger[t] - smaller[t]);
        }
        return strain;
    }
}
