// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.Agreement.Answer;
import dev.plumbline.dimse.Agreement.Result;
import dev.plumbline.dimse.Association.Negotiated;
import java.util.List;
import java.util.Optional;

/** The presentation contexts of an association: what was proposed and how that was answered. Source: PS3.8, 7.1.1.13. */
record Contexts(Proposal proposal, Agreement agreement) {
    /** The transfer syntax of an accepted presentation context. */
    Optional<String> transferSyntax(int contextId) {
        return agreement.answers().stream()
                .filter(answer -> answer.id() == contextId && answer.result() == Result.ACCEPTANCE)
                .map(Answer::transferSyntax)
                .findFirst();
    }

    String abstractSyntax(int contextId) {
        return proposal.contexts().stream()
                .filter(context -> context.id() == contextId)
                .map(Proposal.Context::abstractSyntax)
                .findFirst()
                .orElse("");
    }

    /** The first accepted context for an abstract syntax in one of the transfer syntaxes. */
    Optional<Negotiated> negotiated(String abstractSyntax, List<String> transferSyntaxes) {
        return proposal.contexts().stream()
                .filter(context -> context.abstractSyntax().equals(abstractSyntax))
                .flatMap(context -> transferSyntax(context.id()).stream()
                        .filter(transferSyntaxes::contains)
                        .map(syntax -> new Negotiated(context.id(), syntax)))
                .findFirst();
    }

    /** Why there is no context for an abstract syntax, in words. */
    String refusal(String abstractSyntax) {
        return proposal.contexts().stream()
                .filter(context -> context.abstractSyntax().equals(abstractSyntax))
                .flatMap(context -> agreement.answers().stream().filter(answer -> answer.id() == context.id()))
                .filter(answer -> answer.result() != Result.ACCEPTANCE)
                .map(answer -> answer.result().words())
                .findFirst()
                .orElse("not answered");
    }
}
