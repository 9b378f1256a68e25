// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WordsTest {
    /** As the number is read aloud after rounding: eight, eleven, eighteen, eighty to eighty-nine. */
    @ParameterizedTest
    @CsvSource({
        "8, an",
        "11, an",
        "18, an",
        "80, an",
        "89, an",
        "79.5, an",
        "7, a",
        "9, a",
        "10, a",
        "12, a",
        "50, a",
        "79.4, a",
        "90, a",
        "100, a",
        "110, a"
    })
    void theArticleGoesWithTheNumberThatIsRead(double mm, String article) {
        assertThat(Words.article(mm)).isEqualTo(article);
    }

    /** The smallest whole numbers whose arctangent comes within a degree; at most 12 along and 5 down. */
    @ParameterizedTest
    @CsvSource({
        "45, '1 along, 1 down'",
        "26.565, '2 along, 1 down'",
        "63.435, '1 along, 2 down'",
        "33.69, '3 along, 2 down'",
        "60, '3 along, 5 down'",
        "78.69, '1 along, 5 down'",
        "85, '1 along, 5 down'",
        "88.9, '1 along, 5 down'",
        "9.46, '6 along, 1 down'",
        "5, '10 along, 1 down'",
        "3, '12 along, 1 down'",
        "20, '8 along, 3 down'"
    })
    void theSlopeIsTheSmallestThatComesNear(double degrees, String slope) {
        assertThat(Words.slope(degrees)).isEqualTo(slope);
    }

    @Test
    void withinADegreeOfUprightIsStraightDown() {
        assertThat(Words.slope(90)).isEqualTo("straight down");
        assertThat(Words.slope(89.1)).isEqualTo("straight down");
        assertThat(Words.slope(88.9)).isNotEqualTo("straight down");
    }

    @Test
    void millimetresAndAnglesAreRounded() {
        assertThat(Words.mm(12.5)).isEqualTo("13 mm");
        assertThat(Words.mm(12.4)).isEqualTo("12 mm");
        assertThat(Words.degrees(33.69)).isEqualTo("35\u00b0");
        assertThat(Words.degrees(32.4)).isEqualTo("30\u00b0");
    }
}
