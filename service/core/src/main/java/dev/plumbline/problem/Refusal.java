// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.problem;

/** The one exception for input that the caller can mend; it carries the {@link Problem}. */
public final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    public Refusal(Problem problem) {
        super(problem.detail() + " " + problem.remedy());
        this.problem = problem;
    }

    public Problem problem() {
        return problem;
    }
}
