// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class StrictJsonTest {
    @Test
    void refusesBytesThatLookLikeAnotherEncodingAndAreNone() {
        byte[] file = Arrays.copyOf(new byte[128], 147);
        System.arraycopy("DICM".getBytes(StandardCharsets.US_ASCII), 0, file, 128, 4);
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> StrictJson.read(file));
        assertThat(refusal.problem()).isInstanceOf(Problem.UnreadableDocument.class);
    }
}
