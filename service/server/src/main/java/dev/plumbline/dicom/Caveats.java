// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Doubt;
import java.util.List;

/** Assumptions and doubts of a group: E-ASSUME and E-DOUBT. */
final class Caveats {
    private Caveats() {}

    static void add(MeasurementGroup group, List<Assumption> assumptions, List<Doubt> doubts) {
        assumptions.forEach(a -> group.says("E-ASSUME", Codes.ofWord("assumptions", a.word())));
        doubts.forEach(d -> group.says("E-DOUBT", Codes.ofWord("doubts", d.word())));
    }
}
