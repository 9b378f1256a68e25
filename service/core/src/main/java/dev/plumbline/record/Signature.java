// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import java.time.OffsetDateTime;
import java.util.Optional;

/**
 * Who stands for the record, and when; the only clock of its objects.
 *
 * @param name as a DICOM person name
 */
public record Signature(String name, Optional<String> organization, Optional<String> role, OffsetDateTime time) {}
