// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

/** What a command says by its end. */
public final class ExitCode {
    public static final int YES = 0;
    public static final int NO = 1;
    public static final int BAD_INPUT = 2;
    public static final int OUR_FAULT = 3;

    private ExitCode() {}
}
