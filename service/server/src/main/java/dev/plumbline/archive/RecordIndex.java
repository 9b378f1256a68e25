// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.deviation.Comparison;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.WrittenLife;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.RecordRevision;
import dev.plumbline.record.Uids;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What records are found by, made again from the DICOM files alone: signed reports, amendments and rejection notes tell
 * everything that a list says. Cases that were never signed, drafts and the queue do not stand in files.
 */
public final class RecordIndex {
    private final Archive archive;
    private final HeldFrames frames;

    public RecordIndex(Archive archive) {
        this.archive = archive;
        this.frames = new HeldFrames(archive);
    }

    /**
     * What came of it.
     *
     * @param added revisions that the index did not know
     */
    public record Rebuilt(int added, List<Damage> damages) {
        public Rebuilt {
            damages = List.copyOf(damages);
        }
    }

    /** By what a revision is found. */
    RecordRow row(RecordRevision revision, String reportUid) {
        FrameRef.Held planned = (FrameRef.Held) revision.document().frame();
        return RecordRows.of(
                revision, reportUid, frames.object(planned.sopInstanceUid()).header());
    }

    /** Lists what an older version kept without listing it. */
    public Rebuilt complete() {
        List<Damage> damages = new ArrayList<>();
        int added = 0;
        for (StoredRevision stored : archive.store().unlistedRevisions()) {
            try {
                CaseDocument document = CaseJson.read(stored.document().getBytes(StandardCharsets.UTF_8), Door.HTTP);
                RecordRow row = row(revision(stored, document), stored.reportUid());
                archive.store().write(writing -> {
                    writing.add(row);
                    return true;
                });
                added++;
            } catch (Refusal refusal) {
                damages.add(new Damage(
                        archive.store()
                                .object(stored.reportUid())
                                .map(archive::file)
                                .orElse(archive.root()),
                        "a record that cannot be listed: " + refusal.problem().detail()));
            }
        }
        return new Rebuilt(added, damages);
    }

    /**
     * Adds every signed report and rejection note that no revision speaks of, then lists what is not listed. What is added is
     * queued for the archives that this one sends to.
     */
    public Rebuilt rebuild(Instant now) {
        List<Damage> damages = new ArrayList<>();
        Map<String, WrittenLife.Note> notes = new TreeMap<>();
        Map<String, WrittenLife.Report> reports = new TreeMap<>();
        for (String uid : archive.store().instancesOf(WrittenLife.CLASSES)) {
            if (archive.store().revisionOfReport(uid).isEmpty()) {
                try {
                    DataSet header = frames.object(uid).header();
                    WrittenLife.report(header).ifPresent(report -> reports.put(uid, report));
                    WrittenLife.note(header).ifPresent(note -> notes.put(uid, note));
                } catch (Refusal refusal) {
                    damages.add(new Damage(
                            archive.file(archive.held(uid)),
                            "a document that is no record of this program: "
                                    + refusal.problem().detail()));
                }
            }
        }
        int added = 0;
        List<Map.Entry<String, WrittenLife.Report>> ordered = new ArrayList<>(reports.entrySet());
        ordered.sort(Comparator.comparing(entry -> entry.getValue().revision()));
        for (Map.Entry<String, WrittenLife.Report> report : ordered) {
            added += add(report.getKey(), report.getValue(), now);
        }
        for (Map.Entry<String, WrittenLife.Note> note : notes.entrySet()) {
            added += add(note.getKey(), note.getValue(), now);
        }
        Rebuilt listed = complete();
        damages.addAll(listed.damages());
        return new Rebuilt(added, damages);
    }

    private RecordRevision revision(StoredRevision stored, CaseDocument document) {
        CaseInputs inputs = CaseInputs.of(document, frames::geometry);
        Comparison comparison = Comparison.of(inputs.plan(), inputs.observations());
        return new RecordRevision(stored.caseId(), stored.revision(), document, comparison, stored.time());
    }

    private int add(String uid, WrittenLife.Report report, Instant now) {
        String caseId = report.document().caseId().orElse("");
        if (!uid.equals(Uids.instance(caseId, report.revision(), "sr"))) {
            return 0; // not ours to speak of: its UID does not follow from what it says
        }
        String document = CaseJson.canonical(report.document());
        Optional<StoredRevision.Change> change = report.predecessor()
                .map(replaced -> new StoredRevision.Change(replaced, report.reason(), report.changed(), ""));
        StoredRevision revision = new StoredRevision(
                caseId,
                report.revision(),
                report.time(),
                StoredRevision.State.SIGNED,
                document,
                uid,
                objects(caseId, report),
                change);
        StoredCase opened = archive.store()
                .storedCase(caseId)
                .orElseGet(() -> new StoredCase(
                        caseId,
                        document,
                        report.document().bedside().session().orElse(""),
                        report.time().toInstant()));
        return added(opened, revision, now);
    }

    /** The report first, then its companions in the order they are composed. */
    private List<String> objects(String caseId, WrittenLife.Report report) {
        int frameCount = 1 + report.document().observations().size();
        List<String> parts = new ArrayList<>(List.of("sr"));
        for (String each : List.of("sc", "pr")) {
            for (int i = 1; i <= frameCount; i++) {
                parts.add(each + "/" + i);
            }
        }
        parts.addAll(List.of("pdf", "ko"));
        return parts.stream()
                .map(part -> Uids.instance(caseId, report.revision(), part))
                .filter(uid -> archive.store().object(uid).isPresent())
                .toList();
    }

    private int add(String uid, WrittenLife.Note note, Instant now) {
        Optional<StoredRevision> withdrawn = note.named().stream()
                .flatMap(named -> archive.store().revisionOfReport(named).stream())
                .max(Comparator.comparing(StoredRevision::revision));
        if (withdrawn.isEmpty() || !uid.equals(Uids.instance(withdrawn.get().caseId(), note.revision(), "rn"))) {
            return 0; // withdraws something that is no record of ours
        }
        StoredRevision record = withdrawn.get();
        return added(
                archive.store().storedCase(record.caseId()).orElseThrow(),
                new StoredRevision(
                        record.caseId(),
                        note.revision(),
                        note.time(),
                        StoredRevision.State.WITHDRAWN,
                        record.document(),
                        uid,
                        List.of(uid),
                        Optional.of(new StoredRevision.Change(
                                record.reportUid(), note.ground().word(), note.text(), note.by()))),
                now);
    }

    private int added(StoredCase opened, StoredRevision revision, Instant now) {
        boolean added = archive.store().write(writing -> {
            writing.add(opened);
            boolean isNew = writing.add(revision);
            if (isNew) {
                writing.queue(revision, archive.destinations(), now);
            }
            return isNew;
        });
        return added ? 1 : 0;
    }
}
