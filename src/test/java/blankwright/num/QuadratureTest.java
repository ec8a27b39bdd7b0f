package blankwright.num;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class QuadratureTest {
    @Test
    void knownIntegrals() {
        assertEquals(2, Quadrature.of(Math::sin, 0, Math.PI, 1), 1e-14);
        assertEquals(Math.PI / 4, Quadrature.of(x -> 1 / (1 + x * x), 0, 1, 2), 1e-15);
        assertEquals(-1 / 32.0, Quadrature.of(x -> Math.pow(x, 31), 1, 0, 1), 1e-15);
    }
}
