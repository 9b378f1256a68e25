// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.record.SiteRules;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BedsideFilesTest {
    @TempDir
    Path folder;

    private SiteRules rules(String more) throws IOException {
        Path config = folder.resolve("plumbline.json");
        Files.writeString(config, "{\"schema\": \"plumbline-service/1\"" + more + "}");
        return ServiceConfig.read(config).site();
    }

    private Problem problem(String more) {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> rules(more));
        assertThat(refusal).isNotNull();
        return refusal.problem();
    }

    @Test
    void whatShipsGivesNoVerdictAndAsksOnlyWhatWasKept() throws IOException {
        SiteRules shipped = rules("");
        assertThat(shipped.formulary().inForce()).isFalse();
        assertThat(shipped.formulary().whyNotInForce()).contains("the file is an example");
        assertThat(shipped.signing()).isEqualTo(new SiteRules.Signing(false, SightDetail.SUMMARY));
    }

    @Test
    void aSiteReplacesAFileAndSaysWhatItRequires() throws IOException {
        ObjectNode formulary = SiteFiles.shipped(FormularyFile.EXAMPLE);
        formulary.remove("example");
        formulary.putObject("approval").put("by", "Poe^An").put("on", "2026-01-02");
        Files.writeString(folder.resolve("own.json"), formulary.toString());
        SiteRules own = rules(", \"site\": {\"formulary\": \"own.json\"}, \"completeness\": \"required\","
                + " \"record\": {\"sightDetail\": \"none\"}");
        assertThat(own.formulary().inForce()).isTrue();
        assertThat(own.signing()).isEqualTo(new SiteRules.Signing(true, SightDetail.NONE));
    }

    @Test
    void aBadFileIsRefusedWithItsPlace() throws IOException {
        ObjectNode checks = SiteFiles.shipped(CheckFile.NAME);
        checks.put("stopMomentMinutes", "five");
        Files.writeString(folder.resolve("own.json"), checks.toString());
        Problem problem = problem(", \"site\": {\"setUpChecks\": \"own.json\"}");
        assertThat(problem.pointer()).isEqualTo("/site/setUpChecks");
        assertThat(problem.detail()).contains("own.json").contains("/stopMomentMinutes");
        assertThat(problem(", \"site\": {\"drugs\": \"nowhere.json\"}").pointer())
                .isEqualTo("/site/drugs");
        assertThat(problem(", \"site\": {\"drugz\": \"x\"}").pointer()).isEqualTo("/site/drugz");
        assertThat(problem(", \"completeness\": \"perhaps\"").pointer()).isEqualTo("/completeness");
    }
}
