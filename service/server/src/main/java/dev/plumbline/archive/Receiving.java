// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.archive.HeldObject.Identity;
import dev.plumbline.archive.ObjectFiles.Staged;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.ObjectComparison;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * How an object from elsewhere becomes a held one: room and quota, whole and well formed, admitted, not another one under a
 * held UID, then file and index row.
 */
final class Receiving {
    private static final Logger LOG = LoggerFactory.getLogger(Receiving.class);
    private static final int LOGGED_DIGITS = 12;

    private final ObjectFiles files;
    private final Store store;
    private final Intake intake;
    private final HeldBytes bytes;

    Receiving(ObjectFiles files, Store store, Intake intake, HeldBytes bytes) {
        this.files = files;
        this.store = store;
        this.intake = intake;
        this.bytes = bytes;
    }

    /**
     * Refuses before a body is read where it could not be kept.
     *
     * @param declaredBytes what the sender announces, 0 where it does not
     * @throws Refusal {@link Problem.NoRoom}
     */
    void requireRoom(Sender sender, long declaredBytes) {
        files.requireRoom(declaredBytes);
        if (intake.quotas().left(store, sender).orElse(1) == 0) {
            throw intake.quotas().usedUp(sender);
        }
    }

    /**
     * As {@link #requireRoom}, for a body that is one object.
     *
     * @throws Refusal also {@link Problem.TooLarge}
     */
    void requireRoomForOne(Sender sender, long declaredBytes) {
        if (declaredBytes > intake.objectBytes()) {
            throw new Refusal(new Problem.TooLarge("", intake.objectBytes()));
        }
        requireRoom(sender, declaredBytes);
    }

    /** What is to be known of how much is taken in, in sentences. */
    List<String> warnings() {
        return intake.quotas().warnings(store);
    }

    /**
     * Keeps an object.
     *
     * @param admission throws a Refusal where the object is not taken
     */
    Reception take(InputStream file, Sender sender, Consumer<DicomFile> admission) {
        Optional<Identity> who = Optional.empty();
        try {
            requireRoom(sender, 0);
            try (Staged staged = files.stage(file, most(sender))) {
                who = Optional.of(stated(staged.object()));
                HeldObject object = index(staged);
                who = Optional.of(object.identity());
                admission.accept(staged.object());
                return keep(object, staged, sender);
            }
        } catch (Refusal refusal) {
            return new Reception.Refused(refusal.problem(), who);
        }
    }

    /** Class and instance of an object that may turn out to lack the rest. */
    private static Identity stated(DicomFile object) {
        return new Identity(object.sopClassUid(), object.sopInstanceUid(), "", "");
    }

    private ObjectFiles.Bound most(Sender sender) {
        long left = intake.quotas().left(store, sender).orElse(Long.MAX_VALUE);
        return left < intake.objectBytes()
                ? new ObjectFiles.Bound(left, () -> intake.quotas().usedUp(sender))
                : ObjectFiles.Bound.ofObject(intake.objectBytes());
    }

    private Reception keep(HeldObject object, Staged staged, Sender sender) {
        if (isKnown(object, staged, sender)) {
            putBack(object, staged);
            return new Reception.Kept(object, true);
        }
        return files.placing(List.of(staged), this::isHeld, () -> {
            files.place(staged);
            try {
                return new Reception.Kept(object, !store.write(writing -> isAdded(object, sender, writing)));
            } catch (Refusal refusal) {
                if (refusal.problem() instanceof Problem.Conflict) {
                    files.quarantine(object.digest());
                    warnOfQuarantine(object.digest());
                }
                throw refusal;
            }
        });
    }

    private boolean isAdded(HeldObject object, Sender sender, Store.Writing writing) {
        boolean added = writing.add(object);
        if (added) {
            intake.quotas().count(writing, sender, object.size());
        }
        return added;
    }

    /** What is sent again may be what was lost here meanwhile: acknowledged is only what is there. */
    private void putBack(HeldObject sent, Staged staged) {
        HeldObject held = store.object(sent.sopInstanceUid()).orElseThrow();
        if (held.digest().equals(staged.digest()) && !bytes.isWhole(held)) {
            files.place(staged);
            LOG.warn(
                    "The file of a held object was missing or cut; put back as it was sent again: {}",
                    shortened(held.digest()));
        }
    }

    /** Whether a row speaks of this very file. */
    boolean isHeld(Staged staged) {
        return store.object(index(staged).sopInstanceUid())
                .filter(held -> held.digest().equals(staged.digest()))
                .isPresent();
    }

    /** @throws Refusal after putting it in quarantine, where another object has its UID */
    boolean isKnown(HeldObject object, Staged staged, Sender sender) {
        Optional<HeldObject> held = store.object(object.sopInstanceUid());
        if (held.isPresent() && !isSame(held.get(), staged)) {
            if (intake.quotas().applyTo(sender)) {
                store.write(writing -> {
                    intake.quotas().count(writing, sender, staged.size());
                    return true;
                });
            }
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
                    || ObjectComparison.differences(bytes.open(held), staged.object())
                            .isEmpty();
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

    static HeldObject index(Staged staged) {
        return IndexedAttributes.row(staged.object(), staged.digest(), staged.size());
    }
}
