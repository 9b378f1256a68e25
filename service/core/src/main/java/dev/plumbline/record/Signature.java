// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import java.time.OffsetDateTime;
import java.util.Map;
import java.util.Optional;

/**
 * Who stands for the record, and when; the only clock of its objects.
 *
 * @param name as a DICOM person name
 * @param incompleteBecause reasons for signing without an item that is required, by the item's id in the completeness list
 */
public record Signature(
        String name,
        Optional<String> organization,
        Optional<String> role,
        OffsetDateTime time,
        Map<String, String> incompleteBecause) {
    public Signature {
        incompleteBecause = Map.copyOf(incompleteBecause);
    }

    /** A signature under a record that lacks nothing required. */
    public Signature(String name, Optional<String> organization, Optional<String> role, OffsetDateTime time) {
        this(name, organization, role, time, Map.of());
    }
}
