// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.worklist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.Timeouts;
import dev.plumbline.peer.PeerProcess;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Answered by DCMTK's wlmscpfs: PS3.4, annex K. */
class WorklistConformanceTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-01-05T09:30:00Z"), ZoneOffset.ofHours(1));

    @TempDir
    Path folder;

    private static Worklist worklist(int port) {
        return new Worklist(
                "ris",
                new Requestor("PLUMBLINE", Timeouts.USUAL),
                new Peer("WLSCP", "127.0.0.1", port, Optional.empty()),
                CLOCK);
    }

    private void schedule(String name, String date) throws Exception {
        Path items = Files.createDirectories(folder.resolve("wl/WLSCP"));
        Path dump = folder.resolve(name + ".dump");
        Files.writeString(dump, """
                (0008,0050) SH [ACC-%1$s]
                (0010,0010) PN [Invented^Person]
                (0010,0020) LO [INVENTED-%1$s]
                (0010,0030) DA [19700101]
                (0010,0040) CS [O]
                (0020,000d) UI [2.25.100%1$s]
                (0032,1060) LO [Axillary block]
                (0040,0100) SQ
                  (fffe,e000) na
                    (0008,0060) CS [US]
                    (0040,0001) AE [US1]
                    (0040,0002) DA [%2$s]
                    (0040,0003) TM [101500]
                    (0040,0006) PN [Doe^Jo]
                    (0040,0007) LO [Block, right]
                    (0040,0009) SH [SPS-%1$s]
                  (fffe,e00d) na
                (fffe,e0dd) na
                (0040,1001) SH [RP-%1$s]
                """.formatted(name, date));
        PeerProcess.Ended made = PeerProcess.run(
                folder,
                List.of(
                        "dump2dcm",
                        "-g",
                        dump.toString(),
                        items.resolve(name + ".wl").toString()));
        assertThat(made.code()).as(made.said()).isZero();
        Files.writeString(items.resolve("lockfile"), "");
    }

    @Test
    void asksForTheProceduresOfADay() throws Exception {
        schedule("1", "20260105");
        schedule("2", "20260106");
        int port = PeerProcess.freePort();
        try (PeerProcess ris = PeerProcess.start(
                folder,
                port,
                List.of("wlmscpfs", "-dfp", folder.resolve("wl").toString(), "-dfr", Integer.toString(port)))) {
            Worklist.Day today = worklist(ris.port()).scheduled(Optional.empty());
            assertThat(today.procedures()).hasSize(1);
            ScheduledProcedure procedure = today.procedures().get(0);
            assertThat(procedure.patient().id()).isEqualTo("INVENTED-1");
            assertThat(procedure.order().accessionNumber()).isEqualTo("ACC-1");
            assertThat(procedure.order().studyInstanceUid()).isEqualTo("2.25.1001");
            assertThat(procedure.order().requestedProcedureId()).isEqualTo("RP-1");
            assertThat(procedure.step().id()).isEqualTo("SPS-1");
            assertThat(WorklistJson.of(today).at("/items/0/startTime").asText()).isEqualTo("10:15:00");
            assertThat(worklist(ris.port())
                            .scheduled(Optional.of(LocalDate.of(2026, 1, 7)))
                            .procedures())
                    .isEmpty();
        }
    }

    @Test
    void saysInWordsThatNobodyAnswers() {
        Refusal refusal = catchThrowableOfType(Refusal.class, () -> worklist(1).scheduled(Optional.empty()));
        assertThat(refusal.problem()).isInstanceOf(Problem.Unavailable.class);
        assertThat(refusal.problem().detail()).contains("ris", "Nothing listens");
    }
}
