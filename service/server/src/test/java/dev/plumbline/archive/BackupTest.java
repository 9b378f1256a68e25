// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupTest {
    @TempDir
    Path root;

    @Test
    void copiesAFolderThatIsInUseAndOnlyWhatIsNewAgain() throws Exception {
        Path copy = root.resolve("copy");
        try (DataFolder folder = DataFolder.open(root.resolve("data"));
                SqliteStore store = SqliteStore.open(folder.database())) {
            Archive archive = new Archive(folder, store, new LowWater(0, 0));
            archive.receive(new ByteArrayInputStream(InventedObjects.imageFile(1, 1, 1)));
            assertThat(Backup.of(folder.root(), copy).objects()).isEqualTo(1);
            archive.receive(new ByteArrayInputStream(InventedObjects.imageFile(1, 1, 2)));
            assertThat(Backup.of(folder.root(), copy).objects()).isEqualTo(1);
        }
        try (DataFolder restored = DataFolder.open(copy);
                SqliteStore store = SqliteStore.open(restored.database())) {
            assertThat(store.objects()).hasSize(2);
            assertThat(new Inspection(restored, store).altered()).isEmpty();
        }
    }

    @Test
    void refusesToCopyWhatIsNoDataFolder() {
        assertThatThrownBy(() -> Backup.of(root, root.resolve("copy"))).isInstanceOf(Refusal.class);
    }
}
