// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.CharConversionException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/**
 * Bytes to a JSON tree within limits that no document needs to exceed (design choices): 1 MiB, 64 levels, names of 256 and
 * numbers of 64 characters, no name twice in an object.
 *
 * <p>NaN and Infinity are not JSON (RFC 8259, 6); they are let through here only so that the refusal can name the field.
 */
public final class StrictJson {
    /** Bytes of one document at most. */
    public static final int LIMIT_BYTES = 1 << 20;

    private static final JsonMapper MAPPER = JsonMapper.builder(com.fasterxml.jackson.core.JsonFactory.builder()
                    .streamReadConstraints(StreamReadConstraints.builder()
                            .maxNestingDepth(64)
                            .maxStringLength(LIMIT_BYTES)
                            .maxNumberLength(64)
                            .maxNameLength(256)
                            .build())
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .disable(StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION)
                    .enable(JsonReadFeature.ALLOW_NON_NUMERIC_NUMBERS)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private StrictJson() {}

    /** Reads a whole stream, one byte past the limit at most. */
    public static JsonNode read(InputStream in) {
        try {
            return read(in.readNBytes(LIMIT_BYTES + 1));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * One JSON value.
     *
     * @throws Refusal when it is none, too large, too deep, or names a field twice
     */
    public static JsonNode read(byte[] json) {
        if (json.length > LIMIT_BYTES) {
            throw new Refusal(new Problem.TooLarge("", LIMIT_BYTES));
        }
        try {
            JsonNode tree = MAPPER.readTree(json);
            if (tree == null || tree.isMissingNode()) {
                throw new Refusal(new Problem.UnreadableDocument("", "There is no document.", "Send a JSON object."));
            }
            return tree;
        } catch (JsonProcessingException e) {
            throw new Refusal(problem(e));
        } catch (CharConversionException e) { // the reader guesses UTF-16 and UTF-32 from the first bytes
            throw new Refusal(
                    new Problem.UnreadableDocument("", "The bytes are no text.", "Send one JSON object in UTF-8."));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Problem problem(JsonProcessingException e) {
        String pointer = e.getProcessor() instanceof JsonParser parser
                ? parser.getParsingContext().pathAsPointer().toString()
                : "";
        String place = e.getLocation() == null
                ? "."
                : " at line " + e.getLocation().getLineNr() + ", column "
                        + e.getLocation().getColumnNr() + ".";
        if (e instanceof StreamConstraintsException) {
            return new Problem.UnreadableDocument(
                    pointer,
                    "A nesting, name or number is larger than any case document needs" + place,
                    "Nest at most 64 levels; names up to 256 and numbers up to 64 characters.");
        }
        if (String.valueOf(e.getOriginalMessage()).startsWith("Duplicate field")) {
            return new Problem.ContradictoryFields(
                    pointer, "The field " + pointer + " is given twice" + place, "Give each field once.");
        }
        return new Problem.UnreadableDocument(pointer, "This is not JSON" + place, "Send one JSON object in UTF-8.");
    }
}
