// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.config.ServiceConfig;
import dev.plumbline.dispatch.PeerCheck;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code verify}. */
@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        description = "Tries every configured peer step by step and says what is wrong. Exit 1 when something is.")
final class VerifyCommand implements Callable<Integer> {
    private final Terminal terminal;
    private final Clock clock;

    @Option(names = "--json", description = "One JSON document instead of words.")
    private boolean json;

    @Mixin
    private SiteOption site = new SiteOption();

    VerifyCommand(Terminal terminal, Clock clock) {
        this.terminal = terminal;
        this.clock = clock;
    }

    @Override
    public Integer call() {
        ServiceConfig config = site.read();
        List<PeerCheck.Step> steps = new PeerCheck(config.network(), clock).run();
        boolean fine = steps.stream().allMatch(PeerCheck.Step::ok);
        if (json) {
            terminal.json(json(steps, fine));
        } else {
            words(steps, fine);
        }
        return fine ? ExitCode.YES : ExitCode.NO;
    }

    private static ObjectNode json(List<PeerCheck.Step> steps, boolean fine) {
        ObjectNode answer = JsonNodeFactory.instance.objectNode().put("ok", fine);
        ArrayNode list = answer.putArray("steps");
        steps.forEach(step -> list.addObject()
                .put("peer", step.peer())
                .put("step", step.step())
                .put("ok", step.ok())
                .put("text", step.words()));
        return answer;
    }

    private void words(List<PeerCheck.Step> steps, boolean fine) {
        if (steps.isEmpty()) {
            terminal.line("No peers are configured.");
            return;
        }
        TextTable table = new TextTable();
        steps.forEach(step -> table.row(List.of(step.peer(), step.ok() ? "ok" : "WRONG", step.step(), step.words())));
        terminal.line(table.text());
        terminal.line(fine ? "Everything that is configured works." : "Something is wrong; see above.");
    }
}
