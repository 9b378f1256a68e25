// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.readout.HtmlText;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Cautions;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleScene;
import dev.plumbline.samples.SampleSet;
import dev.plumbline.samples.SampleTruth;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The page of the sample set: every sample with its picture and what it shows; plain HTML without any script. */
final class SampleIndexPage {
    private final SampleSet set;
    private final Map<String, CaseDocument> cases;

    SampleIndexPage(SampleSet set, Map<String, CaseDocument> cases) {
        this.set = set;
        this.cases = cases;
    }

    /** Which frame of a cine stands for it, from 0: one in which something has happened. */
    static int shownFrame(Sample sample) {
        return sample.scene().frames() * 3 / 5;
    }

    String html() {
        StringBuilder body = new StringBuilder();
        for (Sample.Chapter chapter : Sample.Chapter.values()) {
            body.append("<h2>").append(HtmlText.escaped(chapter.title())).append("</h2>\n<div class=\"cards\">\n");
            set.all().stream().filter(sample -> sample.chapter() == chapter).forEach(sample -> card(sample, body));
            body.append("</div>\n");
        }
        body.append("<h2>Ready cases</h2>\n<ul class=\"cases\">\n");
        cases.forEach((name, document) -> caseLine(name, document, body));
        body.append("</ul>\n");
        return resource("sample-set.html")
                .replace("{{seed}}", Long.toString(set.seed()))
                .replace("{{count}}", Integer.toString(set.all().size()))
                .replace("{{body}}", body)
                .replace("{{cautions}}", HtmlText.escaped(Cautions.text()));
    }

    private void card(Sample sample, StringBuilder body) {
        String name = sample.name();
        body.append(String.format(
                """
                <article>
                <a href="%1$s.png"><img src="%1$s.png" alt="%2$s" width="%3$d" height="%4$d" loading="lazy"></a>
                <h3>%1$s</h3>
                <p>%2$s</p>
                <p class="facts">%5$s</p>
                <p class="files"><a href="%1$s.dcm">DICOM</a><a href="%1$s.json">truth</a></p>
                </article>
                """,
                name,
                HtmlText.escaped(sample.shows()),
                sample.scene().layout().columns(),
                sample.scene().layout().rows(),
                HtmlText.escaped(facts(sample))));
    }

    private static String facts(Sample sample) {
        SampleScene scene = sample.scene();
        SampleTruth truth = scene.truths().get(shownFrame(sample));
        String picture = String.format(
                Locale.ROOT,
                "%d \u00d7 %d %s%s, %s",
                scene.layout().columns(),
                scene.layout().rows(),
                scene.layout().colour() ? "RGB" : "grey",
                scene.frames() == 1 ? "" : ", " + scene.frames() + " frames",
                scaleWords(truth));
        return picture + truth.needle().map(SampleIndexPage::needleWords).orElse(". No needle to be seen.");
    }

    private static String scaleWords(SampleTruth truth) {
        String wide = length(truth.pixel().mmPerColumn());
        String high = length(truth.pixel().mmPerRow());
        String pixel = (wide.equals(high) ? wide : wide + " \u00d7 " + high) + " mm per pixel";
        int regions = truth.scale().regions().size();
        if (regions > 0) {
            return pixel + (regions == 1 ? " in 1 region" : " in " + regions + " regions");
        }
        return truth.scale().pixelSpacing().isPresent() ? pixel + " from Pixel Spacing" : "no scale stated";
    }

    private static String length(double mm) {
        return new BigDecimal(mm).round(new MathContext(4)).stripTrailingZeros().toPlainString();
    }

    private static String needleWords(SampleTruth.NeedleTruth needle) {
        SampleTruth.NeedleLengths lengths = needle.lengths();
        if (lengths.punctureDistanceMm().isPresent()) {
            return String.format(
                    Locale.ROOT,
                    ". Crosses %.1f mm deep, puncture %.0f mm away.",
                    lengths.endDepthMm(),
                    lengths.punctureDistanceMm().getAsDouble());
        }
        return String.format(
                Locale.ROOT,
                ". Needle %.1f\u00b0 to the skin, tip %.1f mm deep%s.",
                lengths.angleToSkinDeg(),
                lengths.endDepthMm(),
                needle.tipVisible() ? "" : " (not in the beam)");
    }

    private static void caseLine(String name, CaseDocument document, StringBuilder body) {
        Optional<String> signer = document.signature().map(signature -> "signed");
        body.append(String.format(
                "<li><a href=\"%1$s.case.json\">%1$s.case.json</a> %2$s, %3$s, %4$s</li>\n",
                name,
                document.approach().word().equals("inPlane") ? "in-plane" : "out-of-plane",
                document.intent().isPresent() ? "intent stated" : "nothing decided yet",
                observations(document.observations().size()) + ", " + signer.orElse("a draft")));
    }

    private static String observations(int count) {
        List<String> words = Arrays.asList("no observation", "one observation", "two observations");
        return words.get(Math.min(count, 2));
    }

    private static String resource(String name) {
        try (InputStream in = SampleIndexPage.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the build.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
