// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

/** What one line of a search answer stands for, from the widest to the narrowest. Source: DICOM PS3.18 10.6. */
public enum QueryLevel {
    STUDY,
    SERIES,
    INSTANCE
}
