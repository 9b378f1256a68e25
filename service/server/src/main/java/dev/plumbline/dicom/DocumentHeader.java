// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.record.Amendment;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Context;
import dev.plumbline.record.Signature;
import dev.plumbline.record.Uids;
import java.util.List;

/** SR Document Series and SR Document General modules, DICOM PS3.3 C.17.1 and C.17.2: whose report it is and how far it is. */
final class DocumentHeader {
    private DocumentHeader() {}

    static void put(DataSet report, RecordSource source) {
        CaseDocument document = source.revision().document();
        Timestamp time = new Timestamp(source.revision().time());
        report.put(Tag.REFERENCED_PERFORMED_PROCEDURE_STEP_SEQUENCE, List.of())
                .put(Tag.INSTANCE_NUMBER, Integer.toString(source.revision().revision()))
                .put(Tag.CONTENT_DATE, time.date())
                .put(Tag.CONTENT_TIME, time.timeOfDay());
        document.signature()
                .ifPresentOrElse(signature -> signed(report, signature, source.installation()), () -> draft(report));
        Observers.author(document)
                .ifPresent(author ->
                        report.put(Tag.AUTHOR_OBSERVER_SEQUENCE, List.of(author(author, source.installation()))));
        order(report, source);
        source.revision().amendment().ifPresent(amendment -> predecessor(report, source, amendment));
        report.put(
                Tag.PERFORMED_PROCEDURE_CODE_SEQUENCE,
                Blocks.of(document.context()).stream()
                        .map(block -> ContentWriter.code(block.code()))
                        .toList());
    }

    /** The one report that this one replaces (PS3.3 C.17.2); it stands in the same series. */
    private static void predecessor(DataSet report, RecordSource source, Amendment amendment) {
        String caseId = source.revision().caseId();
        ObjectHeader.Kind kind = ObjectHeader.Kind.REPORT;
        DataSet instance = new DataSet()
                .put(Tag.REFERENCED_SOP_CLASS_UID, kind.sopClassUid())
                .put(Tag.REFERENCED_SOP_INSTANCE_UID, Uids.instance(caseId, amendment.replaces(), kind.part()));
        DataSet series = new DataSet()
                .put(Tag.SERIES_INSTANCE_UID, Uids.series(caseId, kind.part()))
                .put(Tag.REFERENCED_SOP_SEQUENCE, List.of(instance));
        DataSet study = new DataSet()
                .put(
                        Tag.STUDY_INSTANCE_UID,
                        report.string(Tag.STUDY_INSTANCE_UID).orElseThrow())
                .put(Tag.REFERENCED_SERIES_SEQUENCE, List.of(series));
        report.put(Tag.PREDECESSOR_DOCUMENTS_SEQUENCE, List.of(study));
    }

    private static void draft(DataSet report) {
        report.put(Tag.COMPLETION_FLAG, "PARTIAL")
                .put(Tag.COMPLETION_FLAG_DESCRIPTION, "Draft, not signed")
                .put(Tag.VERIFICATION_FLAG, "UNVERIFIED")
                .put(Tag.PRELIMINARY_FLAG, "PRELIMINARY");
    }

    private static void signed(DataSet report, Signature signature, Installation installation) {
        report.put(Tag.COMPLETION_FLAG, "COMPLETE")
                .put(Tag.VERIFICATION_FLAG, "VERIFIED")
                .put(Tag.PRELIMINARY_FLAG, "FINAL")
                .put(
                        Tag.VERIFYING_OBSERVER_SEQUENCE,
                        List.of(new DataSet()
                                .put(
                                        Tag.VERIFYING_ORGANIZATION,
                                        signature.organization().orElse(organization(installation)))
                                .put(Tag.VERIFICATION_DATE_TIME, new Timestamp(signature.time()).dateTime())
                                .put(Tag.VERIFYING_OBSERVER_NAME, signature.name())
                                .put(Tag.VERIFYING_OBSERVER_IDENTIFICATION_CODE_SEQUENCE, List.of())));
    }

    /** Verifying Organization is type 1 (PS3.3 C.17.2), so something true has to stand there. */
    private static String organization(Installation installation) {
        return installation.institution().isBlank() ? "Not stated" : installation.institution();
    }

    private static DataSet author(Context.Person author, Installation installation) {
        return new DataSet()
                .put(Tag.INSTITUTION_NAME, installation.institution())
                .put(Tag.INSTITUTION_CODE_SEQUENCE, List.of())
                .put(Tag.PERSON_IDENTIFICATION_CODE_SEQUENCE, List.of())
                .put(Tag.OBSERVER_TYPE, "PSN")
                .put(Tag.PERSON_NAME, author.name());
    }

    /** Referenced Request Sequence: of the case's order, else of the frame's, where there is one. */
    static void order(DataSet report, RecordSource source) {
        source.revision()
                .document()
                .context()
                .order()
                .ifPresentOrElse(
                        order -> OrderAttributes.request(report, order),
                        () -> order(report, source.planned().frame().header()));
    }

    private static void order(DataSet report, DataSet frame) {
        if (frame.string(Tag.ACCESSION_NUMBER).isEmpty()) {
            return;
        }
        List<DataSet> requests = frame.items(Tag.REQUEST_ATTRIBUTES_SEQUENCE);
        DataSet request = requests.isEmpty() ? new DataSet() : requests.get(0);
        DataSet item = new DataSet()
                .put(
                        Tag.STUDY_INSTANCE_UID,
                        frame.string(Tag.STUDY_INSTANCE_UID).orElseThrow())
                .put(Tag.REFERENCED_STUDY_SEQUENCE, List.of())
                .put(Tag.ACCESSION_NUMBER, frame.string(Tag.ACCESSION_NUMBER).orElseThrow())
                .putEmpty(Tag.PLACER_ORDER_NUMBER_IMAGING_SERVICE_REQUEST)
                .putEmpty(Tag.FILLER_ORDER_NUMBER_IMAGING_SERVICE_REQUEST)
                .put(Tag.REQUESTED_PROCEDURE_CODE_SEQUENCE, List.of());
        for (int tag : new int[] {Tag.REQUESTED_PROCEDURE_ID, Tag.REQUESTED_PROCEDURE_DESCRIPTION}) {
            item.put(tag, request.strings(tag).toArray(String[]::new));
        }
        report.put(Tag.REFERENCED_REQUEST_SEQUENCE, List.of(item));
    }
}
