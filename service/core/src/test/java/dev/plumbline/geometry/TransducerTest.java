// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class TransducerTest {
    private static final Foundation CHOSEN = new Foundation(Standing.CHOSEN, "for this test");

    private static Transducer.BeamThickness beam(double from, double to, double least, OptionalDouble most) {
        return new Transducer.BeamThickness(from, to, least, most, CHOSEN);
    }

    private static Transducer transducer(String id) {
        return new Transducer(
                id,
                Probe.Kind.LINEAR,
                new Transducer.Footprint(38, CHOSEN),
                new Transducer.Frequency(5, 12, CHOSEN),
                List.of(beam(0, 10, 2, OptionalDouble.empty()), beam(10, 20, 1, OptionalDouble.of(1))));
    }

    @Test
    void theBeamIsKnownAtTheDepthsItWasFoundFor() {
        Transducer linear = transducer("a");
        assertThat(linear.beamsAt(5)).containsExactly(linear.beams().get(0));
        assertThat(linear.beamsAt(10)).isEqualTo(linear.beams());
        assertThat(linear.beamsAt(20)).containsExactly(linear.beams().get(1));
        assertThat(linear.beamsAt(20.1)).isEmpty();
        assertThat(linear.beamsAt(-0.1)).isEmpty();
    }

    @Test
    void aTransducerIsFoundByItsName() {
        TransducerCatalogue catalogue = new TransducerCatalogue(List.of(transducer("a"), transducer("b")));
        assertThat(catalogue.byId("b")).contains(catalogue.transducers().get(1));
        assertThat(catalogue.byId("c")).isEmpty();
        List<Transducer> twice = List.of(transducer("a"), transducer("a"));
        assertThatThrownBy(() -> new TransducerCatalogue(twice)).hasMessageContaining("called a");
    }

    @Test
    void lengthsArePositiveAndFinite() {
        for (double mm : new double[] {0, -1, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> new Transducer.Footprint(mm, CHOSEN)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void aRangeOfFrequenciesRunsFromLowToHigh() {
        assertThat(new Transducer.Frequency(5, 5, CHOSEN).highMhz()).isEqualTo(5);
        for (double[] range :
                new double[][] {{0, 5}, {-1, 5}, {6, 5}, {5, Double.POSITIVE_INFINITY}, {Double.NaN, 5}}) {
            assertThatThrownBy(() -> new Transducer.Frequency(range[0], range[1], CHOSEN))
                    .isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void thicknessesAndDepthsRunUpwards() {
        assertThat(beam(10, 10, 1, OptionalDouble.of(1)).covers(10)).isTrue();
        for (double[] depths : new double[][] {{-1, 5}, {6, 5}, {5, Double.POSITIVE_INFINITY}, {Double.NaN, 5}}) {
            assertThatThrownBy(() -> beam(depths[0], depths[1], 1, OptionalDouble.empty()))
                    .isInstanceOf(IllegalArgumentException.class);
        }
        for (double[] thickness : new double[][] {{0, 1}, {2, 1}, {1, Double.NaN}}) {
            assertThatThrownBy(() -> beam(0, 5, thickness[0], OptionalDouble.of(thickness[1])))
                    .isInstanceOf(IllegalArgumentException.class);
        }
        assertThatThrownBy(() -> beam(0, 5, 0, OptionalDouble.empty())).isInstanceOf(IllegalArgumentException.class);
    }
}
