// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Transducer;
import dev.plumbline.geometry.TransducerCatalogue;
import dev.plumbline.problem.Refusal;
import java.io.InputStream;
import java.nio.file.Path;

/** The transducer catalogue, {@code transducers.json}; schema {@code docs/site/transducers.schema.json}. */
public final class TransducerFile {
    static final String NAME = "transducers.json";

    private TransducerFile() {}

    /**
     * Reads a catalogue.
     *
     * @throws Refusal when the file is none, pointing at the field
     */
    public static TransducerCatalogue read(InputStream in) {
        SiteObject root = SiteFile.read(in, "plumbline-transducers/1", Foundations.FIELD, "transducers");
        Foundations foundations = new Foundations(root);
        return root.valid(() -> new TransducerCatalogue(
                root.objects("transducers", "id", "kind", "footprint", "frequency", "beams").stream()
                        .map(fields -> transducer(fields, foundations))
                        .toList()));
    }

    /**
     * Reads a site's catalogue.
     *
     * @throws Refusal when the file is not there or is no catalogue, naming the file
     */
    public static TransducerCatalogue read(Path path) {
        return SiteFile.read(path, TransducerFile::read);
    }

    /** The catalogue that ships. */
    public static TransducerCatalogue shipped() {
        return SiteFile.shipped(NAME, TransducerFile::read);
    }

    private static Transducer transducer(SiteObject fields, Foundations foundations) {
        SiteObject footprint = fields.object("footprint", "mm", "foundation");
        SiteObject frequency = fields.object("frequency", "lowMhz", "highMhz", "foundation");
        return new Transducer(
                fields.text("id"),
                fields.word("kind", Probe.Kind.values(), Probe.Kind::word),
                footprint.valid(() -> new Transducer.Footprint(footprint.number("mm"), foundations.of(footprint))),
                frequency.valid(() -> new Transducer.Frequency(
                        frequency.number("lowMhz"), frequency.number("highMhz"), foundations.of(frequency))),
                fields.objects("beams", "fromDepthMm", "toDepthMm", "leastMm", "mostMm", "foundation").stream()
                        .map(beam -> beam.valid(() -> new Transducer.BeamThickness(
                                beam.number("fromDepthMm"),
                                beam.number("toDepthMm"),
                                beam.number("leastMm"),
                                beam.optionalNumber("mostMm"),
                                foundations.of(beam))))
                        .toList());
    }
}
