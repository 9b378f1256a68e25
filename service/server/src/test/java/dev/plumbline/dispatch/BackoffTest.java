// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class BackoffTest {
    @Test
    void doublesFromFiveSecondsUpToAQuarterOfAnHour() {
        Backoff even = new Backoff(() -> 0.5);
        assertThat(even.after(1)).isEqualTo(Duration.ofSeconds(5));
        assertThat(even.after(2)).isEqualTo(Duration.ofSeconds(10));
        assertThat(even.after(7)).isEqualTo(Duration.ofSeconds(320));
        assertThat(even.after(9)).isEqualTo(Duration.ofMinutes(15));
        assertThat(even.after(1_000_000)).isEqualTo(Duration.ofMinutes(15));
    }

    @Test
    void isShakenByAFifth() {
        assertThat(new Backoff(() -> 0).after(1)).isEqualTo(Duration.ofSeconds(4));
        assertThat(new Backoff(() -> 1).after(1)).isEqualTo(Duration.ofSeconds(6));
    }

    @Test
    void agesCanBeSaidOverTheTelephone() {
        assertThat(Ages.words(Duration.ofSeconds(59))).isEqualTo("less than a minute");
        assertThat(Ages.words(Duration.ofSeconds(60))).isEqualTo("1 minute");
        assertThat(Ages.words(Duration.ofMinutes(125))).isEqualTo("2 hours 5 minutes");
        assertThat(Ages.words(Duration.ofHours(49))).isEqualTo("2 days 1 hour");
        assertThat(Ages.words(Duration.ofSeconds(-5))).isEqualTo("less than a minute");
    }
}
