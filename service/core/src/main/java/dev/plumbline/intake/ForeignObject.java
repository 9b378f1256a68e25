// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.intake;

import java.util.List;

/**
 * A report or presentation state of other software, as far as marks go.
 *
 * @param uid SOP Instance UID
 * @param predecessors SOP Instance UIDs of the documents it says it replaces
 * @param marks in the order of the object
 */
public record ForeignObject(String uid, List<String> predecessors, List<ForeignMark> marks) {
    public ForeignObject {
        predecessors = List.copyOf(predecessors);
        marks = List.copyOf(marks);
    }
}
