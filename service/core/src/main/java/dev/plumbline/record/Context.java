// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.procedure.Laterality;
import java.util.Optional;

/**
 * What the case is about.
 *
 * @param block code word of the block, such as {@code axillaryBrachialPlexus}
 * @param order what was ordered; empty for a case without an order
 */
public record Context(
        Optional<String> block, Optional<Laterality> laterality, Optional<Person> operator, Optional<Order> order) {
    public static final Context NOTHING_STATED = new Context(Optional.empty(), Optional.empty(), Optional.empty());

    /** Without an order. */
    public Context(Optional<String> block, Optional<Laterality> laterality, Optional<Person> operator) {
        this(block, laterality, operator, Optional.empty());
    }

    public Context withOrder(Optional<Order> stated) {
        return new Context(block, laterality, operator, stated);
    }

    /**
     * A person of the team.
     *
     * @param name as a DICOM person name, components separated by ^
     * @param role what the person does in this procedure, such as {@code performer}
     */
    public record Person(String name, Optional<String> role) {}
}
