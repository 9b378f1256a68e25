// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestNameTest {
    @Test
    void editsAreCounted() {
        assertThat(NearestName.edits("kitten", "sitting")).isEqualTo(3);
        assertThat(NearestName.edits("", "abc")).isEqualTo(3);
        assertThat(NearestName.edits("MarkPX", "markPx")).isZero();
    }

    @Test
    void nothingIsNearWhenNothingIsShared() {
        assertThat(NearestName.of("zzz", List.of("gauge"))).isEmpty();
        assertThat(NearestName.of("gage", List.of("lengthMm", "gauge"))).contains("gauge");
    }

    @Test
    void aNameIsNearOnlyWhereHalfOfItIsShared() {
        assertThat(NearestName.of("handedness", List.of("needleSide", "kind"))).isEmpty();
        assertThat(NearestName.of("entryDistance", List.of("entryDistanceMm", "entry")))
                .contains("entryDistanceMm");
    }
}
