// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A media type with its parameters, as in Accept and Content-Type. Parameter values may be quoted or not, also where
 * they hold a slash, as DICOMweb clients write them.
 *
 * <p>Source: RFC 9110 5.6.6, 8.3.1, 12.5.1; DICOM PS3.18 8.7.
 */
record MediaRange(String type, Map<String, String> parameters) {
    MediaRange {
        parameters = Map.copyOf(parameters);
    }

    /** Everything a header names, what is wanted most first, else in its order; a quality of 0 means not at all. */
    static List<MediaRange> list(String header) {
        return split(header, ',').stream()
                .filter(text -> !text.isBlank())
                .map(MediaRange::one)
                .filter(range -> range.quality() > 0)
                .sorted(Comparator.comparingDouble(MediaRange::quality).reversed())
                .toList();
    }

    static MediaRange one(String text) {
        List<String> pieces = split(text, ';');
        Map<String, String> parameters = new LinkedHashMap<>();
        for (String piece : pieces.subList(1, pieces.size())) {
            int equals = piece.indexOf('=');
            if (equals > 0) {
                String name = piece.substring(0, equals).strip().toLowerCase(Locale.ROOT);
                parameters.putIfAbsent(
                        name, unquoted(piece.substring(equals + 1).strip()));
            }
        }
        return new MediaRange(pieces.get(0).strip().toLowerCase(Locale.ROOT), parameters);
    }

    private static List<String> split(String text, char separator) {
        List<String> pieces = new ArrayList<>();
        StringBuilder piece = new StringBuilder();
        boolean quoted = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            quoted ^= c == '"';
            if (c == separator && !quoted) {
                pieces.add(piece.toString());
                piece.setLength(0);
            } else {
                piece.append(c);
            }
        }
        pieces.add(piece.toString());
        return pieces;
    }

    private static String unquoted(String value) {
        boolean quoted = value.length() >= 2 && value.startsWith("\"") && value.endsWith("\"");
        return quoted ? value.substring(1, value.length() - 1) : value;
    }

    /** From 0 to 1; 1 where it is not stated or not readable. */
    private double quality() {
        String stated = parameters.getOrDefault("q", "1");
        return stated.matches("0(\\.\\d{0,3})?") ? Double.parseDouble(stated) : 1;
    }

    Optional<String> parameter(String name) {
        return Optional.ofNullable(parameters.get(name));
    }

    boolean multipart() {
        return type.equals("multipart/related");
    }

    /** The type inside: of the parts where it is a multipart type. */
    String inner() {
        return multipart() ? parameter("type").orElse("*/*").toLowerCase(Locale.ROOT) : type;
    }

    /** Whether a type written out is one that this range means. */
    boolean covers(String mediaType) {
        String range = inner();
        return range.equals("*/*")
                || range.equals(mediaType)
                || (range.endsWith("/*") && mediaType.startsWith(range.substring(0, range.length() - 1)));
    }

    /** Whether an encoding is one that this range means; none stated leaves it to the archive. */
    boolean coversSyntax(String transferSyntaxUid) {
        return parameter("transfer-syntax")
                .map(wanted -> wanted.equals("*") || wanted.equals(transferSyntaxUid))
                .orElse(true);
    }
}
