// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

/** Through which door a document comes; a file of this machine may be named on the command line only. */
public enum Door {
    CLI,
    HTTP
}
