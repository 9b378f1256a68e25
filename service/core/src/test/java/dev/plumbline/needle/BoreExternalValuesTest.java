// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.needle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.geometry.Vectors;
import org.junit.jupiter.api.Test;

class BoreExternalValuesTest {
    @Test
    void pressureDropOfPublishedAndRecomputedExamples() {
        for (String[] row : Vectors.rows("poiseuille.csv", 5)) {
            Bore bore = new Bore(Double.parseDouble(row[1]), Double.parseDouble(row[2]));
            Bore.Flow flow = new Bore.Flow(Double.parseDouble(row[3]), Double.parseDouble(row[4]));
            assertThat(bore.pressureDropKPa(flow))
                    .as(row[0])
                    .isCloseTo(Double.parseDouble(row[5]), within(Double.parseDouble(row[6])));
        }
    }

    /** OpenStax, same module, first example: half the flow at 0.841 of the radius. */
    @Test
    void pressureGoesWithTheFourthPowerOfTheRadius() {
        Bore.Flow flow = new Bore.Flow(1, 10);
        double ratio = new Bore(0.841 * 0.4, 50).pressureDropKPa(flow) / new Bore(0.4, 50).pressureDropKPa(flow);
        assertThat(ratio).isCloseTo(2, within(0.005));
    }

    @Test
    void refusesABoreThatIsNone() {
        assertThatThrownBy(() -> new Bore(0, 50)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Bore(0.4, Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }
}
