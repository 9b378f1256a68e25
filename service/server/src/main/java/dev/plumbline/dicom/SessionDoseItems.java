// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.agents.Basis;
import dev.plumbline.agents.Route;
import dev.plumbline.record.SessionDose;
import dev.plumbline.record.SessionDose.Amount;
import dev.plumbline.record.SessionDose.Judged;
import dev.plumbline.record.SessionDose.Part;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/**
 * PL1 SESSION-DOSE: what all cases of the session had given, and every dose beside its limit. It follows from the cases, so
 * nothing of it is read back into one.
 */
final class SessionDoseItems {
    static final Code SESSION_DOSE = Codes.own("SESSION-DOSE");
    static final Code TOTAL = Codes.own("SESSION-DRUG");
    static final Code BESIDE_LIMIT = Codes.own("LIMIT-DOSE");
    static final Code SUM = Codes.own("LIMIT-SUM");
    static final Code CAUTION = Codes.own("LIMIT-CAUTION");
    static final Code SHARE = Codes.own("LIMIT-SHARE");
    static final Code LIMIT = Codes.own("LIMIT-MASS");
    static final Code NONE = Codes.own("LIMIT-NONE");
    static final Code SOURCE = Codes.own("LIMIT-SOURCE");
    static final Code EDITION = Codes.own("LIMIT-EDITION");
    static final Code APPROVED_BY = Codes.own("LIMIT-BY");

    private SessionDoseItems() {}

    static ContentItem item(SessionDose dose) {
        List<ContentItem> items = new ArrayList<>();
        dose.totals()
                .forEach(total -> items.add(AgentItems.drug(
                        Relation.CONTAINS, TOTAL, total.drug(), amount(Codes.own("SESSION-MASS"), total))));
        dose.parts().forEach(part -> items.add(part(part)));
        dose.sumPercent().ifPresent(sum -> items.add(number(Relation.CONTAINS, SUM, sum, "%")));
        dose.cautions().forEach(words -> items.add(ContentItem.text(Relation.CONTAINS, CAUTION, words)));
        return ContentItem.container(SESSION_DOSE).with(items);
    }

    private static List<ContentItem> amount(Code concept, Amount amount) {
        List<ContentItem> items = new ArrayList<>();
        items.add(number(Relation.HAS_PROPERTIES, concept, amount.mg(), "mg"));
        if (amount.basis() != Basis.NOT_STATED) {
            items.add(word(Codes.own("DOSE-BASIS"), amount.basis().word(), "dose bases"));
        }
        return items;
    }

    private static ContentItem part(Part part) {
        List<ContentItem> items = amount(AgentItems.MASS, part.dose());
        items.add(ContentItem.code(
                Relation.HAS_PROPERTIES, Codes.own("VASOCONSTRICTOR"), Concepts.yesOrNo(part.vasoconstrictor())));
        if (part.route() != Route.NOT_STATED) {
            items.add(word(Codes.sct("410675002"), part.route().word(), "routes"));
        }
        if (part.judged() instanceof Judged.Share share) {
            items.add(number(Relation.HAS_PROPERTIES, SHARE, share.percent(), "%"));
            items.add(number(Relation.HAS_PROPERTIES, LIMIT, share.limitMg(), "mg"));
            items.add(text(SOURCE, share.source()));
            items.add(text(EDITION, share.edition()));
            items.add(text(APPROVED_BY, share.approvedBy()));
        } else if (part.judged() instanceof Judged.None none) {
            items.add(text(NONE, none.why().text()));
        }
        return AgentItems.drug(Relation.CONTAINS, BESIDE_LIMIT, part.dose().drug(), items);
    }

    private static ContentItem text(Code concept, String text) {
        return ContentItem.text(Relation.HAS_PROPERTIES, concept, text);
    }

    private static ContentItem word(Code concept, String word, String set) {
        return ContentItem.code(Relation.HAS_PROPERTIES, concept, Codes.ofWord(set, word));
    }

    private static ContentItem number(Relation relation, Code concept, BigDecimal value, String unit) {
        return Measurement.plain(relation, concept, DecimalText.stated(value, Codes.ucum(unit)));
    }
}
