// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

/** Element numbers of group 0000. Source: DICOM PS3.7, E.1. */
final class CommandElement {
    static final int GROUP_LENGTH = 0x0000;
    static final int AFFECTED_SOP_CLASS_UID = 0x0002;
    static final int REQUESTED_SOP_CLASS_UID = 0x0003;
    static final int COMMAND_FIELD = 0x0100;
    static final int MESSAGE_ID = 0x0110;
    static final int MESSAGE_ID_BEING_RESPONDED_TO = 0x0120;
    static final int PRIORITY = 0x0700;
    static final int COMMAND_DATA_SET_TYPE = 0x0800;
    static final int STATUS = 0x0900;
    static final int ERROR_COMMENT = 0x0902;
    static final int AFFECTED_SOP_INSTANCE_UID = 0x1000;
    static final int REQUESTED_SOP_INSTANCE_UID = 0x1001;
    static final int EVENT_TYPE_ID = 0x1002;
    static final int ACTION_TYPE_ID = 0x1008;
    static final int NUMBER_OF_FAILED_SUB_OPERATIONS = 0x1022;

    private CommandElement() {}
}
