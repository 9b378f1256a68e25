// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.Context;
import java.util.Optional;
import java.util.stream.Collectors;

/** Blocks by the word of the case document, from the code master file. */
final class Blocks {
    private static final String SET = "blocks";

    private Blocks() {}

    /**
     * The block of the case.
     *
     * @throws Refusal when the word stands for no block of the code master file
     */
    static Optional<Codes.Entry> of(Context context) {
        return context.block().map(word -> Codes.forWord(SET, word).orElseThrow(() -> unknown()));
    }

    static Code site(Codes.Entry block) {
        return Codes.named(block.text("site").orElseThrow());
    }

    private static Refusal unknown() {
        String words = Codes.set(SET).entries().stream()
                .flatMap(entry -> entry.word().stream())
                .sorted()
                .collect(Collectors.joining(", "));
        return new Refusal(new Problem.InvalidValue(
                "/context/block", "The record has no code for this block.", "Give one of " + words + "."));
    }
}
