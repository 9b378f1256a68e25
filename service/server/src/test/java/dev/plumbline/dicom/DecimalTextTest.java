// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecimalTextTest {
    @ParameterizedTest
    @CsvSource({
        "33.690067525979785, 33.6901",
        "0, 0",
        "-0.0, 0",
        "-31.248, -31.248",
        "100, 100",
        "1234567.5, 1234570",
        "0.0000123456789, 0.0000123457",
        "-1.23456789e-12, -1.23457E-12",
        "2.5, 2.5",
        // ties go to the even digit
        "1234565, 1234560",
        "1234575, 1234580"
    })
    void keepsSixSignificantDigits(double value, String decimal) {
        assertThat(Double.parseDouble(DecimalText.of(value))).isEqualTo(Double.parseDouble(decimal));
        assertThat(DecimalText.of(value)).hasSizeLessThanOrEqualTo(16).doesNotContain(",");
    }

    @Test
    void putsTheExactNumberBesideARoundedOne() {
        assertThat(DecimalText.measured(33.690067525979785, Codes.ucum("deg")).exact())
                .contains(33.690067525979785);
        assertThat(DecimalText.measured(2.5, Codes.ucum("mm")).exact()).isEmpty();
        assertThat(DecimalText.measured(33.690067525979785, Codes.ucum("deg")).value())
                .isEqualTo(33.690067525979785);
    }

    @Test
    void staysWithinSixteenCharactersForEveryMagnitude() {
        for (int exponent = -300; exponent <= 300; exponent++) {
            String text = DecimalText.of(-1.234567891 * Math.pow(10, exponent));
            assertThat(text).hasSizeLessThanOrEqualTo(16);
        }
    }
}
