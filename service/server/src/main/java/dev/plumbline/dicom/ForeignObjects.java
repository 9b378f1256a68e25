// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.intake.ForeignObject;
import java.util.Optional;
import java.util.Set;

/** Which objects can carry marks of other software, and reading them. */
public final class ForeignObjects {
    /** SR documents with coordinates (PS3.3 A.35), and the two softcopy presentation states (A.33). */
    private static final Set<String> REPORTS = Set.of(
            "1.2.840.10008.5.1.4.1.1.88.22",
            "1.2.840.10008.5.1.4.1.1.88.33",
            "1.2.840.10008.5.1.4.1.1.88.34",
            "1.2.840.10008.5.1.4.1.1.88.35");

    private static final Set<String> STATES =
            Set.of("1.2.840.10008.5.1.4.1.1.11.1", "1.2.840.10008.5.1.4.1.1.11.2", "1.2.840.10008.5.1.4.1.1.11.8");

    private ForeignObjects() {}

    /** Whether objects of this class can carry marks. */
    public static boolean canCarryMarks(String sopClassUid) {
        return REPORTS.contains(sopClassUid) || STATES.contains(sopClassUid);
    }

    /**
     * The marks of an object; empty for one that this program wrote itself.
     *
     * @throws dev.plumbline.problem.Refusal where nothing can be taken from it, with the place
     */
    public static Optional<ForeignObject> read(DataSet object) {
        if (isOurs(object)) {
            return Optional.empty();
        }
        String sopClass = object.string(Tag.SOP_CLASS_UID).orElse("");
        return Optional.of(STATES.contains(sopClass) ? ForeignPresentation.read(object) : ForeignReport.read(object));
    }

    /** By its maker; what other software wrote of a record of ours is not ours. */
    private static boolean isOurs(DataSet object) {
        return object.string(Tag.MANUFACTURER)
                .filter(Installation.MANUFACTURER::equals)
                .isPresent();
    }
}
