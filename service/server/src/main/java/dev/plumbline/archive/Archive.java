// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.archive.Filing.Filed;
import dev.plumbline.archive.HeldObject.Identity;
import dev.plumbline.archive.ObjectFiles.Staged;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.ForeignObjects;
import dev.plumbline.dicom.ObjectComparison;
import dev.plumbline.dicom.Tag;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The embedded archive: takes objects in and hands them out as they came, byte for byte but for the preamble.
 *
 * <p>An object is acknowledged when its file and its index row are durable. The first object with a SOP Instance UID
 * stands; another one with the same UID is refused and put in quarantine.
 */
public final class Archive {
    private static final Logger LOG = LoggerFactory.getLogger(Archive.class);
    private static final int LOGGED_DIGITS = 12;

    private final ObjectFiles files;
    private final Store store;
    private final Outbound outbound;
    private volatile Consumer<HeldObject> arrivals = object -> {};
    private volatile Consumer<String> companions = study -> {};

    public Archive(DataFolder folder, Store store, LowWater lowWater) {
        this(folder, store, lowWater, Outbound.NOWHERE);
    }

    public Archive(DataFolder folder, Store store, LowWater lowWater, Outbound outbound) {
        this.files = new ObjectFiles(folder, lowWater);
        this.store = store;
        this.outbound = outbound;
    }

    /** The folder that holds everything. */
    Path root() {
        return files.root();
    }

    /** Where signed records go from here. */
    List<String> destinations() {
        return outbound.destinations();
    }

    public Store store() {
        return store;
    }

    /** Who is told of each object that came in and is new, after it is durable. */
    public void tell(Consumer<HeldObject> listener) {
        arrivals = listener;
    }

    /** Who composes what is due of a study. */
    void finishing(Consumer<String> finish) {
        companions = finish;
    }

    /**
     * Makes the signed records of a study whole before somebody looks at it: whoever was answered for a signature finds
     * everything that the answer names.
     */
    public void finish(String studyInstanceUid) {
        companions.accept(studyInstanceUid);
    }

    /** Whether anything more is taken in now. */
    public boolean hasRoom() {
        return files.hasRoom();
    }

    /**
     * Refuses before a body is read where it could not be kept.
     *
     * @param declaredBytes what the sender announces, 0 where it does not
     * @throws Refusal {@link Problem.NoRoom}
     */
    public void requireRoom(long declaredBytes) {
        files.requireRoom(declaredBytes);
    }

    /**
     * Takes one DICOM file in.
     *
     * @throws Refusal when it is no DICOM file that is taken, is too large, contradicts a held object, or finds no room
     */
    public Reception.Kept receive(InputStream bytes) {
        return orRefuse(receive(bytes, object -> {}));
    }

    /**
     * Takes one DICOM file in that must hold frames which can be shown and measured.
     *
     * @throws Refusal as {@link #receive(InputStream)}, and when it holds no such frames; then nothing is kept
     */
    public Reception.Kept receiveFrames(InputStream bytes) {
        return orRefuse(receive(bytes, object -> object.geometry(1)));
    }

    /**
     * Takes one DICOM file in that must be of a class that can carry marks.
     *
     * @throws Refusal as {@link #receive(InputStream)}, and for any other class; then nothing is kept
     */
    public Reception.Kept receiveMarks(InputStream bytes) {
        return orRefuse(receive(bytes, object -> {
            if (!ForeignObjects.canCarryMarks(object.sopClassUid())) {
                throw new Refusal(new Problem.UnsupportedObject(
                        "",
                        "The object is neither a structured report nor a presentation state.",
                        "Send frames with POST /v1/frames."));
            }
        }));
    }

    private static Reception.Kept orRefuse(Reception reception) {
        return reception.fold(kept -> kept, refused -> {
            throw new Refusal(refused.problem());
        });
    }

    /**
     * Takes one DICOM file in that must belong to a study, where one is given; says what became of it, also where it is
     * refused.
     */
    public Reception receive(InputStream bytes, Optional<String> study) {
        return receive(bytes, object -> requireStudy(object.header(), study));
    }

    /** @param admission throws a Refusal where the object is not taken */
    private Reception receive(InputStream bytes, Consumer<DicomFile> admission) {
        Reception reception = taken(bytes, admission);
        if (reception instanceof Reception.Kept kept && !kept.known()) {
            arrivals.accept(kept.object());
        }
        return reception;
    }

    private Reception taken(InputStream bytes, Consumer<DicomFile> admission) {
        Optional<Identity> who = Optional.empty();
        try {
            files.requireRoom(0);
            try (Staged staged = files.stage(bytes)) {
                who = Optional.of(stated(staged.object()));
                HeldObject object = index(staged);
                who = Optional.of(object.identity());
                admission.accept(staged.object());
                return keep(object, staged);
            }
        } catch (Refusal refusal) {
            return new Reception.Refused(refusal.problem(), who);
        }
    }

    /** Class and instance of an object that may turn out to lack the rest. */
    private static Identity stated(DicomFile object) {
        return new Identity(object.sopClassUid(), object.sopInstanceUid(), "", "");
    }

    private Reception keep(HeldObject object, Staged staged) {
        if (isKnown(object, staged)) {
            putBack(object, staged);
            return new Reception.Kept(object, true);
        }
        return files.placing(List.of(staged), this::isHeld, () -> {
            files.place(staged);
            try {
                return new Reception.Kept(object, !store.write(writing -> writing.add(object)));
            } catch (Refusal refusal) {
                if (refusal.problem() instanceof Problem.Conflict) {
                    files.quarantine(object.digest());
                    warnOfQuarantine(object.digest());
                }
                throw refusal;
            }
        });
    }

    /** What is sent again may be what was lost here meanwhile: acknowledged is only what is there. */
    private void putBack(HeldObject sent, Staged staged) {
        HeldObject held = store.object(sent.sopInstanceUid()).orElseThrow();
        if (held.digest().equals(staged.digest()) && !isWhole(held)) {
            files.place(staged);
            LOG.warn(
                    "The file of a held object was missing or cut; put back as it was sent again: {}",
                    shortened(held.digest()));
        }
    }

    private boolean isHeld(Staged staged) {
        return store.object(index(staged).sopInstanceUid())
                .filter(held -> held.digest().equals(staged.digest()))
                .isPresent();
    }

    /** @throws Refusal after putting it in quarantine, where another object has its UID */
    private boolean isKnown(HeldObject object, Staged staged) {
        Optional<HeldObject> held = store.object(object.sopInstanceUid());
        if (held.isPresent() && !isSame(held.get(), staged)) {
            files.quarantine(staged);
            warnOfQuarantine(staged.digest());
            throw otherObjectHeld();
        }
        return held.isPresent();
    }

    /** The same bytes, or the same object in another encoding or with other file meta information. */
    private boolean isSame(HeldObject held, Staged staged) {
        try {
            return held.digest().equals(staged.digest())
                    || ObjectComparison.differences(open(held), staged.object()).isEmpty();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * How a file that came back from elsewhere differs from the held object.
     *
     * @return names of attributes, none where it is the same object
     * @throws Refusal when it is no whole DICOM file
     */
    public List<String> differences(HeldObject held, InputStream file) {
        requireUnaltered(held);
        try (Staged staged = files.stage(file)) {
            return ObjectComparison.differences(open(held), staged.object());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void warnOfQuarantine(String digest) {
        LOG.warn("An object contradicts a held one with the same UID; put in quarantine: {}", shortened(digest));
    }

    private static String shortened(String digest) {
        return digest.substring(0, LOGGED_DIGITS);
    }

    static Refusal otherObjectHeld() {
        return new Refusal(new Problem.Conflict(
                "",
                "Another object is held under this SOP Instance UID; the first one stands.",
                "Give the new object a SOP Instance UID of its own."));
    }

    private static void requireStudy(DataSet header, Optional<String> study) {
        if (study.isPresent() && !study.equals(header.string(Tag.STUDY_INSTANCE_UID))) {
            throw new Refusal(new Problem.InvalidValue(
                    "",
                    "The object belongs to another study than the address.",
                    "Send it to the address of its study."));
        }
    }

    /**
     * Keeps a record: the objects that come with it as files first, then case, revision, index rows, answer and what is
     * still to be composed in one commit.
     *
     * @throws Refusal {@link Problem.Conflict} or {@link Problem.KeyReused} when something else is held in its place
     */
    public Filed file(Filing filing) {
        return file(filing, () -> {});
    }

    /**
     * As {@link #file(Filing)}, with something to be looked at while nobody else can write.
     *
     * @param still throws a Refusal where what the filing was made from no longer holds; then nothing is kept
     */
    public Filed file(Filing filing, Runnable still) {
        Filed filed = keep(
                filing.objects(),
                (staged, objects) -> store.write(writing -> {
                    still.run();
                    staged.forEach(files::place);
                    return commit(filing, objects, writing);
                }));
        outbound.queued().run();
        return filed;
    }

    /**
     * Keeps the companions of a record that was filed with its report alone. Their files are durable before the commit
     * begins, so that nobody who signs meanwhile waits for them.
     *
     * @throws Refusal {@link Problem.NoRoom}; {@link Problem.Conflict} where something else is held in place of one
     */
    void complete(DueCompanions due, List<byte[]> companions) {
        keep(companions, (staged, objects) -> {
            staged.forEach(files::place);
            return store.write(writing -> {
                objects.forEach(writing::add);
                writing.composed(due);
                return true;
            });
        });
        outbound.queued().run();
    }

    private <T> T keep(List<byte[]> whole, BiFunction<List<Staged>, List<HeldObject>, T> commit) {
        files.requireRoom(whole.stream().mapToLong(bytes -> bytes.length).sum());
        List<Staged> staged = new ArrayList<>();
        try {
            whole.forEach(bytes -> staged.add(files.stage(new ByteArrayInputStream(bytes))));
            List<HeldObject> objects = staged.stream().map(Archive::index).toList();
            for (int i = 0; i < staged.size(); i++) {
                isKnown(objects.get(i), staged.get(i));
            }
            return files.placing(staged, this::isHeld, () -> commit.apply(staged, objects));
        } finally {
            staged.forEach(Staged::close);
        }
    }

    private Filed commit(Filing filing, List<HeldObject> objects, Store.Writing writing) {
        writing.add(filing.stored());
        objects.forEach(writing::add);
        boolean added = writing.add(filing.revision());
        if (added) {
            filing.row().ifPresent(writing::add);
        }
        if (added && !objects.isEmpty()) {
            writing.queue(filing.revision(), outbound.destinations(), filing.when());
        }
        if (added && filing.companionsDue()) {
            HeldObject report = objects.get(0);
            writing.add(new DueCompanions(
                    filing.revision().caseId(),
                    filing.revision().revision(),
                    report.identity().studyInstanceUid(),
                    filing.when(),
                    ""));
        }
        return new Filed(added, filing.answer().map(writing::add));
    }

    private static HeldObject index(Staged staged) {
        return IndexedAttributes.row(staged.object(), staged.digest(), staged.size());
    }

    /**
     * A held object.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    public HeldObject held(String sopInstanceUid) {
        return store.object(sopInstanceUid)
                .orElseThrow(() -> notHeld("No object with this SOP Instance UID is held here."));
    }

    /**
     * The objects of a study or series, at least one.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    public List<HeldObject> held(String studyInstanceUid, Optional<String> seriesInstanceUid) {
        List<HeldObject> objects = store.objects(studyInstanceUid, seriesInstanceUid);
        if (objects.isEmpty()) {
            throw notHeld("No object of this study or series is held here.");
        }
        return objects;
    }

    private static Refusal notHeld(String detail) {
        return new Refusal(new Problem.NotHeld("", detail, "Search for what is held, or send it first."));
    }

    /** The file of a held object; it never changes. */
    public Path file(HeldObject object) {
        if (isWhole(object)) {
            return files.file(object.digest());
        }
        throw new StoreDamaged(
                "The file " + files.file(object.digest()) + " of a held object is missing or not as long as it was.");
    }

    private boolean isWhole(HeldObject object) {
        Path file = files.file(object.digest());
        try {
            return Files.exists(file) && Files.size(file) == object.size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Refuses to go on with a file whose bytes are not those it was left with: a copy of it elsewhere would be taken for the
     * record. Reads the whole file.
     */
    public void requireUnaltered(HeldObject object) {
        try {
            if (!ObjectFiles.digest(file(object)).equals(object.digest())) {
                throw new StoreDamaged("The bytes of the file " + files.file(object.digest())
                        + " of a held object are not those it was left with.");
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A held object, read. */
    public DicomFile open(HeldObject object) throws IOException {
        return DicomFile.open(file(object));
    }
}
