// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Shape;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class LimitWordsTest {
    @ParameterizedTest
    @EnumSource(Limit.Kind.class)
    void noLimitIsSaidByItsFieldName(Limit.Kind kind) {
        Limit limit = new Limit(kind, Optional.of("A1"));
        assertThat(limit.words()).doesNotContain(":").doesNotContain("leadIn").contains(" ");
        assertThat(limit.subject()).doesNotContain(":").contains(" ");
    }

    @Test
    void aNameStandsAsItWasGiven() {
        assertThat(new Limit(Limit.Kind.HAZARD, Optional.of("Artery 2")).words())
                .isEqualTo("the path comes too near to the hazard \"Artery 2\"");
        assertThat(new Limit(Limit.Kind.NERVE, Optional.of("median")).subject()).isEqualTo("the nerve \"median\"");
    }

    @Test
    void anImpossiblePlanIsSaidInWords() {
        CaseFixture fixture = new CaseFixture();
        fixture.hazards.add(
                new Hazard("artery", Hazard.Kind.ARTERY, OptionalDouble.of(25), new Shape.Disc(fixture.at(8, 20), 2)));
        fixture.needleLength = OptionalDouble.of(45);
        String text = Plan.of(fixture.input()).text();
        assertThat(text).startsWith("No entry fits the limits you set, for what you marked: the ");
        assertThat(text).doesNotContain("hazard:").doesNotContain("reach,");
    }
}
