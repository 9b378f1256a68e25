// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.SampleSetWriter;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code samples --out DIR --seed N}. */
@Command(
        name = "samples",
        mixinStandardHelpOptions = true,
        description = "Synthetic ultrasound frames with ground truth, ready cases and a page that shows them.")
final class SamplesCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "Folder for the files.")
    private Path folder = Path.of("");

    @Option(
            names = "--seed",
            paramLabel = "N",
            defaultValue = "1",
            description = "The same number gives the same bytes; ${DEFAULT-VALUE} where absent.")
    private long seed;

    SamplesCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        try {
            terminal.line(SampleSetWriter.write(folder, seed).toString());
            return ExitCode.YES;
        } catch (FileSystemException e) {
            throw ProductFiles.notWritable(folder);
        }
    }
}
