// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.intake.ForeignMark.Coded;
import dev.plumbline.intake.LabelPattern;
import dev.plumbline.intake.MarkMeaning;
import dev.plumbline.intake.MarkRules;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Hazard;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.PatternSyntaxException;

/** What marks of other software mean, {@code mark-rules.json}; schema {@code docs/site/mark-rules.schema.json}. */
public final class MarkRuleFile {
    static final String NAME = "mark-rules.json";

    private MarkRuleFile() {}

    /**
     * Reads the rules.
     *
     * @throws Refusal when the file is none, pointing at the field
     */
    public static MarkRules read(InputStream in) {
        SiteObject root = SiteFile.read(in, "plumbline-mark-rules/1", "opens", "rules");
        return new MarkRules(
                root.objects("rules", "means", "label", "code", "hazardKind").stream()
                        .map(MarkRuleFile::rule)
                        .toList(),
                root.optionalWord("opens", Approach.values(), Approach::word));
    }

    /**
     * Reads a site's rules.
     *
     * @throws Refusal when the file is not there or holds no rules, naming the file
     */
    public static MarkRules read(Path path) {
        return SiteFile.read(path, MarkRuleFile::read);
    }

    /** The rules that ship: the words of the case document, in any case. */
    public static MarkRules shipped() {
        return SiteFile.shipped(NAME, MarkRuleFile::read);
    }

    private static MarkRules.Rule rule(SiteObject fields) {
        Optional<LabelPattern> label = fields.optionalText("label").map(text -> pattern(text, fields.at("label")));
        Optional<Coded> code = fields.optionalObject("code", "value", "scheme")
                .map(coded -> new Coded(coded.text("value"), coded.text("scheme")));
        return fields.valid(() -> new MarkRules.Rule(
                fields.word("means", MarkMeaning.values(), MarkMeaning::word),
                label,
                code,
                fields.optionalWord("hazardKind", Hazard.Kind.values(), Hazard.Kind::word)
                        .orElse(Hazard.Kind.OTHER)));
    }

    private static LabelPattern pattern(String text, String at) {
        try {
            return new LabelPattern(text);
        } catch (PatternSyntaxException e) {
            throw new Refusal(new Problem.InvalidValue(
                    at, "This is no regular expression: " + e.getDescription() + ".", "Give one of Java's."));
        }
    }
}
