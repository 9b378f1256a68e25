// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.problem.Problem;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class ProblemsTest {
    private static List<Class<? extends Problem>> problems() {
        return Arrays.stream(Problem.class.getPermittedSubclasses())
                .<Class<? extends Problem>>map(c -> c.asSubclass(Problem.class))
                .toList();
    }

    @Test
    void everyProblemHasARowNamedAfterIt() {
        assertThat(problems()).isNotEmpty();
        for (Class<? extends Problem> problem : problems()) {
            Problems.Row row = Problems.of(problem);
            String kebab = problem.getSimpleName().replaceAll("(?<=.)(?=[A-Z])", "-");
            assertThat(row.slug()).isEqualToIgnoringCase(kebab).isLowerCase();
            assertThat(row.type()).isEqualTo("urn:plumbline:problem:" + row.slug());
            assertThat(row.title()).isNotBlank();
            // What the sender can mend, or what only time or room can.
            assertThat(row.status()).matches(s -> (s >= 400 && s < 500) || s == 503 || s == 507);
        }
    }

    @Test
    void noTwoProblemsShareAType() {
        assertThat(problems().stream().map(p -> Problems.of(p).type())).doesNotHaveDuplicates();
    }
}
