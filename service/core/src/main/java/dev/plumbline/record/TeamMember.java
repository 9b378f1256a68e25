// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.procedure.Supervision;
import java.util.Optional;

/**
 * Somebody of the team.
 *
 * @param id given by the client, so that resending is harmless
 * @param name as a DICOM person name
 * @param role in this procedure, such as {@code performer}, {@code assistant}, {@code recorder}
 * @param grade in the words of the hospital
 * @param supervision how near this person is, for one who supervises
 */
public record TeamMember(
        String id, String name, Optional<String> role, Optional<String> grade, Optional<Supervision> supervision) {}
