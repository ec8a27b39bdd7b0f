package blankwright.metal.buckling;

/**
 * How the two sides of a compressed strip are held, and what follows for the strain at which it gives way:
 * k π² / (12 (1 - ν²)) (t / b)², b its width, a its length.
 *
 * <p>k: Timoshenko and Gere 1961, Gerard and Becker 1957 (docs/sources.md [TG61], [GB57]), those of long strips where the length is not in
 * the formula; 6(1 - ν)/π² and 5.4097, 6.9709 computed from the Lévy solution. Beyond yield the strain is multiplied by Gerard and Becker's
 * factors over Es/E, from memory.
 */
public enum PlateEdges {
    /** Both run into metal that is not compressed. */
    SUPPORTED {
        @Override double k(double a, double b, double poisson) {
            double least = Double.POSITIVE_INFINITY;
            for (int m = 1; m <= 2 || m * b <= 2 * a && m < 50; m++) {
                double root = m * b / a + a / (m * b);
                least = Math.min(least, root * root);
            }
            return a >= 50 * b ? 4 : least;
        }

        @Override double yielded(double tangentOverSecant) {
            return 0.5 + 0.25 * Math.sqrt(1 + 3 * tangentOverSecant);
        }
    },
    /** One is held against turning, the other runs into calm metal. */
    ONE_HELD {
        @Override double k(double a, double b, double poisson) {
            return 5.4097;
        }

        @Override double yielded(double tangentOverSecant) {
            return HELD.yielded(tangentOverSecant);
        }
    },
    /** Both are held against turning. */
    HELD {
        @Override double k(double a, double b, double poisson) {
            return 6.9709;
        }

        @Override double yielded(double tangentOverSecant) {
            return 0.352 + 0.324 * Math.sqrt(1 + 3 * tangentOverSecant);
        }
    },
    /** One is a free edge of the sheet. */
    FREE {
        @Override double k(double a, double b, double poisson) {
            return 6 * (1 - poisson) / (Math.PI * Math.PI) + b * b / (a * a);
        }

        @Override double yielded(double tangentOverSecant) {
            return 1;
        }
    },
    /** One is a free edge, the other held against turning. */
    FREE_AND_HELD {
        /** Through the exact 1.3290, 1.2804, 1.2462 at ν = 0.25, 0.3, 1/3. */
        @Override double k(double a, double b, double poisson) {
            return poisson <= 0.3 ? 1.2804 - 0.972 * (poisson - 0.3) : 1.2804 - 1.026 * (poisson - 0.3);
        }

        @Override double yielded(double tangentOverSecant) {
            return 0.330 + 0.335 * Math.sqrt(1 + 3 * tangentOverSecant);
        }
    },
    /** Both are free: it bends along its length like a column, k = (b/a)² (1 - ν²). */
    COLUMN {
        @Override double k(double a, double b, double poisson) {
            return b * b / (a * a) * (1 - poisson * poisson);
        }

        @Override double yielded(double tangentOverSecant) {
            return 0.25 * (1 + 3 * tangentOverSecant);
        }
    };

    abstract double k(double a, double b, double poisson);

    /** Factor of the strain beyond yield, by Et/Es. */
    abstract double yielded(double tangentOverSecant);

    /** Elastic strain at which it gives way, no unit. */
    double strain(double a, double b, Sheet sheet) {
        double ratio = sheet.thickness() / b;
        return k(a, b, sheet.poisson()) * Math.PI * Math.PI / (12 * (1 - sheet.poisson() * sheet.poisson())) * ratio * ratio;
    }

    /**
     * The strain at which it gives way, yielding counted, from the elastic one.
     *
     * @return not above the elastic one by more than Poisson's ratio makes it, not below the strain at yield if the elastic one was above
     */
    double strainBeyondYield(double elastic, Sheet sheet) {
        if (elastic * sheet.youngs() <= sheet.yield()) return elastic;
        double v = sheet.poisson(), strain = elastic, yielding = sheet.yield() / sheet.youngs() * (1 + 1e-9);
        for (int i = 0; i < 40; i++) {
            double secant = sheet.secant(strain), p = sheet.poissonAt(secant);
            double next = elastic * (1 - v * v) / (1 - p * p) * yielded(sheet.tangent(strain) / secant);
            if (next <= yielding) return sheet.yield() / sheet.youngs();
            if (Math.abs(next - strain) <= 1e-10 * strain) break;
            strain = next;
        }
        return strain;
    }

    static PlateEdges of(boolean oneFree, boolean otherFree, boolean oneHeld, boolean otherHeld) {
        if (oneFree && otherFree) return COLUMN;
        if (oneFree || otherFree) return oneHeld || otherHeld ? FREE_AND_HELD : FREE;
        return oneHeld && otherHeld ? HELD : oneHeld || otherHeld ? ONE_HELD : SUPPORTED;
    }
}
