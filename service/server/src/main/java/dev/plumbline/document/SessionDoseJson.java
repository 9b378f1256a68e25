// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.agents.Basis;
import dev.plumbline.agents.DoseShares;
import dev.plumbline.agents.Route;
import dev.plumbline.record.SessionDose;
import dev.plumbline.record.SessionDose.Amount;
import dev.plumbline.record.SessionDose.Judged;
import dev.plumbline.record.SessionDose.Part;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What a session had given, as it is kept with a revision: decimals as texts, so that they come back figure by figure. */
public final class SessionDoseJson {
    private static final JsonMapper JSON = new JsonMapper();

    private SessionDoseJson() {}

    /** Blank where nothing was given. */
    public static String write(Optional<SessionDose> dose) {
        return dose.map(SessionDoseJson::node).map(Canonical::text).orElse("");
    }

    /**
     * What {@link #write} made.
     *
     * @throws IllegalStateException for anything else, which the store never held
     */
    public static Optional<SessionDose> read(String text) {
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            JsonNode node = JSON.readTree(text);
            return Optional.of(new SessionDose(
                    list(node, "totals", SessionDoseJson::readAmount),
                    list(node, "parts", SessionDoseJson::readPart),
                    Optional.ofNullable(node.get("sumPercent"))
                            .map(JsonNode::asText)
                            .map(BigDecimal::new),
                    list(node, "cautions", JsonNode::asText)));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("The doses kept with a revision cannot be read.", e);
        }
    }

    private static ObjectNode node(SessionDose dose) {
        return new Stated()
                .putObjects("totals", dose.totals(), amount -> amount(amount).node())
                .putObjects("parts", dose.parts(), SessionDoseJson::part)
                .putText("sumPercent", dose.sumPercent().map(BigDecimal::toPlainString))
                .putTexts("cautions", dose.cautions())
                .node();
    }

    private static Stated amount(Amount amount) {
        return new Stated()
                .put("drug", amount.drug())
                .put("basis", amount.basis().word())
                .put("mg", amount.mg().toPlainString());
    }

    private static ObjectNode part(Part part) {
        Stated node = amount(part.dose())
                .putFlag("vasoconstrictor", part.vasoconstrictor())
                .put("route", part.route().word());
        if (part.judged() instanceof Judged.Share share) {
            return node.put("percent", share.percent().toPlainString())
                    .put("limitMg", share.limitMg().toPlainString())
                    .put("source", share.source())
                    .put("edition", share.edition())
                    .put("approvedBy", share.approvedBy())
                    .node();
        }
        return node.put("noneBecause", ((Judged.None) part.judged()).why().word())
                .node();
    }

    private static Amount readAmount(JsonNode node) {
        return new Amount(text(node, "drug"), word(node, "basis", Basis.values(), Basis::word), decimal(node, "mg"));
    }

    private static Part readPart(JsonNode node) {
        Judged judged = node.has("noneBecause")
                ? new Judged.None(word(node, "noneBecause", DoseShares.Why.values(), DoseShares.Why::word))
                : new Judged.Share(
                        decimal(node, "percent"),
                        decimal(node, "limitMg"),
                        text(node, "source"),
                        text(node, "edition"),
                        text(node, "approvedBy"));
        return new Part(
                readAmount(node),
                node.path("vasoconstrictor").asBoolean(),
                word(node, "route", Route.values(), Route::word),
                judged);
    }

    private static String text(JsonNode node, String field) {
        if (!node.path(field).isTextual()) {
            throw new IllegalStateException("The doses kept with a revision have no " + field + ".");
        }
        return node.path(field).textValue();
    }

    private static BigDecimal decimal(JsonNode node, String field) {
        return new BigDecimal(text(node, field));
    }

    private static <T> T word(JsonNode node, String field, T[] values, Function<T, String> word) {
        String said = text(node, field);
        return Arrays.stream(values)
                .filter(value -> word.apply(value).equals(said))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("The doses kept with a revision name no " + field + "."));
    }

    private static <T> List<T> list(JsonNode node, String field, Function<JsonNode, T> reading) {
        List<T> list = new ArrayList<>();
        node.path(field).forEach(each -> list.add(reading.apply(each)));
        return list;
    }
}
