// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.List;

/**
 * A presentation context to ask for.
 *
 * @param weProvide the role of the provider instead of the user's, as for objects that come back by C-GET
 */
public record Wanted(String abstractSyntax, List<String> transferSyntaxes, boolean weProvide) {
    public Wanted {
        transferSyntaxes = List.copyOf(transferSyntaxes);
    }

    /** As a user. */
    public static Wanted use(String abstractSyntax, List<String> transferSyntaxes) {
        return new Wanted(abstractSyntax, transferSyntaxes, false);
    }
}
