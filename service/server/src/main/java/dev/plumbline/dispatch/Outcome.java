// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Dispatch.Answer;
import java.time.Duration;
import java.util.Optional;

/**
 * What came of one attempt with one object.
 *
 * @param answer the archive's own code and words
 * @param notBefore when the archive says how long to wait
 */
record Outcome(Verdict verdict, Answer answer, Optional<Duration> notBefore) {
    static Outcome of(Verdict verdict, String code, String words) {
        return new Outcome(verdict, new Answer(code, words), Optional.empty());
    }
}
