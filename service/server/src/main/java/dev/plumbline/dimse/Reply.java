// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

/**
 * What a message is answered with.
 *
 * @param status DICOM PS3.7 annex C and the service's own in PS3.4
 * @param comment in words, "" where there is nothing to say; never patient data
 */
public record Reply(int status, String comment) {
    /** Done. */
    public static final Reply SUCCESS = new Reply(Status.SUCCESS.code(), "");

    public static Reply of(Status status, String comment) {
        return new Reply(status.code(), comment);
    }

    public boolean isSuccess() {
        return status == Status.SUCCESS.code();
    }

    /** Four hexadecimal digits. */
    public String code() {
        return String.format("%04X", status);
    }
}
