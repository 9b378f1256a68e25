// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One node of a content tree, DICOM PS3.3 C.17.3.
 *
 * @param name empty only where the standard allows an item without concept name
 * @param observedAt Observation DateTime: when what the item says was so, where it has a time of its own
 */
record ContentItem(
        Relation relation,
        Optional<Code> name,
        ItemValue value,
        Optional<String> observedAt,
        List<ContentItem> children) {
    ContentItem {
        children = List.copyOf(children);
    }

    /** An item without a time of its own. */
    ContentItem(Relation relation, Optional<Code> name, ItemValue value, List<ContentItem> children) {
        this(relation, name, value, Optional.empty(), children);
    }

    static ContentItem of(Relation relation, Code name, ItemValue value) {
        return new ContentItem(relation, Optional.of(name), value, List.of());
    }

    static ContentItem text(Relation relation, Code name, String text) {
        return of(relation, name, new ItemValue.Text(text));
    }

    static ContentItem code(Relation relation, Code name, Code value) {
        return of(relation, name, new ItemValue.Coded(value));
    }

    static ContentItem uid(Relation relation, Code name, String uid) {
        return of(relation, name, new ItemValue.Uid(uid));
    }

    static ContentItem person(Relation relation, Code name, String person) {
        return of(relation, name, new ItemValue.Person(person));
    }

    static ContentItem container(Code name) {
        return of(Relation.CONTAINS, name, new ItemValue.Container(Optional.empty()));
    }

    static ContentItem container(Code name, ItemValue.Template template) {
        return of(Relation.CONTAINS, name, new ItemValue.Container(Optional.of(template)));
    }

    ContentItem with(List<ContentItem> newChildren) {
        return new ContentItem(relation, name, value, observedAt, newChildren);
    }

    /** The same item with more below it, after what is there. */
    ContentItem and(List<ContentItem> more) {
        return with(Stream.concat(children.stream(), more.stream()).toList());
    }

    /** @param dateTime as DICOM writes it */
    ContentItem observedAt(String dateTime) {
        return new ContentItem(relation, name, value, Optional.of(dateTime), children);
    }

    ContentItem with(ContentItem... newChildren) {
        return with(List.of(newChildren));
    }

    boolean isNamed(Code code) {
        return name.filter(code::means).isPresent();
    }

    /** Children of a name, in their order. */
    Stream<ContentItem> named(Code code) {
        return children.stream().filter(child -> child.isNamed(code));
    }

    Optional<ContentItem> first(Code code) {
        return named(code).findFirst();
    }

    /** The code that the first CODE child of a name holds. */
    Optional<Code> codeOf(Code code) {
        return named(code)
                .flatMap(
                        child -> child.value() instanceof ItemValue.Coded coded ? Stream.of(coded.code()) : Stream.of())
                .findFirst();
    }

    /** The text of the first TEXT child of a name. */
    Optional<String> textOf(Code code) {
        return named(code)
                .flatMap(child -> child.value() instanceof ItemValue.Text text ? Stream.of(text.text()) : Stream.of())
                .findFirst();
    }

    /** This item and everything below it, parents first. */
    Stream<ContentItem> walk() {
        return Stream.concat(Stream.of(this), children.stream().flatMap(ContentItem::walk));
    }
}
