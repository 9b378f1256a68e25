// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.dimse.PeerFailure;
import dev.plumbline.dimse.Status;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VerdictsTest {
    /** The outcome table of the specification, C-STORE. */
    @ParameterizedTest
    @CsvSource({
        "0000, SENT",
        "B000, SENT_ALTERED",
        "B006, SENT_ALTERED",
        "B007, SENT_ALTERED",
        "A700, DESTINATION_LATER",
        "A7FF, DESTINATION_LATER",
        "0213, DESTINATION_LATER",
        "0110, RECORD_LATER",
        "A900, HELD",
        "A9FE, HELD",
        "C000, HELD",
        "CFFF, HELD",
        "0122, HELD",
        "0124, HELD",
        "0117, HELD",
        "0111, SENT_BEFORE",
        "1234, HELD"
    })
    void judgesEachStatus(String code, Verdict verdict) {
        assertThat(Verdicts.of(Status.of(Integer.parseInt(code, 16)))).isEqualTo(verdict);
    }

    @ParameterizedTest
    @CsvSource({
        "200, SENT",
        "202, SENT_BEFORE",
        "409, SENT_BEFORE",
        "301, HELD",
        "400, HELD",
        "401, HELD",
        "403, HELD",
        "413, HELD",
        "415, HELD",
        "422, HELD",
        "408, DESTINATION_LATER",
        "429, DESTINATION_LATER",
        "500, DESTINATION_LATER",
        "503, DESTINATION_LATER",
        "507, DESTINATION_LATER"
    })
    void judgesEachHttpStatus(int status, Verdict verdict) {
        assertThat(Verdicts.ofHttp(status)).isEqualTo(verdict);
    }

    @Test
    void everyStatusAndEveryFailureHasAVerdict() {
        assertThat(Arrays.stream(Status.values()).map(Verdicts::of)).doesNotContainNull();
        assertThat(Arrays.stream(PeerFailure.Kind.values()).map(Verdicts::of)).doesNotContainNull();
        assertThat(Verdicts.of(PeerFailure.Kind.CONTEXT_REFUSED)).isEqualTo(Verdict.HELD);
    }
}
