// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.config.NeedleFile;
import dev.plumbline.document.AnswerJson;
import dev.plumbline.needle.NeedleCatalogue;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;

/** The option by which a command takes a site's own list of needles. */
final class Needles {
    @Option(
            names = "--needles",
            paramLabel = "FILE",
            description = "The list that needles are chosen from; the shipped one where absent.")
    private Optional<Path> file = Optional.empty();

    NeedleCatalogue catalogue() {
        return file.map(NeedleFile::read).orElseGet(NeedleFile::shipped);
    }

    AnswerJson answers() {
        return new AnswerJson(catalogue());
    }
}
