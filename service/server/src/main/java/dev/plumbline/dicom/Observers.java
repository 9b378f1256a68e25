// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Context;
import dev.plumbline.record.Signature;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** TID 1001 Observation Context: TID 1002 rows 1 to 3, the person (TID 1003) and the program (TID 1004). */
final class Observers {
    private static final String ROLES = "roles";
    static final Code ORGANIZATION = Codes.dcm("121009");
    static final Code VERIFYING = Codes.dcm("121098");
    private static final String OPERATOR_ROLE = "/context/operator/role";
    private static final Code ROLE = Codes.dcm("121011");

    private Observers() {}

    static List<ContentItem> items(CaseDocument document, Installation installation) {
        List<ContentItem> items = new ArrayList<>();
        author(document).ifPresent(author -> person(items, author, document));
        device(items, installation);
        return items;
    }

    /** Who made the observations: the operator, else who signs; a draft may name nobody. */
    static Optional<Context.Person> author(CaseDocument document) {
        return document.context()
                .operator()
                .or(() -> document.signature().map(s -> new Context.Person(s.name(), s.role())));
    }

    private static void person(List<ContentItem> items, Context.Person author, CaseDocument document) {
        items.add(ContentItem.code(Relation.HAS_OBS_CONTEXT, Concepts.OBSERVER_TYPE, Concepts.PERSON));
        items.add(ContentItem.person(Relation.HAS_OBS_CONTEXT, Codes.dcm("121008"), author.name()));
        document.signature()
                .filter(s -> s.name().equals(author.name()))
                .flatMap(Signature::organization)
                .ifPresent(name -> items.add(ContentItem.text(Relation.HAS_OBS_CONTEXT, ORGANIZATION, name)));
        boolean operator = document.context().operator().isPresent();
        author.role()
                .map(word -> operator ? operatorRole(word) : role(word, "/signature/role"))
                .ifPresent(role -> items.add(ContentItem.code(Relation.HAS_OBS_CONTEXT, ROLE, role)));
    }

    /** Not "verifier": that role marks who signs. */
    static Code operatorRole(String word) {
        Code role = role(word, OPERATOR_ROLE);
        if (role.means(VERIFYING)) {
            throw unknownRole(OPERATOR_ROLE);
        }
        return role;
    }

    /**
     * The code of a role in the procedure, CID 7453.
     *
     * @throws Refusal when the word stands for none
     */
    static Code role(String word, String pointer) {
        return Codes.forWord(ROLES, word).map(Codes.Entry::code).orElseThrow(() -> unknownRole(pointer));
    }

    private static Refusal unknownRole(String pointer) {
        String words = Codes.set(ROLES).entries().stream()
                .filter(entry -> !pointer.equals(OPERATOR_ROLE) || !entry.code().means(VERIFYING))
                .flatMap(entry -> entry.word().stream())
                .collect(Collectors.joining(", "));
        return new Refusal(new Problem.InvalidValue(
                pointer, "The record has no code for this role here.", "Give one of " + words + "."));
    }

    static void device(List<ContentItem> items, Installation installation) {
        items.add(ContentItem.code(Relation.HAS_OBS_CONTEXT, Concepts.OBSERVER_TYPE, Concepts.DEVICE));
        items.add(ContentItem.uid(Relation.HAS_OBS_CONTEXT, Codes.dcm("121012"), installation.deviceObserverUid()));
        items.add(ContentItem.text(Relation.HAS_OBS_CONTEXT, Codes.dcm("121013"), installation.name()));
        items.add(ContentItem.text(Relation.HAS_OBS_CONTEXT, Codes.dcm("121014"), Installation.MANUFACTURER));
        items.add(ContentItem.text(Relation.HAS_OBS_CONTEXT, Codes.dcm("121015"), installation.model()));
        items.add(ContentItem.text(Relation.HAS_OBS_CONTEXT, Codes.dcm("121016"), installation.serialNumber()));
    }
}
