// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

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

    /**
     * Narrowed by one attribute; a blank value matches everything. A study or series matches where one of its objects does,
     * so an attribute of a deeper level finds what holds it.
     */
    public Search where(QueryAttribute attribute, String value) {
        return with(Matching.of(attribute, value));
    }

    /** Narrowed to what belongs to a study with a series of this modality, or of one of several. */
    public Search whereStudyHolds(String modalities) {
        return with(Matching.of(QueryAttribute.MODALITY, modalities).map(Matching::anywhereInStudy));
    }

    /**
     * Narrowed to what was asked for under this identifier.
     *
     * @param tag of an identifier within the Request Attributes Sequence (0040,0275)
     */
    public Search whereRequested(int tag, String value) {
        return with(Matching.inRequest(tag, value));
    }

    private Search with(Optional<Matching> condition) {
        List<Matching> more = new ArrayList<>(conditions);
        condition.ifPresent(more::add);
        return new Search(level, more, limit, offset);
    }

    /**
     * Another page of the answer.
     *
     * @param newLimit at most {@link #MOST}, and one more to see whether there are more
     */
    public Search page(int newLimit, int newOffset) {
        return new Search(level, conditions, Math.min(newLimit, MOST + 1), newOffset);
    }
}
