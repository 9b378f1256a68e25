// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.List;

/**
 * What a requestor asks for in A-ASSOCIATE-RQ.
 *
 * @param maxPduBytes longest P-DATA-TF the requestor wants to receive, 0 for any
 */
record Proposal(
        AeTitles titles,
        String applicationContext,
        List<Context> contexts,
        int maxPduBytes,
        List<RoleSelection> roles) {
    /** The only application context there is. Source: DICOM PS3.7, A.2.1. */
    static final String DICOM_APPLICATION_CONTEXT = "1.2.840.10008.3.1.1.1";

    Proposal {
        contexts = List.copyOf(contexts);
        roles = List.copyOf(roles);
    }

    /** Who is called and who calls. */
    record AeTitles(String called, String calling) {}

    /**
     * One presentation context.
     *
     * @param id odd, 1 to 255
     */
    record Context(int id, String abstractSyntax, List<String> transferSyntaxes) {
        Context {
            transferSyntaxes = List.copyOf(transferSyntaxes);
        }
    }

    /** SCP/SCU role selection. Source: DICOM PS3.7, D.3.3.4. */
    record RoleSelection(String sopClass, boolean user, boolean provider) {}
}
