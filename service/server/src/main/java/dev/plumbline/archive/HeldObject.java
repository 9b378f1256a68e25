// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;

/**
 * The index row of a DICOM object.
 *
 * @param digest SHA-256 of its bytes, hexadecimal; names its file
 * @param size in bytes
 * @param attributes what a search can answer, as text in DICOM JSON
 */
public record HeldObject(Identity identity, String transferSyntaxUid, String digest, long size, String attributes) {
    private static final JsonMapper JSON = JsonMapper.builder()
            .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
            .build();

    /** Who the object is: its class and its place in study and series. */
    public record Identity(
            String sopClassUid, String sopInstanceUid, String seriesInstanceUid, String studyInstanceUid) {}

    public String sopInstanceUid() {
        return identity.sopInstanceUid();
    }

    /** The attributes, read. */
    public ObjectNode attributeTree() {
        try {
            return JSON.readValue(attributes, ObjectNode.class);
        } catch (JsonProcessingException e) {
            throw new StoreDamaged("A row of the index of objects is no JSON. Run reindex.", e);
        }
    }
}
