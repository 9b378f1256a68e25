// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What an acceptor answers in A-ASSOCIATE-AC.
 *
 * @param maxPduBytes longest P-DATA-TF the acceptor wants to receive, 0 for any
 */
record Agreement(Proposal.AeTitles titles, List<Answer> answers, int maxPduBytes, List<Proposal.RoleSelection> roles) {
    Agreement {
        answers = List.copyOf(answers);
        roles = List.copyOf(roles);
    }

    /** The answer to one presentation context; the transfer syntax counts only where it is accepted. */
    record Answer(int id, Result result, String transferSyntax) {}

    /** Source: DICOM PS3.8, table 9-18. */
    enum Result {
        ACCEPTANCE(0, "accepted"),
        USER_REJECTION(1, "rejected by the peer"),
        NO_REASON(2, "rejected without a reason"),
        ABSTRACT_SYNTAX_NOT_SUPPORTED(3, "this kind of object or service is not supported"),
        TRANSFER_SYNTAXES_NOT_SUPPORTED(4, "none of the transfer syntaxes is supported");

        private final int code;
        private final String words;

        Result(int code, String words) {
            this.code = code;
            this.words = words;
        }

        static Optional<Result> of(int code) {
            return Arrays.stream(values()).filter(result -> result.code == code).findFirst();
        }

        int code() {
            return code;
        }

        String words() {
            return words;
        }
    }
}
