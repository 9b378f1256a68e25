// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.config.BedsideFiles;
import dev.plumbline.dicom.ComposedObject;
import dev.plumbline.dicom.Installation;
import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.dicom.SampleCases;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.samples.SampleSet;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A signed record, from the moment its report is durable until its companions are too. */
class CompanionMakerTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-01-05T09:30:00Z"), ZoneOffset.ofHours(1));
    private static final SampleSet SET = new SampleSet(1);
    private static final SampleObjects OBJECTS = new SampleObjects(SET);
    private static final CaseDocument SIGNED = SampleCases.held(SET).inPlane();

    private final AtomicLong nanoTime = new AtomicLong();

    @TempDir
    Path root;

    private DataFolder folder;
    private Store store;
    private Archive archive;
    private Records records;
    private CountDownLatch toSend;

    @BeforeEach
    void open() throws IOException {
        folder = DataFolder.open(root.resolve("data"));
        store = SqliteStore.open(folder.database());
        toSend = new CountDownLatch(1);
        archive = new Archive(folder, store, new LowWater(0, 0), new Outbound(List.of("pacs"), () -> {
            if (store.companionsDue().isEmpty() && !store.revisions(1, 0).isEmpty()) {
                toSend.countDown();
            }
        }));
        archive.receiveFrames(new ByteArrayInputStream(OBJECTS.file(SET.inPlanePlan())));
        archive.receiveFrames(new ByteArrayInputStream(OBJECTS.file(SET.inPlaneNeedle())));
        records = new Records(
                archive,
                new RecordComposer(new Installation(
                        "2.25.12345", "test", "Plumbline", "1", "0.0-test", "", "GB", SightDetail.SUMMARY)),
                new Cases(archive, BedsideFiles.shipped(), CLOCK),
                CLOCK);
    }

    @AfterEach
    void close() throws Exception {
        records.companions().close();
        store.close();
        folder.close();
    }

    /** As if the process was killed right after it answered. */
    private StoredRevision signedAndStopped() {
        records.companions().start(nanoTime::get);
        records.companions().close();
        records.file(SIGNED, Optional.empty(), standing -> "answered");
        return store.revisions(1, 0).get(0);
    }

    private void startAgain() throws Exception {
        close();
        open();
    }

    private List<String> held(StoredRevision signed) {
        return signed.objects().stream()
                .filter(uid -> store.object(uid).isPresent())
                .toList();
    }

    private List<Dispatches.Waiting> ready() {
        return store.dispatches().waiting("pacs", Dispatch.State.QUEUED);
    }

    private Dispatch dispatch() {
        return store.dispatches().get(1).orElseThrow();
    }

    private Path fileOfFrame() {
        return archive.file(archive.held(OBJECTS.sopInstanceUid(SET.inPlanePlan())));
    }

    @Test
    void onlyTheReportIsThereWhenTheSignatureIsAnsweredAndNothingIsSent() {
        StoredRevision signed = signedAndStopped();
        assertThat(signed.objects()).hasSize(7).startsWith(signed.reportUid());
        assertThat(held(signed)).containsExactly(signed.reportUid());
        assertThat(ready()).isEmpty();
        assertThat(dispatch().state()).isEqualTo(Dispatch.State.QUEUED);
        assertThat(dispatch().uncomposed()).contains("");
        assertThat(dispatch().parts())
                .extracting(Dispatch.Part::sopInstanceUid)
                .containsExactlyInAnyOrderElementsOf(signed.objects());
        assertThat(store.companionsDue())
                .singleElement()
                .satisfies(due -> assertThat(due.since()).isEqualTo(CLOCK.instant()));
    }

    @Test
    void theNextProcessComposesTheSameBytesAndTellsTheCouriers() throws Exception {
        StoredRevision signed = signedAndStopped();
        List<ComposedObject> expected = records.companions(signed.caseId(), signed.revision());
        startAgain();
        records.companions().start(nanoTime::get);
        assertThat(toSend.await(60, TimeUnit.SECONDS)).isTrue();
        assertThat(held(signed)).isEqualTo(signed.objects());
        for (ComposedObject object : expected) {
            assertThat(archive.file(archive.held(object.sopInstanceUid()))).hasBinaryContent(object.bytes());
        }
        assertThat(ready()).hasSize(1);
        assertThat(dispatch().uncomposed()).isEmpty();
    }

    @Test
    void whoLooksAtTheStudyFindsTheRecordWhole() {
        StoredRevision signed = signedAndStopped();
        archive.finish("1.2.3");
        assertThat(held(signed)).hasSize(1);
        archive.finish(archive.held(signed.reportUid()).identity().studyInstanceUid());
        assertThat(held(signed)).isEqualTo(signed.objects());
        assertThat(store.companionsDue()).isEmpty();
    }

    @Test
    void withoutAThreadItIsDoneWhenTheRecordIsFiled() {
        records.file(SIGNED, Optional.empty(), standing -> "answered");
        StoredRevision signed = store.revisions(1, 0).get(0);
        assertThat(held(signed)).isEqualTo(signed.objects());
        assertThat(ready()).hasSize(1);
    }

    @Test
    void aLostFrameIsNamedAndTheRecordIsWholeWhenTheFrameIsBack() throws Exception {
        StoredRevision signed = signedAndStopped();
        Path frame = fileOfFrame();
        Path aside = Files.move(frame, root.resolve("aside"));
        String study = archive.held(signed.reportUid()).identity().studyInstanceUid();
        archive.finish(study);
        assertThat(dispatch().uncomposed())
                .hasValueSatisfying(words -> assertThat(words).contains("doctor"));
        assertThat(ready()).isEmpty();
        Files.move(aside, frame);
        archive.finish(study);
        assertThat(held(signed)).as("it rests for a while").hasSize(1);
        nanoTime.addAndGet(Duration.ofMinutes(1).toNanos());
        archive.finish(study);
        assertThat(held(signed)).isEqualTo(signed.objects());
        assertThat(dispatch().uncomposed()).isEmpty();
    }

    /** The note must name every object that is withdrawn; none of them may come into being after it. */
    @Test
    void withdrawingMakesTheRecordWholeFirst() throws Exception {
        StoredRevision signed = signedAndStopped();
        Path frame = fileOfFrame();
        Path aside = Files.move(frame, root.resolve("aside"));
        assertThatThrownBy(() -> withdraw(signed))
                .isInstanceOfSatisfying(
                        Refusal.class,
                        refusal -> assertThat(refusal.problem())
                                .isInstanceOf(Problem.Conflict.class)
                                .extracting(Problem::detail)
                                .asString()
                                .contains("not whole"));
        Files.move(aside, frame);
        nanoTime.addAndGet(Duration.ofMinutes(1).toNanos());
        withdraw(signed);
        assertThat(held(signed)).isEqualTo(signed.objects());
        assertThat(store.revisions(signed.caseId())).hasSize(2);
    }

    private void withdraw(StoredRevision signed) {
        ObjectNode body = JsonNodeFactory.instance
                .objectNode()
                .put("reason", "wrongPatientOrSide")
                .put("text", "other side")
                .put("by", "Sample^Head");
        records.life()
                .withdraw(
                        new RecordLife.Step(signed.reportUid(), body, Optional.empty(), Optional.empty()),
                        standing -> "answered");
    }
}
