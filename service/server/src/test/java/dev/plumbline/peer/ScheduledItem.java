// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.peer;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * An item of DCMTK's worklist: an axillary block of an invented person, at a quarter past ten.
 *
 * @param name distinguishes its file and its procedure ids
 * @param date as DICOM writes it
 */
public record ScheduledItem(String name, String date, String patientId, String studyUid, String accession) {
    /** The folder that wlmscpfs serves, its application entity called WLSCP. */
    public static Path served(Path folder) {
        return folder.resolve("wl");
    }

    /** Puts the item where wlmscpfs finds it. */
    public void schedule(Path folder) throws Exception {
        Path items = Files.createDirectories(served(folder).resolve("WLSCP"));
        Path dump = Files.writeString(
                folder.resolve(name + ".dump"), """
                (0008,0050) SH [%5$s]
                (0008,0090) PN [Invented^Referrer]
                (0010,0010) PN [Invented^Person]
                (0010,0020) LO [%3$s]
                (0010,0030) DA [19700101]
                (0010,0040) CS [O]
                (0020,000d) UI [%4$s]
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
                """.formatted(name, date, patientId, studyUid, accession));
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
}
