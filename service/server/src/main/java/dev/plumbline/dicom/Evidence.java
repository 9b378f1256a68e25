// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Current Requested Procedure Evidence and Pertinent Other Evidence, DICOM PS3.3 C.17.2.3: every instance that the tree
 * names, by study and series, each once.
 */
final class Evidence {
    private Evidence() {}

    /** @param named the objects that the tree names, or their headers; more than once does no harm */
    static void put(DataSet report, List<DataSet> named) {
        String study = report.string(Tag.STUDY_INSTANCE_UID).orElseThrow();
        List<DataSet> same = new ArrayList<>();
        List<DataSet> other = new ArrayList<>();
        byStudy(named).forEach((uid, headers) -> (uid.equals(study) ? same : other).add(study(uid, headers)));
        if (!same.isEmpty()) {
            report.put(Tag.CURRENT_REQUESTED_PROCEDURE_EVIDENCE_SEQUENCE, same);
        }
        if (!other.isEmpty()) {
            report.put(Tag.PERTINENT_OTHER_EVIDENCE_SEQUENCE, other);
        }
    }

    private static Map<String, List<DataSet>> byStudy(List<DataSet> named) {
        Map<String, DataSet> objects = new LinkedHashMap<>();
        named.forEach(object ->
                objects.putIfAbsent(object.string(Tag.SOP_INSTANCE_UID).orElseThrow(), object));
        Map<String, List<DataSet>> studies = new LinkedHashMap<>();
        objects.values()
                .forEach(header -> studies.computeIfAbsent(
                                header.string(Tag.STUDY_INSTANCE_UID).orElseThrow(), uid -> new ArrayList<>())
                        .add(header));
        return studies;
    }

    private static DataSet study(String uid, List<DataSet> headers) {
        Map<String, List<DataSet>> series = new LinkedHashMap<>();
        for (DataSet header : headers) {
            series.computeIfAbsent(header.string(Tag.SERIES_INSTANCE_UID).orElseThrow(), s -> new ArrayList<>())
                    .add(new DataSet()
                            .put(
                                    Tag.REFERENCED_SOP_CLASS_UID,
                                    header.string(Tag.SOP_CLASS_UID).orElseThrow())
                            .put(
                                    Tag.REFERENCED_SOP_INSTANCE_UID,
                                    header.string(Tag.SOP_INSTANCE_UID).orElseThrow()));
        }
        List<DataSet> items = new ArrayList<>();
        series.forEach((seriesUid, instances) -> items.add(
                new DataSet().put(Tag.SERIES_INSTANCE_UID, seriesUid).put(Tag.REFERENCED_SOP_SEQUENCE, instances)));
        return new DataSet().put(Tag.STUDY_INSTANCE_UID, uid).put(Tag.REFERENCED_SERIES_SEQUENCE, items);
    }
}
