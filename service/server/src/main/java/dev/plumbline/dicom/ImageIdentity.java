// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.procedure.Laterality;
import java.util.List;
import java.util.Optional;

/** What an image itself says about whose and which side it is. */
public final class ImageIdentity {
    private ImageIdentity() {}

    /** Whether the patient is named by identifier or name. Source: DICOM PS3.3 C.7.1.1. */
    public static boolean namesPatient(DataSet header) {
        return header.string(Tag.PATIENT_ID)
                .or(() -> header.string(Tag.PATIENT_NAME))
                .filter(text -> !text.isBlank())
                .isPresent();
    }

    /** The side stated. Source: DICOM PS3.3 C.7.6.1.1 Image Laterality, C.7.3.1 Laterality. */
    public static Optional<Laterality> side(DataSet header) {
        return header.string(Tag.IMAGE_LATERALITY)
                .or(() -> header.string(Tag.LATERALITY))
                .flatMap(side -> switch (side.strip()) {
                    case "R" -> Optional.of(Laterality.RIGHT);
                    case "L" -> Optional.of(Laterality.LEFT);
                    default -> Optional.empty();
                });
    }

    /** By identifier and issuer; where there is no identifier, by name and date of birth. */
    public static boolean samePatient(DataSet one, DataSet other) {
        return patient(one).equals(patient(other));
    }

    public static boolean sameStudy(DataSet one, DataSet other) {
        return one.string(Tag.STUDY_INSTANCE_UID).equals(other.string(Tag.STUDY_INSTANCE_UID));
    }

    private static List<String> patient(DataSet header) {
        String id = header.string(Tag.PATIENT_ID).orElse("");
        return id.isEmpty()
                ? List.of(
                        header.string(Tag.PATIENT_NAME).orElse(""),
                        header.string(Tag.PATIENT_BIRTH_DATE).orElse(""))
                : List.of(id, header.string(Tag.ISSUER_OF_PATIENT_ID).orElse(""));
    }
}
