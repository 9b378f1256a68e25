// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

/** Types of the items inside association PDUs. Source: DICOM PS3.8, 9.3.2.1 to 9.3.3.3 and D.1; PS3.7, D.3.3. */
final class AssociateItem {
    static final int APPLICATION_CONTEXT = 0x10;
    static final int CONTEXT_RQ = 0x20;
    static final int CONTEXT_AC = 0x21;
    static final int ABSTRACT_SYNTAX = 0x30;
    static final int TRANSFER_SYNTAX = 0x40;
    static final int USER_INFORMATION = 0x50;
    static final int MAXIMUM_LENGTH = 0x51;
    static final int IMPLEMENTATION_CLASS_UID = 0x52;
    static final int ROLE_SELECTION = 0x54;
    static final int IMPLEMENTATION_VERSION_NAME = 0x55;

    /** Type, one reserved byte, length of what follows in two bytes. */
    static final int HEADER_BYTES = 4;

    private AssociateItem() {}
}
