package blankwright.shape;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Table of checks section 14, values [C]: computed from the closed form and checked there by one-dimensional minimisation. */
class LeastSquaresMatchesTableTest {
    @ParameterizedTest
    @CsvSource({"10,.174311,.0038174,-.0019039,4.8452e-6", "20,.347283,.015387,-.007615,7.81164e-5", "30,.517534,.0350688,-.0171338,4.00532e-4",
        "45,.764568,.081262,-.038542,2.0869e-3", "60,.996560,.1507283,-.0684769,6.86830e-3", "90,1.386294,.386294,-.153426,3.9094e-2"})
    void cap(double degrees, double flatRadius, double rim, double middle, double energy) {
        LeastSquares answer = new SphericalCap(1, Math.toRadians(degrees)).truth().leastSquares().orElseThrow();
        assertEquals(flatRadius, answer.flatRadius(), 6e-7);
        assertEquals(rim, answer.rimStrain(), 6e-7);
        assertEquals(middle, answer.middleStrain(), 6e-7);
        assertEquals(energy, answer.meanEnergy(), energy * 2e-5);
    }

    /** Shop example: ball of 500 mm, arc radius 150 mm: rim 1.011335, middle .994375, blank radius 149.435 mm [C]. */
    @ParameterizedTest
    @CsvSource("500,150")
    void dish(double ball, double arc) {
        LeastSquares answer = new SphericalCap(ball, arc / ball).truth().leastSquares().orElseThrow();
        assertEquals(149.435, answer.flatRadius(), 5e-4);
        assertEquals(1.011335, 1 + answer.rimStrain(), 6e-7);
        assertEquals(.994375, 1 + answer.middleStrain(), 6e-7);
    }

    @ParameterizedTest
    @CsvSource({".5,-.030611,3.18823e-4", "1,-.115310,4.79532e-3"})
    void saddle(double c, double rim, double energy) {
        LeastSquares answer = LeastSquares.onSaddle(c, 1);
        assertEquals(rim, answer.rimStrain(), 6e-7);
        assertEquals(energy, answer.meanEnergy(), energy * 2e-5);
    }
}
