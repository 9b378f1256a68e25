// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.sight;

import dev.plumbline.plan.Approach;
import java.util.List;
import java.util.Set;

/**
 * Where the search stands.
 *
 * @param signs everything at which to stop that is there now
 * @param tried ids of the steps tried in this pass, once for each time
 * @param passesUnseen whole passes in which the tip was never seen
 * @param heldPastLeadIn the operator has stopped past the planned lead-in and looks for the needle without advancing it
 * @param tooDeep the needle is deeper than was intended, as the operator says
 */
public record SightQuestion(
        Approach approach,
        Seen seen,
        Set<StopSign> signs,
        List<String> tried,
        int passesUnseen,
        boolean heldPastLeadIn,
        boolean tooDeep,
        NeedleInside inside) {
    public SightQuestion {
        signs = Set.copyOf(signs);
        tried = List.copyOf(tried);
    }
}
