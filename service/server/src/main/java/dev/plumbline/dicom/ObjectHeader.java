// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Order;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Uids;
import java.time.OffsetDateTime;
import java.util.List;

/**
 * What every object of a record says before it says anything: SOP Common, Patient, General Study, Patient Study, Series and
 * Equipment modules, DICOM PS3.3 C.12.1, C.7.1.1, C.7.2, C.7.3.1, C.17.1, C.7.5.1.
 *
 * <p>Patient and study are those of the frame, as text for ISO_IR 192 whatever character set the frame is in. The equipment
 * is this program, never the scanner.
 */
final class ObjectHeader {
    private static final int NUMBERS_PER_REVISION = 100;
    private static final int[] TYPE_2 = {
        Tag.PATIENT_NAME,
        Tag.PATIENT_ID,
        Tag.PATIENT_BIRTH_DATE,
        Tag.PATIENT_SEX,
        Tag.STUDY_DATE,
        Tag.STUDY_TIME,
        Tag.ACCESSION_NUMBER,
        Tag.REFERRING_PHYSICIAN_NAME,
        Tag.STUDY_ID
    };
    private static final int[] TYPE_3 = {
        Tag.ISSUER_OF_PATIENT_ID, Tag.STUDY_DESCRIPTION, Tag.PATIENT_AGE, Tag.PATIENT_SIZE, Tag.PATIENT_WEIGHT
    };

    /** One kind of object of a record; each has a series of its own. */
    enum Kind {
        REPORT("sr", "1.2.840.10008.5.1.4.1.1.88.33", "SR", 901, "Needle path record"),
        ANNOTATED_FRAME("sc", "1.2.840.10008.5.1.4.1.1.7", "US", 902, "Needle path on frames"),
        GREY_PRESENTATION("pr", "1.2.840.10008.5.1.4.1.1.11.1", "PR", 903, "Needle path as graphics"),
        COLOUR_PRESENTATION("pr", "1.2.840.10008.5.1.4.1.1.11.2", "PR", 903, "Needle path as graphics"),
        PDF("pdf", "1.2.840.10008.5.1.4.1.1.104.1", "DOC", 904, "Needle path record, readable"),
        KEY_OBJECTS("ko", "1.2.840.10008.5.1.4.1.1.88.59", "KO", 905, "Needle path record, key objects"),
        REJECTION_NOTE("rn", "1.2.840.10008.5.1.4.1.1.88.59", "KO", 906, "Needle path record, withdrawal");

        private final String part;
        private final String sopClassUid;
        private final String modality;
        private final int seriesNumber;
        private final String description;

        Kind(String part, String sopClassUid, String modality, int seriesNumber, String description) {
            this.part = part;
            this.sopClassUid = sopClassUid;
            this.modality = modality;
            this.seriesNumber = seriesNumber;
            this.description = description;
        }

        /** Of the only object of its kind, and of the kind's series. */
        String part() {
            return part;
        }

        String part(int number) {
            return part + "/" + number;
        }

        String sopClassUid() {
            return sopClassUid;
        }
    }

    private ObjectHeader() {}

    /**
     * What an object comes from.
     *
     * @param begun when its series began
     */
    record Origin(String caseId, int revision, OffsetDateTime time, OffsetDateTime begun, Installation installation) {}

    /** @param part of the record, such as {@code sr} or {@code sc/1} */
    static DataSet of(RecordSource source, Kind kind, String part) {
        RecordRevision revision = source.revision();
        Origin origin = new Origin(
                revision.caseId(), revision.revision(), revision.time(), revision.begun(), source.installation());
        DataSet object = of(origin, source.planned().frame().header(), kind, part);
        revision.document().context().order().ifPresent(order -> order(object, order, kind));
        return object;
    }

    /** The order's attributes add to those of the frame; the series of a report or of key objects cannot name a request. */
    private static void order(DataSet object, Order order, Kind kind) {
        OrderAttributes.patientAndStudy(object, order);
        if (kind != Kind.REPORT && kind != Kind.KEY_OBJECTS) {
            OrderAttributes.requestAttributes(object, order);
        }
    }

    /** @param subject any object of the same patient and study */
    static DataSet of(Origin origin, DataSet subject, Kind kind, String part) {
        Timestamp time = new Timestamp(origin.time());
        DataSet object = new DataSet()
                .put(Tag.SPECIFIC_CHARACTER_SET, "ISO_IR 192")
                .put(Tag.INSTANCE_CREATION_DATE, time.date())
                .put(Tag.INSTANCE_CREATION_TIME, time.timeOfDay())
                .put(Tag.TIMEZONE_OFFSET_FROM_UTC, time.offset())
                .put(Tag.SOP_CLASS_UID, kind.sopClassUid)
                .put(Tag.SOP_INSTANCE_UID, Uids.instance(origin.caseId(), origin.revision(), part));
        patientAndStudy(object, subject);
        series(object, kind, origin.caseId());
        Timestamp begun =
                new Timestamp(origin.begun().withOffsetSameInstant(origin.time().getOffset()));
        object.put(Tag.SERIES_DATE, begun.date()).put(Tag.SERIES_TIME, begun.timeOfDay());
        equipment(object, origin.installation());
        return object;
    }

    /** Laterality (0020,0060) of the case; empty for the midline and where no side was stated. */
    static String[] laterality(CaseDocument document) {
        return document.context()
                .laterality()
                .filter(side -> side != Laterality.MIDLINE)
                .map(side -> new String[] {side == Laterality.RIGHT ? "R" : "L"})
                .orElse(new String[0]);
    }

    /** Of the objects of a kind that a record has one of for every frame. */
    static String instanceNumber(RecordRevision revision, int number) {
        return Integer.toString(NUMBERS_PER_REVISION * revision.revision() + number);
    }

    /** Those of the frame, with what the order of the case adds. */
    static void patientAndStudy(DataSet object, RecordSource source) {
        patientAndStudy(object, source.planned().frame().header());
        source.revision()
                .document()
                .context()
                .order()
                .ifPresent(order -> OrderAttributes.patientAndStudy(object, order));
    }

    private static void patientAndStudy(DataSet object, DataSet frame) {
        object.put(Tag.STUDY_INSTANCE_UID, frame.string(Tag.STUDY_INSTANCE_UID).orElseThrow());
        for (int tag : TYPE_2) {
            object.put(tag, CurrentForm.values(frame, tag));
        }
        for (int tag : TYPE_3) {
            if (frame.string(tag).isPresent()) {
                object.put(tag, CurrentForm.values(frame, tag));
            }
        }
    }

    private static void series(DataSet object, Kind kind, String caseId) {
        object.put(Tag.MODALITY, kind.modality)
                .put(Tag.SERIES_INSTANCE_UID, Uids.series(caseId, kind.part))
                .put(Tag.SERIES_NUMBER, Integer.toString(kind.seriesNumber))
                .put(Tag.SERIES_DESCRIPTION, kind.description);
    }

    private static void equipment(DataSet object, Installation installation) {
        object.put(Tag.MANUFACTURER, Installation.MANUFACTURER)
                .put(Tag.MANUFACTURER_MODEL_NAME, installation.model())
                .put(Tag.DEVICE_SERIAL_NUMBER, installation.serialNumber())
                .put(Tag.SOFTWARE_VERSIONS, installation.softwareVersion())
                .put(Tag.INSTITUTION_NAME, installation.institution());
    }

    /** Our own coding scheme, so that a reader who does not know it learns whose it is (C.12.1.1.1). */
    static void codingSchemes(DataSet object) {
        object.put(
                Tag.CODING_SCHEME_IDENTIFICATION_SEQUENCE,
                List.of(new DataSet()
                        .put(Tag.CODING_SCHEME_DESIGNATOR, Codes.ownScheme("designator"))
                        .put(Tag.CODING_SCHEME_UID, Codes.ownScheme("uid"))
                        .put(Tag.CODING_SCHEME_NAME, Codes.ownScheme("name"))
                        .put(Tag.CODING_SCHEME_VERSION, Codes.ownScheme("version"))
                        .put(Tag.CODING_SCHEME_RESPONSIBLE_ORGANIZATION, Codes.ownScheme("organization"))));
    }
}
