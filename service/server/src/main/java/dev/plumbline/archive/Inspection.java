// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Holds files and index against each other, and makes the index anew from the files. Nothing is ever deleted; what
 * cannot be used is named.
 */
public final class Inspection {
    private final DataFolder folder;
    private final Store store;
    private final ObjectFiles files;

    public Inspection(DataFolder folder, Store store) {
        this.folder = folder;
        this.store = store;
        this.files = new ObjectFiles(folder, new LowWater(0, 0));
    }

    /** What every start looks for. */
    public Findings quick() throws IOException {
        return new Findings(missing(), unindexed());
    }

    /** Held objects whose file is missing or not as long as it was; quick enough for every start. */
    public List<Damage> missing() throws IOException {
        List<Damage> damages = new ArrayList<>();
        for (HeldFile object : store.files()) {
            Path file = folder.object(object.digest());
            if (!Files.isRegularFile(file)) {
                damages.add(new Damage(file, "missing"));
            } else if (Files.size(file) != object.size()) {
                damages.add(new Damage(file, "has " + Files.size(file) + " bytes instead of " + object.size()));
            }
        }
        return damages;
    }

    /** Held objects whose file does not hold the bytes it was left with; reads everything. */
    public List<Damage> altered() throws IOException {
        List<Damage> damages = new ArrayList<>(missing());
        Set<Path> known = damages.stream().map(Damage::file).collect(Collectors.toSet());
        for (HeldFile object : store.files()) {
            Path file = folder.object(object.digest());
            if (!known.contains(file)) {
                alteration(file).ifPresent(damages::add);
            }
        }
        return damages;
    }

    private static Optional<Damage> alteration(Path file) throws IOException {
        boolean same = file.getFileName().toString().equals(ObjectFiles.digest(file) + ".dcm");
        return same ? Optional.empty() : Optional.of(new Damage(file, "its bytes are not those it was left with"));
    }

    /**
     * Adds every object file that the index does not know, the oldest first; of two with the same UID the first stands
     * and the other goes to quarantine.
     */
    public Reindexed reindex() throws IOException {
        Set<String> indexed = digests();
        List<Damage> damages = new ArrayList<>(missing());
        int added = 0;
        for (Path file : oldestFirst()) {
            String digest = digestInName(file);
            if (!indexed.contains(digest)) {
                Optional<Damage> damage = add(file, digest);
                damage.ifPresent(damages::add);
                added += damage.isEmpty() ? 1 : 0;
            }
        }
        return new Reindexed(added, damages);
    }

    private Optional<Damage> add(Path file, String digest) throws IOException {
        Optional<Damage> altered = alteration(file);
        if (altered.isPresent()) {
            return altered;
        }
        HeldObject row;
        try {
            row = IndexedAttributes.row(DicomFile.open(file), digest, Files.size(file));
        } catch (Refusal refusal) {
            return Optional.of(new Damage(
                    file, "no object that is kept: " + refusal.problem().detail()));
        }
        if (store.object(row.sopInstanceUid()).isPresent()) {
            files.quarantine(digest);
            return Optional.of(new Damage(file, "contradicts an older object with the same UID; put in quarantine"));
        }
        store.write(writing -> writing.add(row));
        return Optional.empty();
    }

    /**
     * How many object files there are that no row speaks of: what came in at the very moment of a crash and was never
     * acknowledged, or what a damaged store has forgotten.
     */
    public int unindexed() throws IOException {
        Set<String> indexed = digests();
        return (int) folder.objectFiles().stream()
                .filter(file -> !indexed.contains(digestInName(file)))
                .count();
    }

    private Set<String> digests() {
        return store.files().stream().map(HeldFile::digest).collect(Collectors.toSet());
    }

    private static String digestInName(Path file) {
        return file.getFileName().toString().replace(".dcm", "");
    }

    private List<Path> oldestFirst() throws IOException {
        Map<Path, FileTime> written = new TreeMap<>();
        for (Path file : folder.objectFiles()) {
            written.put(file, Files.getLastModifiedTime(file));
        }
        return written.entrySet().stream()
                .sorted(Map.Entry.comparingByValue(Comparator.naturalOrder()))
                .map(Map.Entry::getKey)
                .toList();
    }

    /**
     * What a new index came to.
     *
     * @param added objects that the index did not know before
     */
    public record Reindexed(int added, List<Damage> damages) {
        public Reindexed {
            damages = List.copyOf(damages);
        }
    }
}
