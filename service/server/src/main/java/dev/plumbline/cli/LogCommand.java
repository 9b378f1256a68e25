// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.LogJson;
import dev.plumbline.record.CaseCheck;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.SiteRules;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code log CASE}. */
@Command(
        name = "log",
        mixinStandardHelpOptions = true,
        description = "What follows from the log of a case: figures, contradictions, doses, and what is missing.")
final class LogCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final SiteRules site;
    private final Clock clock;

    @Parameters(paramLabel = "CASE", description = "The case document.")
    private Path caseFile = Path.of("");

    @Option(names = "--json", description = "Print one JSON document instead of words.")
    private boolean json;

    LogCommand(Terminal terminal, SiteRules site, Clock clock) {
        this.terminal = terminal;
        this.site = site;
        this.clock = clock;
    }

    @Override
    public Integer call() {
        CaseFiles.Loaded loaded = CaseFiles.load(caseFile);
        CaseDocument document = CaseJson.identified(loaded.document());
        OffsetDateTime now = OffsetDateTime.now(clock);
        CaseCheck.check(document, site, now);
        ObjectNode log = LogJson.of(
                document,
                new LogJson.Facts(
                        site,
                        loaded.frames().patientKnown(document),
                        loaded.frames().imageSide(document),
                        Map.of(),
                        now));
        if (json) {
            terminal.json(log);
        } else {
            words(log);
            terminal.cautions();
        }
        return ExitCode.YES;
    }

    private void words(JsonNode log) {
        terminal.line("Passes " + log.path("passes").asText() + ", redirections "
                + log.path("redirections").asText() + ", injected "
                + log.path("injectedMl").asText() + " mL.");
        terminal.line("Time under the skin " + seconds(log.path("timeUnderSkinSec")) + ", with the tip not seen "
                + seconds(log.path("timeTipUnseenSec")) + ".");
        log.path("contradictions")
                .forEach(flag ->
                        terminal.line("Contradiction: " + flag.path("kind").asText() + " at event "
                                + flag.path("event").asText() + "."));
        log.path("doseBudget").path("stages").path("given").path("totals").forEach(this::total);
        log.path("doseBudget").path("cautions").forEach(caution -> terminal.line(caution.asText()));
        if (!log.path("doseBudget").path("formularyInForce").booleanValue()) {
            terminal.line("No verdict on doses: "
                    + log.path("doseBudget").path("noVerdictBecause").asText() + ".");
        }
        log.path("completeness").path("missing").forEach(this::missing);
    }

    private void total(JsonNode total) {
        JsonNode perKg = total.path("mgPerKg");
        terminal.line("Given: " + total.path("drug").asText() + " "
                + total.path("massMg").asText() + " mg"
                + (perKg.path("value").isNull()
                        ? " (" + perKg.path("reason").asText() + ")"
                        : ", " + perKg.path("value").asText() + " mg/kg")
                + ".");
    }

    private void missing(JsonNode item) {
        if (item.path("requiredToSign").booleanValue()) {
            terminal.line("Not recorded, needed to sign: " + item.path("text").asText() + ".");
        }
    }

    private static String seconds(JsonNode time) {
        return time.path("value").isNull()
                ? "unknown (" + time.path("reason").asText() + ")"
                : time.path("value").asText() + " s";
    }
}
