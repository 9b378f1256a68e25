// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class MediaRangeTest {
    @Test
    void readsParametersQuotedOrNot() {
        MediaRange plain = MediaRange.one("multipart/related; type=application/octet-stream; transfer-syntax=*");
        MediaRange quoted = MediaRange.one("multipart/related;type=\"application/octet-stream\";transfer-syntax=\"*\"");
        assertThat(plain).isEqualTo(quoted);
        assertThat(plain.inner()).isEqualTo("application/octet-stream");
    }

    @Test
    void keepsCommasAndSemicolonsInQuotesTogether() {
        MediaRange range = MediaRange.one("multipart/related; boundary=\"a,b;c\"");
        assertThat(range.parameter("boundary")).contains("a,b;c");
        assertThat(MediaRange.list("text/a; x=\"1,2\", text/b")).hasSize(2);
    }

    @Test
    void leavesOutWhatTheSenderRefuses() {
        assertThat(MediaRange.list("image/png;q=0, image/jpeg;q=0.5, image/gif; q=0.000"))
                .extracting(MediaRange::type)
                .containsExactly("image/jpeg");
    }

    @Test
    void coversTypesByWildcard() {
        assertThat(MediaRange.one("image/*").covers("image/png")).isTrue();
        assertThat(MediaRange.one("image/*").covers("application/dicom")).isFalse();
        assertThat(MediaRange.one("*/*").covers("application/dicom")).isTrue();
        assertThat(MediaRange.one("multipart/related").covers("application/dicom"))
                .isTrue();
        assertThat(MediaRange.one("multipart/related; type=\"image/*\"").covers("image/jls"))
                .isTrue();
    }

    @Test
    void coversEncodingsByNameOrAsterisk() {
        String range = "multipart/related; type=\"application/dicom\"";
        assertThat(MediaRange.one(range).coversSyntax("1.2.840.10008.1.2.5")).isTrue();
        assertThat(MediaRange.one(range + "; transfer-syntax=*").coversSyntax("1.2.840.10008.1.2.5"))
                .isTrue();
        assertThat(MediaRange.one(range + "; transfer-syntax=1.2.840.10008.1.2.1")
                        .coversSyntax("1.2.840.10008.1.2.5"))
                .isFalse();
    }

    @Test
    void survivesWhatIsNoMediaType() {
        for (String text : List.of("", ";", ",", "=", "\"", "a/b;=;x=", "multipart/related; type=\"", "a/b; ;;")) {
            assertThat(MediaRange.list(text))
                    .allSatisfy(range -> assertThat(range.type()).isNotNull());
        }
    }
}
