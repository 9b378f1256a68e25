// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.agents.Concentration;
import dev.plumbline.agents.Drug;
import dev.plumbline.agents.DrugList;
import dev.plumbline.agents.Formulary;
import dev.plumbline.geometry.Standing;
import dev.plumbline.problem.Problem;
import java.io.IOException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AgentFilesTest {
    private static final DrugList DRUGS = DrugFile.shipped();

    @ParameterizedTest
    @CsvSource({"drugs.json, drugs.schema.json", "formulary-example.json, formulary.schema.json"})
    void shippedFilesConformToTheirSchemas(String file, String schema) throws IOException {
        assertThat(SiteFiles.complaints(schema, SiteFiles.shipped(file))).isEmpty();
        assertThat(SiteFiles.complaints(schema, SiteFiles.shipped(file).put("colour", "red")))
                .isNotEmpty();
    }

    @Test
    void theExampleFormularyIsSwitchedOffAndSaysSo() throws IOException {
        Formulary example = FormularyFile.example();
        assertThat(example.rows()).isNotEmpty();
        assertThat(example.inForce()).isFalse();
        assertThat(example.whyNotInForce()).contains("the file is an example");
        assertThat(SiteFiles.shipped(FormularyFile.EXAMPLE).get("about").textValue())
                .contains("switched off");
    }

    @Test
    void anExampleCannotBeApproved() throws IOException {
        Problem problem = SiteFiles.problem(
                FormularyFile.EXAMPLE,
                FormularyFile::read,
                tree -> tree.putObject("approval").put("by", "Doe^Jo").put("on", "2026-01-05"));
        assertThat(problem).isInstanceOf(Problem.ContradictoryFields.class);
    }

    @Test
    void aNamedPersonPutsItIntoForce() throws IOException {
        ObjectNode tree = SiteFiles.shipped(FormularyFile.EXAMPLE);
        tree.remove("example");
        assertThat(FormularyFile.read(SiteFiles.bytes(tree)).whyNotInForce()).contains("nobody has approved the file");
        tree.putObject("approval").put("by", "Doe^Jo").put("on", "2026-01-05");
        assertThat(FormularyFile.read(SiteFiles.bytes(tree)).inForce()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"sample, 2026-01-05", "Doe^Jo, yesterday"})
    void nobodyInParticularOrNoDayIsRefused(String by, String on) throws IOException {
        Problem problem = SiteFiles.problem(FormularyFile.EXAMPLE, FormularyFile::read, tree -> {
            tree.remove("example");
            tree.putObject("approval").put("by", by).put("on", on);
        });
        assertThat(problem.pointer()).isEqualTo("/approval");
    }

    @Test
    void aRowWithoutALimitOrSourceIsRefusedWithItsPlace() throws IOException {
        assertThat(SiteFiles.problem(
                                FormularyFile.EXAMPLE,
                                FormularyFile::read,
                                tree -> ((ObjectNode) tree.withArray("rows").get(2)).remove("absoluteMg"))
                        .pointer())
                .isEqualTo("/rows/2");
        assertThat(SiteFiles.problem(
                        FormularyFile.EXAMPLE,
                        FormularyFile::read,
                        tree -> ((ObjectNode) tree.withArray("rows").get(2)).remove("source")))
                .isInstanceOf(Problem.MissingField.class);
    }

    @Test
    void everyRowIsForADrugOfTheList() {
        assertThat(FormularyFile.example().rows())
                .allSatisfy(row -> assertThat(DRUGS.drug(row.use().drug()).localAnaesthetic())
                        .isTrue());
    }

    @ParameterizedTest
    @CsvSource({"bupivacaine, 0.5", "ropivacaine, 0.75", "lidocaine, 2", "levobupivacaine, 0.25", "mepivacaine, 1.5"})
    void perCentTypedAsMilligramsIsQuestioned(String drug, String number) {
        assertThat(DRUGS.drug(drug).doubt(Concentration.mgPerMl(number))).contains(Drug.Doubt.MAY_BE_PERCENT);
        assertThat(DRUGS.drug(drug).doubt(Concentration.percent(number))).isEmpty();
    }

    @Test
    void usualRangesSayThatTheyAreFromMemory() {
        assertThat(DRUGS.drugs())
                .allSatisfy(drug -> drug.usual()
                        .ifPresent(usual ->
                                assertThat(usual.foundation().standing()).isEqualTo(Standing.FROM_MEMORY)));
    }

    @Test
    void figuresAreReadAsTheyAreWritten() throws IOException {
        assertThat(FormularyFile.example().rows().get(0).limit().mgPerKg().orElseThrow())
                .isEqualByComparingTo("4.5");
        ObjectNode tree = SiteFiles.shipped(FormularyFile.EXAMPLE);
        ((ObjectNode) tree.withArray("rows").get(0)).put("mgPerKg", new java.math.BigDecimal("4.1"));
        assertThat(FormularyFile.read(SiteFiles.bytes(tree))
                        .rows()
                        .get(0)
                        .limit()
                        .mgPerKg()
                        .orElseThrow()
                        .toPlainString())
                .isEqualTo("4.1");
    }
}
