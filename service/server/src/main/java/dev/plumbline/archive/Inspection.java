// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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

    /** Held objects whose file is missing or not as long as it was; quick enough for every start. */
    public List<Damage> missing() throws IOException {
        List<Damage> damages = new ArrayList<>();
        for (HeldObject object : store.objects()) {
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
        for (HeldObject object : store.objects()) {
            Path file = folder.object(object.digest());
            if (!known.contains(file)) {
                alteration(file).ifPresent(damages::add);
            }
        }
        return damages;
    }

    private static Optional<Damage> alteration(Path file) throws IOException {
        boolean same = file.getFileName().toString().equals(digest(file) + ".dcm");
        return same ? Optional.empty() : Optional.of(new Damage(file, "its bytes are not those it was left with"));
    }

    /**
     * Adds every object file that the index does not know, the oldest first; of two with the same UID the first stands
     * and the other goes to quarantine.
     */
    public Reindexed reindex() throws IOException {
        Set<String> indexed = store.objects().stream().map(HeldObject::digest).collect(Collectors.toSet());
        List<Damage> damages = new ArrayList<>(missing());
        int added = 0;
        for (Path file : objectFiles()) {
            String digest = file.getFileName().toString().replace(".dcm", "");
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

    private List<Path> objectFiles() throws IOException {
        try (Stream<Path> all = Files.walk(folder.objects())) {
            Map<Path, FileTime> written = new TreeMap<>();
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                written.put(file, Files.getLastModifiedTime(file));
            }
            return written.entrySet().stream()
                    .sorted(Map.Entry.comparingByValue(Comparator.naturalOrder()))
                    .map(Map.Entry::getKey)
                    .toList();
        }
    }

    private static String digest(Path file) throws IOException {
        MessageDigest sha256 = ObjectFiles.sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), sha256)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(sha256.digest());
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
