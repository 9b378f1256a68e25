// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

/** What a message asks for or answers. Source: DICOM PS3.7, E.1-1, Command Field. */
final class CommandField {
    static final int C_STORE_RQ = 0x0001;
    static final int C_GET_RQ = 0x0010;
    static final int C_FIND_RQ = 0x0020;
    static final int C_ECHO_RQ = 0x0030;
    static final int N_EVENT_REPORT_RQ = 0x0100;
    static final int N_ACTION_RQ = 0x0130;
    static final int C_CANCEL_RQ = 0x0FFF;

    /** Set in every answer, beside the number of what it answers. */
    static final int RESPONSE = 0x8000;

    private CommandField() {}
}
