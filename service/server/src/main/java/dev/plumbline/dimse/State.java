// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

/** Where an association is. Source: DICOM PS3.8, tables 9-1 to 9-5; the names are the standard's. */
enum State {
    STA1("Idle"),
    STA2("Transport connection open, awaiting A-ASSOCIATE-RQ"),
    STA3("Awaiting the local answer to an association request"),
    STA4("Awaiting the transport connection to open"),
    STA5("Awaiting A-ASSOCIATE-AC or A-ASSOCIATE-RJ"),
    STA6("Association established, ready for data transfer"),
    STA7("Awaiting A-RELEASE-RP"),
    STA8("Awaiting the local answer to a release request"),
    STA9("Release collision, requestor side, awaiting the local answer"),
    STA10("Release collision, acceptor side, awaiting A-RELEASE-RP"),
    STA11("Release collision, requestor side, awaiting A-RELEASE-RP"),
    STA12("Release collision, acceptor side, awaiting the local answer"),
    STA13("Awaiting the transport connection to close");

    private final String meaning;

    State(String meaning) {
        this.meaning = meaning;
    }

    String meaning() {
        return meaning;
    }
}
