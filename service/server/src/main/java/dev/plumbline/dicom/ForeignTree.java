// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The content tree of any report, items by their place, references by place resolved. Places are counted as PS3.3 C.17.3.2.5
 * does: the root is 1, its second child 1.2.
 */
final class ForeignTree {
    private static final int DEEPEST = 64;
    private static final int MOST_ITEMS = 20_000;

    /** One item; {@code place} as in 1.4.2. */
    record Node(String place, DataSet item, Optional<Node> parent, int depth) {
        /** The place this item refers to in place of content of its own. */
        Optional<String> refersTo() {
            double[] path = item.numbers(Tag.REFERENCED_CONTENT_ITEM_IDENTIFIER);
            return path.length == 0
                    ? Optional.empty()
                    : Optional.of(Arrays.stream(path)
                            .mapToObj(step -> Long.toString((long) step))
                            .collect(Collectors.joining(".")));
        }
    }

    private final List<Node> nodes = new ArrayList<>();
    private final Map<String, Node> byPlace = new HashMap<>();
    private final Map<String, List<Node>> children = new HashMap<>();
    private final Map<String, List<Node>> referrers = new HashMap<>();

    private ForeignTree() {}

    /**
     * The tree of a document.
     *
     * @throws dev.plumbline.problem.Refusal when it is no report, too deep or too large, or refers in a circle or to nothing
     */
    static ForeignTree of(DataSet document) {
        if (document.string(Tag.VALUE_TYPE).isEmpty()) {
            throw Fault.unsupported("The object has no content tree", "Give a structured report.");
        }
        ForeignTree tree = new ForeignTree();
        tree.read(document);
        tree.refer();
        return tree;
    }

    private void read(DataSet document) {
        Deque<Node> open = new ArrayDeque<>();
        open.push(new Node("1", document, Optional.empty(), 1));
        while (!open.isEmpty()) {
            Node node = open.pop();
            nodes.add(node);
            byPlace.put(node.place(), node);
            List<DataSet> items = node.item().items(Tag.CONTENT_SEQUENCE);
            if (nodes.size() + open.size() + items.size() > MOST_ITEMS || node.depth() > DEEPEST) {
                throw Fault.unsupported(
                        "The content tree is deeper than " + DEEPEST + " levels or has more than " + MOST_ITEMS
                                + " items",
                        "Send a smaller report.");
            }
            List<Node> below = new ArrayList<>(items.size());
            for (int i = 0; i < items.size(); i++) {
                below.add(new Node(node.place() + "." + (i + 1), items.get(i), Optional.of(node), node.depth() + 1));
            }
            children.put(node.place(), below);
            for (int i = below.size() - 1; i >= 0; i--) {
                open.push(below.get(i)); // so that items come out in the order of the document
            }
        }
    }

    private void refer() {
        for (Node node : nodes) {
            if (node.refersTo().isPresent()) {
                Node target = resolved(node);
                node.parent()
                        .ifPresent(parent -> referrers
                                .computeIfAbsent(target.place(), place -> new ArrayList<>())
                                .add(parent));
            }
        }
    }

    /** Every item, parents first, in the order of the document. */
    List<Node> nodes() {
        return nodes;
    }

    List<Node> children(Node node) {
        return children.getOrDefault(node.place(), List.of());
    }

    /** Parents of the items that refer to this one. */
    List<Node> referrers(Node node) {
        return referrers.getOrDefault(node.place(), List.of());
    }

    /**
     * The item itself, or what it refers to in the end.
     *
     * @throws dev.plumbline.problem.Refusal when that is nothing, or the references go round in a circle
     */
    Node resolved(Node node) {
        Set<String> visited = new HashSet<>();
        Node at = node;
        while (at.refersTo().isPresent()) {
            visited.add(at.place());
            Node next = byPlace.get(at.refersTo().get());
            if (next != null && visited.contains(next.place())) {
                throw Fault.unsupported(
                        "Item " + node.place() + " refers to itself in a circle",
                        "Send the report again from its source.");
            }
            if (next == null || isAncestor(next, node)) {
                throw Fault.unsupported(
                        "Item " + node.place() + " refers to "
                                + (next == null ? "an item that is not there" : "an item above itself"),
                        "Send the report again from its source.");
            }
            at = next;
        }
        return at;
    }

    private static boolean isAncestor(Node above, Node node) {
        for (Optional<Node> at = Optional.of(node);
                at.isPresent();
                at = at.get().parent()) {
            if (at.get().place().equals(above.place())) {
                return true;
            }
        }
        return false;
    }
}
