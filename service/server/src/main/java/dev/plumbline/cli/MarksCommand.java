// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.config.MarkRuleFile;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.ForeignObjects;
import dev.plumbline.document.GatheredJson;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.intake.ForeignObject;
import dev.plumbline.intake.Gathered;
import dev.plumbline.intake.Gathered.RefusedObject;
import dev.plumbline.intake.Gathering;
import dev.plumbline.intake.MarkFrames;
import dev.plumbline.intake.MarkRules;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code marks FILE..}. */
@Command(
        name = "marks",
        mixinStandardHelpOptions = true,
        description = {
            "What marks of other software mean: the images of a study and the reports or presentation states drawn on them.",
            "Exit 0 when every mark holds; 1 when something is asked, refused or known to no rule."
        })
final class MarksCommand implements Callable<Integer> {
    private final Terminal terminal;

    @Parameters(
            paramLabel = "FILE",
            arity = "1..*",
            description = "Images, reports and presentation states, in any order.")
    private List<Path> files = List.of();

    @Option(names = "--rules", paramLabel = "FILE", description = "The site's rules; the shipped ones where absent.")
    private Optional<Path> rules = Optional.empty();

    @Option(names = "--json", description = "Print one JSON document instead of words.")
    private boolean json;

    MarksCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws IOException {
        MarkRules site = rules.map(MarkRuleFile::read).orElseGet(MarkRuleFile::shipped);
        Images images = new Images();
        List<ForeignObject> drawn = new ArrayList<>();
        List<RefusedObject> unread = new ArrayList<>();
        for (Path file : files) {
            DicomFile object = CaseFiles.open(file);
            if (!ForeignObjects.canCarryMarks(object.sopClassUid())) {
                images.byUid.put(object.sopInstanceUid(), object);
                continue;
            }
            try {
                ForeignObjects.read(object.header()).ifPresent(drawn::add);
            } catch (Refusal refusal) {
                unread.add(new RefusedObject(
                        object.sopInstanceUid(),
                        "",
                        refusal.problem().detail(),
                        refusal.problem().remedy()));
            }
        }
        Gathered gathered = Gathering.of(drawn, unread, site, images);
        if (json) {
            terminal.json(GatheredJson.of(gathered));
        } else {
            words(gathered);
        }
        boolean whole = gathered.unmatched().isEmpty()
                && gathered.questions().isEmpty()
                && gathered.refused().isEmpty();
        return whole ? ExitCode.YES : ExitCode.NO;
    }

    private void words(Gathered gathered) {
        gathered.placed()
                .forEach(mark -> terminal.line(mark.meaning().word() + ": \"" + mark.name() + "\", "
                        + mark.points().size() + (mark.points().size() == 1 ? " point" : " points") + " on frame "
                        + mark.frame().number()));
        gathered.unmatched()
                .forEach(mark -> terminal.line("not taken: " + String.join(" / ", mark.labels()) + ", "
                        + mark.form().words() + ", " + mark.at() + ". " + mark.why()));
        gathered.questions().forEach(question -> terminal.line("asked: " + question.text() + " " + question.at()));
        gathered.refused()
                .forEach(object ->
                        terminal.line("refused: " + object.at() + " " + object.why() + " " + object.remedy()));
        gathered.remarks().forEach(remark -> terminal.line("noticed: " + remark.text() + " " + remark.at()));
    }

    /** The images among the files. */
    private static final class Images implements MarkFrames {
        private final Map<String, DicomFile> byUid = new HashMap<>();

        @Override
        public Optional<Integer> count(String sopInstanceUid) {
            return Optional.ofNullable(byUid.get(sopInstanceUid)).map(DicomFile::frameCount);
        }

        @Override
        public FrameGeometry geometry(String sopInstanceUid, int number) {
            return Objects.requireNonNull(byUid.get(sopInstanceUid)).geometry(number);
        }
    }
}
