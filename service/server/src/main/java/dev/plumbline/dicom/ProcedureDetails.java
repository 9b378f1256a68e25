// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Template;
import dev.plumbline.needle.Needle;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Cautions;
import dev.plumbline.record.Context;
import dev.plumbline.record.Signature;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** PL1 Procedure details, our extension at the root: which case this is, what was done with what, and by whom. */
final class ProcedureDetails {
    private static final Template TEMPLATE = new Template(Codes.OWN_SCHEME, "PL1");
    private static final Code PERSON_NAME = Codes.dcm("113870");
    private static final Code PERSON_ROLE = Codes.dcm("113875");

    private final RecordSource source;
    private final CaseDocument document;
    private final List<ContentItem> items = new ArrayList<>();

    private ProcedureDetails(RecordSource source) {
        this.source = source;
        document = source.revision().document();
    }

    /** @param undrawn groups with nothing that a viewer could draw */
    static ContentItem item(RecordSource source, List<ContentItem> undrawn) {
        return new ProcedureDetails(source).compose(undrawn);
    }

    private ContentItem compose(List<ContentItem> undrawn) {
        says(ContentItem.text(
                Relation.CONTAINS, Codes.own("CASE-ID"), source.revision().caseId()));
        says(number(Relation.CONTAINS, Codes.own("REVISION"), source.revision().revision(), "1"));
        BedsideDetails bedside = BedsideDetails.of(source);
        bedside.session().forEach(this::says);
        blockAndSide();
        says(code("APPROACH", Codes.ofWord("approaches", document.approach().word())));
        needle();
        transducer();
        bedside.items().forEach(this::says);
        team(bedside.team());
        if (!undrawn.isEmpty()) {
            says(ContentItem.container(Concepts.UNDRAWN).with(undrawn));
        }
        says(ContentItem.text(Relation.CONTAINS, Codes.own("CAUTIONS"), Cautions.text()));
        return ContentItem.container(Concepts.PROCEDURE, TEMPLATE).with(items);
    }

    private void says(ContentItem item) {
        items.add(item);
    }

    /** The side stands under the block; without a block it stands alone, so that it is not lost. */
    private void blockAndSide() {
        Optional<Codes.Entry> block = Blocks.of(document.context());
        if (block.isPresent()) {
            says(code("BLOCK", block.get().code()).with(side(Relation.HAS_CONCEPT_MOD, Concepts.LATERALITY)));
        } else {
            side(Relation.CONTAINS, Codes.own("SIDE")).forEach(this::says);
        }
    }

    private List<ContentItem> side(Relation relation, Code concept) {
        return document.context().laterality().stream()
                .map(side -> side == Laterality.MIDLINE
                        ? ContentItem.code(relation, Codes.own("SIDE"), Codes.own("SD-MID"))
                        : ContentItem.code(relation, concept, Codes.ofWord("laterality", side.word())))
                .toList();
    }

    private void needle() {
        Needle needle = document.needle();
        if (needle.equals(Needle.NOTHING_STATED)) {
            return;
        }
        List<ContentItem> properties = new ArrayList<>();
        needle.gauge().ifPresent(gauge -> properties.add(property("111465", gauge, "{gauge}")));
        needle.lengthMm().ifPresent(length -> properties.add(property("111467", length, "mm")));
        needle.echogenic()
                .ifPresent(yes -> properties.add(
                        ContentItem.code(Relation.HAS_PROPERTIES, Codes.own("ECHOGENIC"), Concepts.yesOrNo(yes))));
        says(ContentItem.code(Relation.CONTAINS, Codes.sct("57134006"), Codes.sct("79068005"))
                .with(properties));
    }

    private void transducer() {
        document.probe()
                .kind()
                .ifPresent(kind -> says(code("TRANSDUCER", Codes.ofWord("transducers", kind.word()))
                        .with(footprint())));
    }

    private List<ContentItem> footprint() {
        return document.probe().footprintMm().stream()
                .mapToObj(mm -> number(Relation.HAS_PROPERTIES, Codes.own("FOOTPRINT"), mm, "mm"))
                .toList();
    }

    /** The operator, who signs (with "Verifying" first, so that the two are told apart even by one name), and the team. */
    private void team(List<ContentItem> members) {
        List<ContentItem> people = new ArrayList<>();
        document.context().operator().ifPresent(operator -> people.add(operator(operator)));
        document.signature().ifPresent(signature -> people.add(signer(signature)));
        people.addAll(members);
        if (!people.isEmpty()) {
            says(ContentItem.container(Codes.own("TEAM")).with(people));
        }
    }

    private static ContentItem operator(Context.Person operator) {
        return ContentItem.person(Relation.CONTAINS, PERSON_NAME, operator.name())
                .with(operator.role().map(word -> role(Observers.operatorRole(word))).stream()
                        .toList());
    }

    private static ContentItem signer(Signature signature) {
        List<ContentItem> properties = new ArrayList<>();
        properties.add(role(Observers.VERIFYING));
        signature.role().ifPresent(word -> properties.add(role(Observers.role(word, "/signature/role"))));
        signature
                .organization()
                .ifPresent(name ->
                        properties.add(ContentItem.text(Relation.HAS_PROPERTIES, Observers.ORGANIZATION, name)));
        return ContentItem.person(Relation.CONTAINS, PERSON_NAME, signature.name())
                .with(properties);
    }

    private static ContentItem role(Code role) {
        return ContentItem.code(Relation.HAS_PROPERTIES, PERSON_ROLE, role);
    }

    private static ContentItem code(String concept, Code value) {
        return ContentItem.code(Relation.CONTAINS, Codes.own(concept), value);
    }

    private static ContentItem property(String concept, double value, String unit) {
        return number(Relation.HAS_PROPERTIES, Codes.dcm(concept), value, unit);
    }

    private static ContentItem number(Relation relation, Code concept, double value, String unit) {
        return Measurement.plain(relation, concept, DecimalText.measured(value, Codes.ucum(unit)));
    }
}
