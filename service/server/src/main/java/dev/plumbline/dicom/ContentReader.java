// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Unreadable;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;

/**
 * Attributes as a content tree. Tolerant: an item that says nothing readable stays in its place as {@link Unreadable}, so
 * that whoever walks the tree can name it.
 */
final class ContentReader {
    private static final int DEEPEST = 64;
    private static final int MOST_ITEMS = 20_000;

    private int items;

    private ContentReader() {}

    /**
     * The tree of a document.
     *
     * @throws dev.plumbline.problem.Refusal when it is no structured report, deeper than 64 levels or larger than 20000
     *     items
     */
    static ContentItem read(DataSet document) {
        if (document.string(Tag.VALUE_TYPE).isEmpty()) {
            throw Fault.unsupported("The object has no content tree", "Give a structured report.");
        }
        return new ContentReader().tree(document);
    }

    /** An item whose children are still being read. */
    private record Open(DataSet item, Iterator<DataSet> rest, List<ContentItem> children) {
        static Open of(DataSet item) {
            return new Open(item, item.items(Tag.CONTENT_SEQUENCE).iterator(), new ArrayList<>());
        }
    }

    private ContentItem tree(DataSet root) {
        Deque<Open> path = new ArrayDeque<>();
        path.push(Open.of(root));
        while (true) {
            Open top = path.peek();
            if (top.rest().hasNext()) {
                path.push(Open.of(top.rest().next()));
                limit(path.size());
                continue;
            }
            path.pop();
            ContentItem item = item(top);
            if (path.isEmpty()) {
                return item;
            }
            path.peek().children().add(item);
        }
    }

    private void limit(int depth) {
        items++;
        if (items > MOST_ITEMS || depth > DEEPEST) {
            throw Fault.unsupported(
                    "The content tree is deeper than " + DEEPEST + " levels or has more than " + MOST_ITEMS + " items",
                    "Send a smaller report.");
        }
    }

    private static ContentItem item(Open open) {
        String word = open.item().string(Tag.RELATIONSHIP_TYPE).orElse("");
        Optional<Relation> relation = Relation.of(word);
        ItemValue value = relation.isPresent()
                ? ItemReader.value(open.item())
                : new Unreadable("", "its relationship \"" + word + "\" is not one of ours");
        return new ContentItem(
                relation.orElse(Relation.NONE),
                ItemReader.code(open.item(), Tag.CONCEPT_NAME_CODE_SEQUENCE),
                value,
                open.item().string(Tag.OBSERVATION_DATE_TIME),
                open.children());
    }
}
