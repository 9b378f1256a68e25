// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.plan.Approach;
import dev.plumbline.problem.Refusal;
import dev.plumbline.sight.Measure;
import dev.plumbline.sight.NeedleUse;
import dev.plumbline.sight.Part;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.SightLadder;
import dev.plumbline.sight.SightRules;
import dev.plumbline.sight.SightStep;
import dev.plumbline.sight.StopSign;
import java.io.InputStream;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;

/** The ladders and the words at each sign, {@code sight-ladder.json}; schema {@code docs/site/sight-ladder.schema.json}. */
public final class SightFile {
    static final String NAME = "sight-ladder.json";

    private static final String[] SAYS = {"action", "reason", "mustNot"};
    private static final String[] STEP = {
        "id",
        "code",
        "when",
        "action",
        "reason",
        "mustNot",
        "moves",
        "keepsStill",
        "needle",
        "measure",
        "times",
        "onlyTooDeep",
        "endsPass"
    };

    private SightFile() {}

    /**
     * Reads the rules.
     *
     * @throws Refusal when the file is none, leaves a state without an answer, or a sign without words
     */
    public static SightRules read(InputStream in) {
        SiteObject root = SiteFile.read(in, "plumbline-sight/1", "passLimit", "fluidMl", "giveUp", "stops", "ladders");
        return root.valid(() -> new SightRules(
                root.objects("ladders", "approach", "carryOn", "steps").stream()
                        .map(SightFile::ladder)
                        .toList(),
                stops(root),
                root.whole("passLimit"),
                root.decimal("fluidMl"),
                says(root.object("giveUp", SAYS))));
    }

    /** The rules that ship. */
    public static SightRules shipped() {
        return SiteFile.shipped(NAME, SightFile::read);
    }

    private static Map<StopSign, SightStep.Says> stops(SiteObject root) {
        SiteObject stops = root.object(
                "stops", Arrays.stream(StopSign.values()).map(StopSign::word).toArray(String[]::new));
        Map<StopSign, SightStep.Says> all = new EnumMap<>(StopSign.class);
        for (StopSign sign : StopSign.values()) {
            stops.optionalObject(sign.word(), SAYS).ifPresent(fields -> all.put(sign, says(fields)));
        }
        return all;
    }

    private static SightLadder ladder(SiteObject fields) {
        return fields.valid(() -> new SightLadder(
                fields.word("approach", Approach.values(), Approach::word),
                fields.objects("steps", STEP).stream().map(SightFile::step).toList(),
                says(fields.object("carryOn", SAYS))));
    }

    private static SightStep step(SiteObject fields) {
        return fields.valid(() -> new SightStep(
                fields.text("id"),
                fields.optionalText("code"),
                fields.words("when", Seen.values(), Seen::word),
                says(fields),
                new SightStep.Hands(
                        fields.word("moves", Part.values(), Part::word),
                        fields.word("keepsStill", Part.values(), Part::word),
                        fields.word("needle", NeedleUse.values(), NeedleUse::word),
                        fields.word("measure", Measure.values(), Measure::word)),
                new SightStep.Limits(
                        fields.optionalWhole("times").orElse(1),
                        fields.optionalFlag("onlyTooDeep").orElse(false),
                        fields.optionalFlag("endsPass").orElse(false))));
    }

    private static SightStep.Says says(SiteObject fields) {
        return fields.valid(
                () -> new SightStep.Says(fields.text("action"), fields.text("reason"), fields.texts("mustNot")));
    }
}
