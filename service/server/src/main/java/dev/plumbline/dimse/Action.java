// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

/** What is done about an event. Source: DICOM PS3.8, tables 9-6 (AE), 9-7 (DT), 9-8 (AR), 9-9 (AA). */
enum Action {
    AE_1("Open the transport connection"),
    AE_2("Send A-ASSOCIATE-RQ"),
    AE_3("Tell that the association was accepted"),
    AE_4("Tell that the association was rejected, close"),
    AE_5("Answer the transport connection, start ARTIM"),
    AE_6("Stop ARTIM; judge the request: tell of it, or send A-ASSOCIATE-RJ and start ARTIM"),
    AE_7("Send A-ASSOCIATE-AC"),
    AE_8("Send A-ASSOCIATE-RJ, start ARTIM"),
    DT_1("Send P-DATA-TF"),
    DT_2("Tell of the data"),
    AR_1("Send A-RELEASE-RQ"),
    AR_2("Tell of the release request"),
    AR_3("Tell that the release is confirmed, close"),
    AR_4("Send A-RELEASE-RP, start ARTIM"),
    AR_5("Stop ARTIM"),
    AR_6("Tell of the data while a release is awaited"),
    AR_7("Send P-DATA-TF while a release is to be answered"),
    AR_8("Tell of the release collision"),
    AR_9("Send A-RELEASE-RP"),
    AR_10("Tell that the release is confirmed"),
    AA_1("Send A-ABORT of the service user, start or restart ARTIM"),
    AA_2("Stop ARTIM, close"),
    AA_3("Tell of the abort, close"),
    AA_4("Tell that the provider aborted"),
    AA_5("Stop ARTIM"),
    AA_6("Ignore the PDU"),
    AA_7("Send A-ABORT"),
    AA_8("Send A-ABORT of the service provider, tell of the abort, start ARTIM");

    private final String does;

    Action(String does) {
        this.does = does;
    }

    String does() {
        return does;
    }

    /** As the standard writes it, such as {@code AE-1}. */
    String title() {
        return name().replace('_', '-');
    }
}
