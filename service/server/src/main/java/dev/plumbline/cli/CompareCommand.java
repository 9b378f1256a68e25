// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code compare CASE}. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = "Plan, observations and how each differs from the plan. Exit 0 whatever the difference.")
final class CompareCommand implements Callable<Integer> {
    /** What many answers at once may keep of frame files; a design choice. */
    private static final int FRAMES_KEPT = 64;

    private final Terminal terminal;
    private final Plumbline.Streams streams;

    @Spec
    private CommandSpec spec = CommandSpec.create();

    @ArgGroup(multiplicity = "1")
    private Cases cases = new Cases();

    @Option(names = "--json", description = "Print one JSON document instead of words.")
    private boolean json;

    /** One case, or many. */
    private static final class Cases {
        @Parameters(paramLabel = "CASE", description = "The case document.")
        private Optional<Path> file = Optional.empty();

        @Option(
                names = "--batch",
                paramLabel = "CASES",
                description = "Many case documents, one a line (NDJSON), - for standard input; one answer a line, in"
                        + " order. Exit 2 when a line was refused; the others are answered all the same.")
        private Optional<String> batch = Optional.empty();
    }

    @Mixin
    private Drawings drawings = new Drawings();

    @Mixin
    private Needles needles = new Needles();

    CompareCommand(Terminal terminal, Plumbline.Streams streams) {
        this.terminal = terminal;
        this.streams = streams;
    }

    @Override
    public Integer call() throws IOException {
        if (cases.batch.isPresent()) {
            return batch(cases.batch.get());
        }
        return compare(cases.file.orElseThrow(
                () -> new ParameterException(spec.commandLine(), "Give a CASE, or many with --batch CASES.")));
    }

    private int batch(String source) throws IOException {
        if (drawings.any()) {
            throw new Refusal(new Problem.ContradictoryFields(
                    "", "A batch is not drawn.", "Draw single cases: compare CASE --svg OUT or --png OUT."));
        }
        if (source.equals("-")) {
            return batch(streams.in(), Path.of(""));
        }
        try (InputStream in = Files.newInputStream(Path.of(source))) {
            return batch(in, Path.of(source).resolveSibling(""));
        } catch (InvalidPathException | FileSystemException e) {
            throw new Refusal(new Problem.NotHeld(
                    "", "The file " + source + " cannot be read.", "Name a file that is there, or -."));
        }
    }

    private int batch(InputStream in, Path folder) throws IOException {
        BatchAnswers answers = new BatchAnswers(needles.answers(), folder, new FrameFiles.Kept(FRAMES_KEPT));
        return new Batch(answers, terminal).run(in, streams.out());
    }

    private int compare(Path caseFile) {
        CaseFiles.Loaded loaded = CaseFiles.load(caseFile);
        Comparison comparison =
                Comparison.of(loaded.inputs().plan(), loaded.inputs().observations());
        drawings.comparison(loaded, comparison);
        if (json) {
            terminal.json(needles.answers().comparison(loaded.document(), comparison));
        } else {
            terminal.line(ComparisonWords.of(comparison, loaded.document()));
            terminal.cautions();
        }
        return ExitCode.YES;
    }
}
