// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.List;

/**
 * What is searched: conditions that hold together, and which part of the answer is wanted.
 *
 * @param limit lines at most
 * @param offset lines left out at the front
 */
public record Search(QueryLevel level, List<Matching> conditions, int limit, int offset) {
    /** Lines of one answer at most; more are asked for with an offset. Source: design choice. */
    public static final int MOST = 1000;

    public Search {
        conditions = List.copyOf(conditions);
    }

    /** Everything on a level. */
    public static Search of(QueryLevel level) {
        return new Search(level, List.of(), MOST, 0);
    }

    /** Narrowed by one attribute; a blank value matches everything. */
    public Search where(QueryAttribute attribute, String value) {
        if (attribute.level().compareTo(level) > 0 && attribute != QueryAttribute.MODALITY) {
            throw new Refusal(new Problem.InvalidValue(
                    "",
                    "The query's " + attribute.column() + " does not exist on this level.",
                    "Search one level deeper, or leave it out."));
        }
        List<Matching> more = new ArrayList<>(conditions);
        Matching.of(attribute, value).ifPresent(more::add);
        return new Search(level, more, limit, offset);
    }

    public Search page(int newLimit, int newOffset) {
        return new Search(level, conditions, Math.min(newLimit, MOST), newOffset);
    }
}
