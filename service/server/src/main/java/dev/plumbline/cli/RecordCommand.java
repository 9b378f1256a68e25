// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.dicom.ComposedObject;
import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.document.CaseJson;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseCheck;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Companions;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.SessionDose;
import dev.plumbline.record.Signature;
import dev.plumbline.record.SigningCheck;
import dev.plumbline.record.SiteRules;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code record CASE --out DIR [--time T]}. */
@Command(
        name = "record",
        mixinStandardHelpOptions = true,
        description =
                "The record of a case as DICOM files: the report, an annotated image and a presentation state of each "
                        + "frame used, the readable record as PDF, and a key object selection.")
final class RecordCommand implements Callable<Integer> {
    private static final int FIRST_REVISION = 1;

    private final Terminal terminal;
    private final RecordComposer composer;
    private final SiteRules site;
    private final Clock clock;

    @Parameters(paramLabel = "CASE", description = "The case document.")
    private Path caseFile = Path.of("");

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "Folder for the files.")
    private Path folder = Path.of("");

    @Option(
            names = "--time",
            paramLabel = "T",
            description = "Time of a draft, ISO 8601 with offset; now where absent. A signed case has the signature's.")
    private Optional<String> time = Optional.empty();

    @Option(names = "--no-presentation-states", description = "Make no presentation states.")
    private boolean noPresentationStates;

    @Option(names = "--no-pdf", description = "Make no PDF.")
    private boolean noPdf;

    @Option(names = "--no-key-objects", description = "Make no key object selection.")
    private boolean noKeyObjects;

    RecordCommand(Terminal terminal, Plumbline.Collaborators with) {
        this.terminal = terminal;
        this.composer = with.composer();
        this.site = with.site();
        this.clock = with.clock();
    }

    @Override
    public Integer call() {
        OffsetDateTime draftTime = draftTime();
        CaseFiles.Loaded loaded = CaseFiles.load(caseFile);
        CaseDocument document = CaseJson.identified(loaded.document());
        OffsetDateTime now = OffsetDateTime.now(clock);
        CaseCheck.check(document, site, now);
        if (document.signature().isPresent()) {
            SigningCheck.require(document, loaded.beside(site, now));
        }
        if (time.isPresent() && document.signature().isPresent()) {
            terminal.note("plumbline: --time does not count here; the case is signed and has the signature's time, "
                    + document.signature().get().time() + ".");
        }
        RecordRevision alone = new RecordRevision(
                document.caseId().orElseThrow(),
                FIRST_REVISION,
                document,
                Comparison.of(loaded.inputs().plan(), loaded.inputs().observations()),
                document.signature().map(Signature::time).orElse(draftTime));
        RecordRevision revision = alone.with(doses(alone));
        Map<Path, byte[]> files = new LinkedHashMap<>();
        Companions companions = new Companions(!noPresentationStates, !noPdf, !noKeyObjects);
        for (ComposedObject object : composer.with(companions).compose(revision, loaded.frames())) {
            files.put(folder.resolve(object.part().replace('/', '-') + ".dcm"), object.bytes());
        }
        ProductFiles.writeNew(files);
        files.keySet().forEach(path -> terminal.line(path.toString()));
        return ExitCode.YES;
    }

    /** A file is one case; what else its session had given is not known here, and the record says so. */
    private Optional<SessionDose> doses(RecordRevision revision) {
        Optional<SessionDose> given = SessionDose.of(List.of(revision.document()), site, revision.time());
        return revision.document().bedside().session().isPresent()
                ? given.map(dose -> dose.with(SessionDose.THIS_CASE_ALONE))
                : given;
    }

    private OffsetDateTime draftTime() {
        try {
            return time.map(OffsetDateTime::parse)
                    .orElseGet(() -> OffsetDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS));
        } catch (DateTimeParseException e) {
            throw new Refusal(new Problem.InvalidValue(
                    "", "--time is not a time with offset.", "Give it such as 2026-01-05T10:15:00+01:00."));
        }
    }
}
