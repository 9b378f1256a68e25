// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dicom.TransferSyntax;
import dev.plumbline.dimse.Agreement.Answer;
import dev.plumbline.dimse.Agreement.Result;
import dev.plumbline.dimse.Association.Rejected;
import dev.plumbline.dimse.Proposal.RoleSelection;
import java.net.InetAddress;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Which associations are accepted, and what of them. Source: DICOM PS3.8, 7.1.1 and table 9-21; PS3.7, annex D.
 *
 * @param aeTitle ours, which must be the one that is called
 */
record Acceptance(String aeTitle, Callers callers) {
    private static final List<String> STORED_SYNTAXES =
            Arrays.stream(TransferSyntax.values()).map(TransferSyntax::uid).toList();

    Agreement judge(Proposal proposal, InetAddress from) throws Rejected {
        return judge(proposal, new Caller(from, Optional.empty()));
    }

    Agreement judge(Proposal proposal, Caller caller) throws Rejected {
        if (!proposal.applicationContext().equals(Proposal.DICOM_APPLICATION_CONTEXT)) {
            throw new Rejected(Rejection.APPLICATION_CONTEXT_NOT_SUPPORTED);
        }
        if (!proposal.titles().called().equals(aeTitle)) {
            throw new Rejected(Rejection.CALLED_AE_TITLE_NOT_RECOGNISED);
        }
        if (!callers.mayCall(proposal.titles().calling(), caller)) {
            throw new Rejected(Rejection.CALLING_AE_TITLE_NOT_RECOGNISED);
        }
        return new Agreement(
                proposal.titles(),
                proposal.contexts().stream().map(Acceptance::answer).toList(),
                Association.LONGEST_DATA_PDU,
                proposal.roles().stream().map(Acceptance::role).toList());
    }

    private static Answer answer(Proposal.Context context) {
        List<String> taken = syntaxes(context.abstractSyntax());
        if (taken.isEmpty()) {
            return new Answer(context.id(), Result.ABSTRACT_SYNTAX_NOT_SUPPORTED, "");
        }
        Optional<String> first =
                context.transferSyntaxes().stream().filter(taken::contains).findFirst();
        return first.map(syntax -> new Answer(context.id(), Result.ACCEPTANCE, syntax))
                .orElseGet(() -> new Answer(context.id(), Result.TRANSFER_SYNTAXES_NOT_SUPPORTED, ""));
    }

    /** None where the class is not known here. */
    static List<String> syntaxes(String abstractSyntax) {
        return switch (abstractSyntax) {
            case SopClass.VERIFICATION, SopClass.STORAGE_COMMITMENT -> SopClass.PLAIN_SYNTAXES;
            default -> abstractSyntax.startsWith(SopClass.STORAGE_ROOT) ? STORED_SYNTAXES : List.of();
        };
    }

    /** Peers report on commitment as its provider; for everything else they are users. */
    private static RoleSelection role(RoleSelection asked) {
        boolean commitment = asked.sopClass().equals(SopClass.STORAGE_COMMITMENT);
        return new RoleSelection(asked.sopClass(), !commitment && asked.user(), commitment && asked.provider());
    }
}
