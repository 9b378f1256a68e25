// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import com.fasterxml.jackson.databind.JsonNode;
import dev.plumbline.procedure.BlockList;
import dev.plumbline.readout.PersonName;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;

/**
 * Words of an answer as a person reads them.
 *
 * @param zone in which the service's own times are shown
 */
record Wording(BlockList blocks, ZoneOffset zone) {
    static final String NOT_STATED = "not stated";
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm xxx");

    /** A field as it stands. */
    static String plain(JsonNode row, String field) {
        return text(row, field).orElse(NOT_STATED);
    }

    static String person(JsonNode row, String field) {
        return text(row, field).map(PersonName::words).orElse(NOT_STATED);
    }

    static String approach(JsonNode row) {
        return text(row, "approach")
                .map(word -> word.equals("inPlane") ? "in-plane" : "out-of-plane")
                .orElse("approach " + NOT_STATED);
    }

    /** The name of a block of the site's list; a word that it does not know as it is. */
    String block(JsonNode row) {
        return text(row, "block")
                .map(id -> blocks.blocks().stream()
                        .filter(block -> block.id().equals(id))
                        .map(BlockList.Block::name)
                        .findFirst()
                        .orElse(id))
                .orElse(NOT_STATED);
    }

    /** A moment of the service's clock. */
    String moment(String instant) {
        return Instant.parse(instant).atOffset(zone).format(MINUTE);
    }

    /** A moment that somebody stated, by its own offset. */
    static String stated(String time) {
        return OffsetDateTime.parse(time).format(MINUTE);
    }

    /** An identifier as a part of an address. */
    static String inAddress(String id) {
        return URLEncoder.encode(id, StandardCharsets.UTF_8);
    }

    /** A code word such as tipNotConfirmed in words. */
    static String spelledOut(String word) {
        return word.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }

    private static Optional<String> text(JsonNode row, String field) {
        return Optional.ofNullable(row.path(field).textValue()).filter(text -> !text.isBlank());
    }
}
