// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.archive.HeldObject.Identity;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.DicomJson;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dicom.UidSyntax;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

/**
 * What of an object's attributes the index keeps: top level, standard, neither sequences nor binary; and the identifiers of
 * what was asked for, which searches match on. Source of these: DICOM PS3.18 10.6, required attributes of series.
 */
final class IndexedAttributes {
    /** Root of all classes of stored objects. Source: DICOM PS3.4 B.5. */
    private static final String STORAGE_CLASSES = "1.2.840.10008.5.1.4.1.1.";

    private static final int LONGEST_TEXT = 1024;
    private static final String REQUESTS = DicomJson.name(Tag.REQUEST_ATTRIBUTES_SEQUENCE);

    private IndexedAttributes() {}

    /**
     * The index row of an object.
     *
     * @throws Refusal when it is of no class that is kept, or lacks a UID by which it is found again
     */
    static HeldObject row(DicomFile object, String digest, long size) {
        if (!object.sopClassUid().startsWith(STORAGE_CLASSES)) {
            throw new Refusal(new Problem.UnsupportedObject(
                    "", "Objects of this SOP class are not kept.", "Send images, reports and other stored objects."));
        }
        DataSet header = object.header();
        Identity identity = new Identity(
                object.sopClassUid(),
                uid(header, Tag.SOP_INSTANCE_UID, "The SOP Instance UID"),
                uid(header, Tag.SERIES_INSTANCE_UID, "The Series Instance UID"),
                uid(header, Tag.STUDY_INSTANCE_UID, "The Study Instance UID"));
        String syntax = object.transferSyntax().uid();
        return new HeldObject(identity, syntax, digest, size, of(header).toString());
    }

    private static String uid(DataSet header, int tag, String what) {
        String text = header.string(tag).orElse("");
        if (!UidSyntax.holds(text)) {
            throw new Refusal(new Problem.MalformedObject(
                    "",
                    what + " is missing or no DICOM UID.",
                    "Send an object with digits and dots there, at most 64."));
        }
        return text;
    }

    private static ObjectNode of(DataSet header) {
        ObjectNode attributes = DicomJson.withoutSequences(header);
        List<String> left = new ArrayList<>();
        for (Iterator<String> names = attributes.fieldNames(); names.hasNext(); ) {
            String name = names.next();
            if (!kept(name, attributes.path(name))) {
                left.add(name);
            }
        }
        attributes.remove(left);
        requests(header).ifPresent(requests -> attributes.set(REQUESTS, requests));
        return attributes;
    }

    /** The Request Attributes Sequence with its two identifiers; empty where none is stated. */
    private static Optional<ObjectNode> requests(DataSet header) {
        ObjectNode sequence = JsonNodeFactory.instance.objectNode().put("vr", "SQ");
        ArrayNode items = sequence.putArray("Value");
        for (DataSet request : header.items(Tag.REQUEST_ATTRIBUTES_SEQUENCE)) {
            ObjectNode item = items.addObject();
            for (int tag : List.of(Tag.SCHEDULED_PROCEDURE_STEP_ID, Tag.REQUESTED_PROCEDURE_ID)) {
                request.string(tag)
                        .filter(text -> !text.isEmpty())
                        .ifPresent(text -> item.putObject(DicomJson.name(tag))
                                .put("vr", "SH")
                                .putArray("Value")
                                .add(text));
            }
        }
        boolean known = !items.isEmpty() && kept(REQUESTS, sequence);
        return known ? Optional.of(sequence) : Optional.empty();
    }

    private static boolean kept(String name, JsonNode attribute) {
        boolean standard = Integer.parseInt(name.substring(0, 4), 16) % 2 == 0;
        boolean plain = !attribute.has("BulkDataURI") && !attribute.has("InlineBinary");
        return standard && plain && attribute.toString().length() <= LONGEST_TEXT;
    }

    /** The first value of an attribute as text; "" where there is none. A name with all its groups. */
    static String text(ObjectNode attributes, int tag) {
        JsonNode value = attributes.path(DicomJson.name(tag)).path("Value").path(0);
        if (!value.isObject()) {
            return value.isNull() ? "" : value.asText();
        }
        String ideographic = value.path("Ideographic").asText();
        String phonetic = value.path("Phonetic").asText();
        String groups = value.path("Alphabetic").asText() + "=" + ideographic + "=" + phonetic;
        return groups.replaceAll("=+$", "");
    }
}
