// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.deviation.Comparison;
import dev.plumbline.deviation.Deviation;
import dev.plumbline.deviation.DeviationQuantity;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.Tag;
import dev.plumbline.geometry.Measurand;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Readings;
import dev.plumbline.observation.Observation;
import dev.plumbline.observation.ObservationQuantity;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.PlanQuantity;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Context;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Signature;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What lists say of a record, computed from the record and the header of its planned frame. */
final class RecordRows {
    private static final PlanQuantity[] PLANNED = {
        PlanQuantity.ANGLE_TO_SKIN, PlanQuantity.ENTRY_DISTANCE, PlanQuantity.TARGET_DEPTH, PlanQuantity.PATH
    };
    private static final ObservationQuantity[] OBSERVED = {
        ObservationQuantity.ANGLE_TO_SKIN,
        ObservationQuantity.ENTRY_DISTANCE,
        ObservationQuantity.TIP_DEPTH,
        ObservationQuantity.PATH
    };

    private RecordRows() {}

    static RecordRow of(RecordRevision revision, String reportUid, DataSet frame) {
        CaseDocument document = revision.document();
        Context context = document.context();
        ObjectNode content = JsonNodeFactory.instance.objectNode();
        content.put("patientId", text(frame, Tag.PATIENT_ID));
        content.put("patientName", text(frame, Tag.PATIENT_NAME));
        content.put("studyInstanceUid", text(frame, Tag.STUDY_INSTANCE_UID));
        content.put("accessionNumber", text(frame, Tag.ACCESSION_NUMBER));
        content.put("block", context.block().orElse(null));
        content.put("laterality", context.laterality().map(Laterality::word).orElse(null));
        content.put("approach", document.approach().word());
        content.put("operator", context.operator().map(Context.Person::name).orElse(null));
        content.put(
                "operatorRole", context.operator().flatMap(Context.Person::role).orElse(null));
        content.put("signedBy", document.signature().map(Signature::name).orElse(null));
        boolean differs = numbers(content, revision.comparison());
        return new RecordRow(
                reportUid,
                ChronoUnit.MICROS.between(Instant.EPOCH, revision.time().toInstant()),
                revision.time().toLocalDate().toString(),
                Optional.ofNullable(text(frame, Tag.PATIENT_ID)).orElse(""),
                context.block().orElse(""),
                context.laterality().map(Laterality::word).orElse(""),
                context.operator()
                        .map(person -> person.name().toLowerCase(Locale.ROOT))
                        .orElse(""),
                differs,
                content.toString());
    }

    private static @Nullable String text(DataSet frame, int tag) {
        return frame.string(tag).orElse(null);
    }

    /** Of the observation of the tip at its final place, else of the last one; whether any observation differs. */
    private static boolean numbers(ObjectNode content, Comparison comparison) {
        List<Observation> observations = comparison.observations();
        content.put("observations", observations.size());
        ArrayNode differsIn = JsonNodeFactory.instance.arrayNode();
        comparison.deviations().forEach(deviation -> exceeding(differsIn, deviation));
        content.put("differs", !differsIn.isEmpty());
        content.set("differsIn", differsIn);
        Optional<Observation> shown = observations.stream()
                .filter(each -> each.phase().equals(Optional.of(Phase.FINAL_TIP)))
                .findFirst()
                .or(() -> observations.stream().reduce((first, second) -> second));
        content.put("observation", shown.map(Observation::id).orElse(null));
        content.put("phase", shown.flatMap(Observation::phase).map(Phase::word).orElse(null));
        for (PlanQuantity quantity : PLANNED) {
            put(content, name("planned", quantity), seen(comparison.plan().readings(), quantity));
        }
        for (ObservationQuantity quantity : OBSERVED) {
            put(content, name("observed", quantity), shown.flatMap(each -> seen(each.readings(), quantity)));
        }
        Optional<Deviation> deviation = comparison.deviations().stream()
                .filter(each -> shown.map(Observation::id).equals(Optional.of(each.id())))
                .findFirst();
        for (DeviationQuantity quantity : DeviationQuantity.values()) {
            String name = name("difference", quantity);
            Optional<Reading.Seen> reading = deviation.flatMap(each -> seen(each.readings(), quantity));
            put(content, name, reading);
            content.put(
                    name + "ExpandedUncertainty",
                    reading.map(Reading.Seen::expandedUncertainty).orElse(null));
            content.put(
                    name + "ExceedsUncertainty",
                    reading.map(Reading.Seen::exceedsUncertainty).orElse(null));
        }
        return !differsIn.isEmpty();
    }

    private static void exceeding(ArrayNode differsIn, Deviation deviation) {
        for (DeviationQuantity quantity : DeviationQuantity.values()) {
            if (seen(deviation.readings(), quantity)
                    .filter(Reading.Seen::exceedsUncertainty)
                    .isPresent()) {
                differsIn.add(deviation.id() + " " + quantity.field());
            }
        }
    }

    private static <M extends Enum<M> & Measurand> Optional<Reading.Seen> seen(Readings<M> readings, M quantity) {
        return readings.has(quantity) && readings.of(quantity) instanceof Reading.Seen seen
                ? Optional.of(seen)
                : Optional.empty();
    }

    private static String name(String what, Measurand quantity) {
        String field = quantity.field();
        return what + field.substring(0, 1).toUpperCase(Locale.ROOT) + field.substring(1);
    }

    private static void put(ObjectNode content, String name, Optional<Reading.Seen> reading) {
        content.put(name, reading.map(seen -> seen.value() + 0.0).orElse(null)); // no negative zero
    }
}
