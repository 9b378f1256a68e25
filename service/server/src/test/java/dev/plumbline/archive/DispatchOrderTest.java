// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes to another archive first: no object may name one that the archive does not have yet. */
class DispatchOrderTest {
    @TempDir
    private Path data;

    @Test
    void companionsGoInTheOrderTheyWereMadeAndTheReportLast() throws Exception {
        List<String> uids = new ArrayList<>();
        List<byte[]> files = new ArrayList<>();
        for (int i = 1; i <= 4; i++) {
            uids.add(InventedObjects.instanceUid(1, i, i));
            files.add(InventedObjects.imageFile(1, i, i));
        }
        try (DataFolder folder = DataFolder.open(data);
                SqliteStore store = SqliteStore.open(folder.database())) {
            Archive archive = new Archive(folder, store, new LowWater(0, 0), new Outbound(List.of("pacs"), () -> {}));
            archive.file(new Filing(
                    new StoredCase("case-1", "{}", Instant.parse("2026-01-04T22:10:00Z")),
                    new StoredRevision(
                            "case-1",
                            1,
                            OffsetDateTime.parse("2026-01-05T10:30:00+01:00"),
                            StoredRevision.State.SIGNED,
                            "{}",
                            uids.get(0),
                            uids),
                    files,
                    Optional.empty(),
                    Instant.parse("2026-01-05T09:30:00Z")));
            assertThat(store.dispatches().get(1).orElseThrow().parts())
                    .extracting(Dispatch.Part::sopInstanceUid)
                    .containsExactly(uids.get(1), uids.get(2), uids.get(3), uids.get(0));
            assertThat(store.dispatches().get(1).orElseThrow().created())
                    .as("waits since it was signed, not since the case was opened")
                    .isEqualTo(Instant.parse("2026-01-05T09:30:00Z"));
            assertThat(store.dispatches().ofCase("case-1"))
                    .containsExactly(store.dispatches().get(1).orElseThrow());
            assertThat(store.dispatches().ofCase("case-2")).isEmpty();
        }
    }
}
