// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.geometry.Standing;
import dev.plumbline.geometry.Transducer;
import dev.plumbline.geometry.TransducerCatalogue;
import dev.plumbline.needle.Gauge;
import dev.plumbline.needle.NeedleCatalogue;
import dev.plumbline.needle.NeedleChoice;
import dev.plumbline.needle.NeedleWish;
import dev.plumbline.problem.Problem;
import java.io.IOException;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CatalogueFilesTest {
    private static final NeedleCatalogue NEEDLES = NeedleFile.shipped();
    private static final TransducerCatalogue TRANSDUCERS = TransducerFile.shipped();

    @ParameterizedTest
    @CsvSource({"needles.json, needles.schema.json", "transducers.json, transducers.schema.json"})
    void shippedFilesConformToTheirSchemas(String file, String schema) throws IOException {
        assertThat(SiteFiles.complaints(schema, SiteFiles.shipped(file))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"needles.json, needles.schema.json", "transducers.json, transducers.schema.json"})
    void schemasRefuseAnUnknownField(String file, String schema) throws IOException {
        assertThat(SiteFiles.complaints(schema, SiteFiles.shipped(file).put("colour", "red")))
                .isNotEmpty();
    }

    @Test
    void listsEveryGaugeFrom16To30() {
        assertThat(NEEDLES.gauges())
                .extracting(Gauge::number)
                .containsExactlyElementsOf(IntStream.rangeClosed(16, 30).boxed().toList());
    }

    @Test
    void nominalDiametersOf22GAreTheSourcesAndSaySo() {
        Gauge gauge = NEEDLES.gauge(22).orElseThrow();
        assertThat(gauge.nominal().outerMm()).isEqualTo(0.7176);
        assertThat(gauge.nominal().innerMm()).isEqualTo(0.413);
        assertThat(gauge.nominal().foundation().standing()).isEqualTo(Standing.CITED);
    }

    @Test
    void limitsFromMemorySaySo() {
        assertThat(NEEDLES.gauges())
                .allSatisfy(gauge -> assertThat(
                                gauge.limits().orElseThrow().foundation().standing())
                        .isEqualTo(Standing.FROM_MEMORY));
    }

    @Test
    void nominalDiametersLieWithinTheLimits() {
        assertThat(NEEDLES.gauges()).allSatisfy(gauge -> {
            Gauge.Limits limits = gauge.limits().orElseThrow();
            assertThat(gauge.nominal().outerMm()).isBetween(limits.outerLeastMm(), limits.outerMostMm());
            assertThat(gauge.nominal().innerMm()).isGreaterThanOrEqualTo(limits.innerLeastMm());
        });
    }

    @Test
    void aNeedleForSixtyFourMillimetresIsTheEighty() {
        NeedleChoice choice = NeedleChoice.from(NEEDLES, NeedleWish.ANY, 64);
        assertThat(((NeedleChoice.Reaches) choice).first().lengthMm()).isEqualTo(80);
    }

    @Test
    void beamThicknessIsCitedAndEverythingElseIsNot() {
        assertThat(TRANSDUCERS.transducers()).allSatisfy(transducer -> {
            assertThat(transducer.footprint().foundation().standing()).isNotEqualTo(Standing.CITED);
            assertThat(transducer.frequency().foundation().standing()).isNotEqualTo(Standing.CITED);
            assertThat(transducer.beams())
                    .allSatisfy(beam -> assertThat(beam.foundation().standing()).isEqualTo(Standing.CITED));
        });
    }

    @Test
    void linearBeamIsAboutOneMillimetreNearItsFocusAndUnknownBelow() {
        Transducer linear = TRANSDUCERS.byId("linear-38").orElseThrow();
        assertThat(linear.beamsAt(25))
                .singleElement()
                .satisfies(beam -> assertThat(beam.leastMm()).isEqualTo(1));
        assertThat(linear.beamsAt(60)).isEmpty();
    }

    @Test
    void curvedBeamIsMoreThanFiveMillimetresThickAtTwentyDeep() {
        Transducer curved = TRANSDUCERS.byId("curved-60").orElseThrow();
        assertThat(curved.beamsAt(20)).singleElement().satisfies(beam -> {
            assertThat(beam.leastMm()).isEqualTo(5);
            assertThat(beam.mostMm()).isEmpty();
        });
    }

    @Test
    void unknownFieldIsRefusedWithTheNearestName() throws IOException {
        Problem problem = SiteFiles.problem(
                "needles.json",
                NeedleFile::read,
                tree -> ((ObjectNode) tree.withArray("needles").get(0)).put("lenghtMm", 50));
        assertThat(problem).isInstanceOf(Problem.UnknownField.class);
        assertThat(problem.pointer()).isEqualTo("/needles/0/lenghtMm");
        assertThat(problem.remedy()).isEqualTo("Did you mean \"lengthMm\"?");
    }

    @Test
    void anImpossibleBoreIsRefusedWithItsPlace() throws IOException {
        Problem problem = SiteFiles.problem(
                "needles.json",
                NeedleFile::read,
                tree -> ((ObjectNode) tree.withArray("gauges").get(3)).put("innerDiameterMm", 2.0));
        assertThat(problem.pointer()).isEqualTo("/gauges/3");
        assertThat(problem.detail()).contains("bore");
    }

    @Test
    void aFigureWithoutItsFoundationIsRefused() throws IOException {
        assertThat(SiteFiles.problem(
                                "transducers.json",
                                TransducerFile::read,
                                tree -> ((ObjectNode) tree.withArray("transducers")
                                                .get(0)
                                                .get("footprint"))
                                        .put("foundation", "hearsay"))
                        .pointer())
                .isEqualTo("/transducers/0/footprint/foundation");
        assertThat(SiteFiles.problem(
                        "transducers.json",
                        TransducerFile::read,
                        tree -> ((ObjectNode)
                                        tree.withArray("transducers").get(0).get("footprint"))
                                .remove("foundation")))
                .isInstanceOf(Problem.MissingField.class);
    }

    @Test
    void anotherSchemaIsRefused() throws IOException {
        assertThat(SiteFiles.problem(
                                "needles.json", NeedleFile::read, tree -> tree.put("schema", "plumbline-needles/2"))
                        .pointer())
                .isEqualTo("/schema");
    }

    @Test
    void twoNeedlesOfOneNameAreRefused() throws IOException {
        Problem problem = SiteFiles.problem(
                "needles.json",
                NeedleFile::read,
                tree -> tree.withArray("needles")
                        .add(tree.withArray("needles").get(0).deepCopy()));
        assertThat(problem.detail()).contains("Two needles");
    }
}
