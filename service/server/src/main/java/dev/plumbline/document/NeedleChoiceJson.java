// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.Foundation;
import dev.plumbline.needle.Bore;
import dev.plumbline.needle.Gauge;
import dev.plumbline.needle.StockNeedle;
import dev.plumbline.plan.NeedleSuggestion;

/** Needles that reach, each with where its diameters come from. */
final class NeedleChoiceJson {
    private final AnswerWriter out;

    NeedleChoiceJson(AnswerWriter out) {
        this.out = out;
    }

    /** Fields of a plan: {@code needleChoices} and the words that go with them. */
    void fields(NeedleSuggestion suggestion) {
        out.objects("needleChoices", suggestion.choices(), this::one)
                .put("needleChoiceText", suggestion.text())
                .put("needleResistanceText", Bore.WORDS);
    }

    private void one(NeedleSuggestion.Choice choice) {
        StockNeedle needle = choice.needle();
        Gauge.Diameters diameters = choice.gauge().nominal();
        Foundation foundation = diameters.foundation();
        out.put("id", needle.id())
                .put("tipType", needle.tipType().word())
                .put("lengthMm", needle.lengthMm())
                .put("gauge", needle.gauge())
                .put("echogenic", needle.echogenic())
                .put("outerDiameterMm", diameters.outerMm())
                .put("innerDiameterMm", diameters.innerMm())
                .object(
                        "diameterSource",
                        () -> out.put("standing", foundation.standing().word()).put("text", foundation.text()));
        Quantities.quantity(out, "needleLeftMm", choice.needleLeft());
        out.put("resistanceRelative", choice.resistanceRelative())
                .put("resistanceReferenceGauge", choice.referenceGauge());
    }
}
