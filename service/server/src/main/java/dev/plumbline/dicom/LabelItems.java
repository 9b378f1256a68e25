// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.agents.Labelled;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * A concentration: 122093 in mg/mL for every reader, and the text of the label, from which it is read back figure by figure,
 * because a percentage or 1 : n is no mg/mL number that could be turned back without rounding.
 */
final class LabelItems {
    private static final Code MG_PER_ML = Codes.dcm("122093");
    private static final Code LABEL = Codes.own("CONC-LABEL");
    private static final String ONE_IN = "1 : ";
    private static final Map<Labelled.Form, String> UNITS = Map.of(
            Labelled.Form.PERCENT, " %",
            Labelled.Form.MG_PER_ML, " mg/mL",
            Labelled.Form.MICROGRAMS_PER_ML, " ug/mL");

    static final FieldItem CONCENTRATION = new FieldItem(
            (stated, items) -> {
                Labelled labelled = labelled(stated.get("concentration"));
                items.add(Measurement.plain(
                        Relation.HAS_PROPERTIES,
                        MG_PER_ML,
                        DecimalText.stated(labelled.concentration().mgPerMl(), Codes.ucum("mg/mL"))));
                items.add(ContentItem.text(Relation.HAS_PROPERTIES, LABEL, text(labelled)));
            },
            (holder, stated) -> holder.textOf(LABEL).ifPresent(text -> read(text, stated.putObject("concentration"))));

    private LabelItems() {}

    private static Labelled labelled(JsonNode concentration) {
        Map.Entry<String, JsonNode> said = concentration.properties().iterator().next();
        Labelled.Form form = Arrays.stream(Labelled.Form.values())
                .filter(f -> f.word().equals(said.getKey()))
                .findFirst()
                .orElseThrow();
        return new Labelled(said.getValue().decimalValue(), form);
    }

    private static String text(Labelled labelled) {
        String value = labelled.value().toPlainString();
        String unit = UNITS.get(labelled.form());
        return unit == null ? ONE_IN + value : value + unit;
    }

    private static void read(String text, ObjectNode concentration) {
        for (Labelled.Form form : List.of(Labelled.Form.values())) {
            String unit = UNITS.get(form);
            if (unit == null && text.startsWith(ONE_IN)) {
                put(concentration, form, text.substring(ONE_IN.length()));
            } else if (unit != null && text.endsWith(unit)) {
                put(concentration, form, text.substring(0, text.length() - unit.length()));
            }
        }
    }

    private static void put(ObjectNode concentration, Labelled.Form form, String figures) {
        try {
            BigDecimal value = new BigDecimal(figures);
            if (form == Labelled.Form.ONE_IN) {
                concentration.put(form.word(), value.intValueExact());
            } else {
                concentration.put(form.word(), value);
            }
        } catch (ArithmeticException | NumberFormatException e) {
            throw Fault.malformed("The labelled concentration in the record is no number with its unit");
        }
    }
}
