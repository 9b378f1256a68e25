// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.readout;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** Names of people as people read them. */
public final class PersonName {
    private PersonName() {}

    /**
     * A person name without its separators, family name first; further ways of writing it in brackets. Source: DICOM PS3.5
     * 6.2.1.
     */
    public static String words(String name) {
        List<String> groups = Arrays.stream(name.split("="))
                .map(group -> Arrays.stream(group.split("\\^"))
                        .map(String::strip)
                        .filter(part -> !part.isEmpty())
                        .collect(Collectors.joining(", ")))
                .filter(group -> !group.isEmpty())
                .toList();
        if (groups.isEmpty()) {
            return "not stated";
        }
        String others = String.join(" / ", groups.subList(1, groups.size()));
        return others.isEmpty() ? groups.get(0) : groups.get(0) + " (" + others + ")";
    }
}
