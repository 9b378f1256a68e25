// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.Cautions;
import dev.plumbline.record.SiteRules;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Clock;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;

/** The command {@code plumbline} with all its subcommands. */
public final class Plumbline {
    private final CommandLine commands;

    /** What the commands lead to, and what they may not make themselves. */
    public record Collaborators(
            String version,
            RecordComposer composer,
            SiteRules site,
            Clock clock,
            ServeCommand.Serving serving,
            Streams streams) {}

    /** Where many cases come from and many answers go to, as bytes. */
    public record Streams(InputStream in, OutputStream out) {}

    public Plumbline(Collaborators with, PrintWriter out, PrintWriter err) {
        Terminal terminal = new Terminal(out, err);
        CommandSpec root = CommandSpec.forAnnotatedObject(new Root());
        String cautions = Terminal.wrapped(Cautions.text()).replace("%", "%%"); // a version is a format
        root.name("plumbline").version("plumbline " + with.version(), "", cautions);
        commands = new CommandLine(root)
                .addSubcommand(new PlanCommand(terminal))
                .addSubcommand(new CompareCommand(terminal, with.streams()))
                .addSubcommand(new RecordCommand(terminal, with))
                .addSubcommand(new ShowCommand(terminal))
                .addSubcommand(new CheckCommand(terminal))
                .addSubcommand(new MarksCommand(terminal))
                .addSubcommand(new SightCommand(terminal, with.site()))
                .addSubcommand(new LogCommand(terminal, with.site(), with.clock()))
                .addSubcommand(new FrameCommand(terminal))
                .addSubcommand(new AgreementCommand(terminal))
                .addSubcommand(new SamplesCommand(terminal))
                .addSubcommand(new ServeCommand(with.serving()))
                .setOut(out)
                .setErr(err)
                .setExecutionExceptionHandler((fault, command, arguments) -> ended(fault, terminal, debug(command)))
                .setUnmatchedOptionsArePositionalParams(false);
    }

    /** Adds a command of another room. */
    public Plumbline with(Object command) {
        commands.addSubcommand(command);
        return this;
    }

    /** Adds the commands for who keeps the service running. */
    public Plumbline with(SiteCommands site) {
        site.all().forEach(commands::addSubcommand);
        return this;
    }

    /** Runs one command; gives the exit code. */
    public int run(String... arguments) {
        return commands.execute(arguments);
    }

    private static boolean debug(CommandLine command) {
        Root root = (Root) command.getCommandSpec().root().userObject();
        return root.debug || "1".equals(System.getenv("PLUMBLINE_DEBUG"));
    }

    private static int ended(Exception fault, Terminal terminal, boolean debug) {
        if (fault instanceof Refusal refusal) {
            terminal.refusal(refusal.problem());
            return ExitCode.BAD_INPUT;
        }
        terminal.note("plumbline: " + Incident.of(fault).words());
        terminal.note("  This is no fault of the input. Please report it with the command that was given.");
        if (debug) {
            StringWriter trace = new StringWriter();
            fault.printStackTrace(new PrintWriter(trace));
            terminal.note(trace.toString());
        } else {
            terminal.note("  With --debug the trace is printed too; it may repeat what is in the input.");
        }
        return ExitCode.OUR_FAULT;
    }

    /** Without a subcommand there is nothing to do but to say what there is. */
    @Command(
            mixinStandardHelpOptions = true,
            synopsisSubcommandLabel = "COMMAND",
            description = "Plans, measures and records needle paths of nerve blocks under ultrasound.")
    private static final class Root implements Runnable {
        @CommandLine.Spec
        private CommandSpec spec = CommandSpec.create();

        @Option(
                names = "--debug",
                scope = ScopeType.INHERIT,
                description = "After a fault of Plumbline itself, print the trace (also: PLUMBLINE_DEBUG=1).")
        private boolean debug;

        @Override
        public void run() {
            throw new CommandLine.ParameterException(spec.commandLine(), "Give a command.");
        }
    }
}
