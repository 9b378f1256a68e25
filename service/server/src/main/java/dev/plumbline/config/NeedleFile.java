// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.needle.Gauge;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.needle.StockNeedle;
import dev.plumbline.needle.TipType;
import dev.plumbline.problem.Refusal;
import java.io.InputStream;
import java.nio.file.Path;

/** The needle catalogue, {@code needles.json}; schema {@code docs/site/needles.schema.json}. */
public final class NeedleFile {
    static final String NAME = "needles.json";

    private NeedleFile() {}

    /**
     * Reads a catalogue.
     *
     * @throws Refusal when the file is none, pointing at the field
     */
    public static NeedleCatalogue read(InputStream in) {
        SiteObject root = SiteFile.read(in, "plumbline-needles/1", Foundations.FIELD, "gauges", "needles");
        Foundations foundations = new Foundations(root);
        return root.valid(() -> new NeedleCatalogue(
                root.objects("gauges", "gauge", "outerDiameterMm", "innerDiameterMm", "foundation", "limits").stream()
                        .map(fields -> gauge(fields, foundations))
                        .toList(),
                root.objects("needles", "id", "tipType", "lengthMm", "gauge", "echogenic").stream()
                        .map(NeedleFile::needle)
                        .toList()));
    }

    /**
     * Reads a site's catalogue.
     *
     * @throws Refusal when the file is not there or is no catalogue, naming the file
     */
    public static NeedleCatalogue read(Path path) {
        return SiteFile.read(path, NeedleFile::read);
    }

    /** The catalogue that ships. */
    public static NeedleCatalogue shipped() {
        return SiteFile.shipped(NAME, NeedleFile::read);
    }

    private static Gauge gauge(SiteObject fields, Foundations foundations) {
        return fields.valid(() -> new Gauge(
                fields.whole("gauge"),
                new Gauge.Diameters(
                        fields.number("outerDiameterMm"), fields.number("innerDiameterMm"), foundations.of(fields)),
                fields.optionalObject("limits", "outerLeastMm", "outerMostMm", "innerLeastMm", "foundation")
                        .map(limits -> limits.valid(() -> new Gauge.Limits(
                                limits.number("outerLeastMm"),
                                limits.number("outerMostMm"),
                                limits.number("innerLeastMm"),
                                foundations.of(limits))))));
    }

    private static StockNeedle needle(SiteObject fields) {
        return fields.valid(() -> new StockNeedle(
                fields.text("id"),
                fields.word("tipType", TipType.values(), TipType::word),
                fields.number("lengthMm"),
                fields.whole("gauge"),
                fields.flag("echogenic")));
    }
}
