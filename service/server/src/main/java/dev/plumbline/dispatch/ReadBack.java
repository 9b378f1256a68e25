// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.Services;
import dev.plumbline.dimse.Status;
import dev.plumbline.dispatch.Proof.Finding;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;

/** Takes in what an archive hands back and compares it with what was sent to it. */
final class ReadBack implements Services {
    /** Source: design choice; the widest encoding of what is sent here is about as long as the narrowest. */
    private static final int MOST_TIMES = 4;

    private static final int MOST_BESIDES = 1 << 20;

    private final Archive archive;
    private final HeldObject sent;
    private Optional<Proof> found = Optional.empty();

    ReadBack(Archive archive, HeldObject sent) {
        this.archive = archive;
        this.sent = sent;
    }

    @Override
    public Reply store(Incoming object, InputStream file) throws IOException {
        if (!object.sopInstanceUid().equals(sent.sopInstanceUid())) {
            return Reply.of(Status.CANNOT_UNDERSTAND, "This object was not asked for.");
        }
        found = Optional.of(compare(archive, sent, file));
        return Reply.SUCCESS;
    }

    /** So many bytes at most are taken back: another encoding of the object may be longer, but not by much. */
    private static long most(HeldObject sent) {
        return MOST_TIMES * sent.size() + MOST_BESIDES;
    }

    /** What a file that came back proves. */
    static Proof compare(Archive archive, HeldObject sent, InputStream file) {
        try {
            List<String> differing = archive.differences(sent, new CappedStream(file, most(sent)));
            return differing.isEmpty()
                    ? Proof.of(Finding.PROVED, "Read back and equal.")
                    : Proof.of(
                            Finding.DIFFERENT,
                            "What the archive holds under this UID differs from what was sent: "
                                    + String.join(", ", differing) + ".");
        } catch (CappedStream.TooLong e) {
            return Proof.of(Finding.LATER, "The archive hands back more than the object can have.");
        } catch (Refusal refusal) {
            String words = refusal.problem().detail();
            boolean ours = refusal.problem() instanceof Problem.NoRoom;
            return Proof.of(Finding.LATER, ours ? words : "What the archive handed back cannot be read: " + words);
        }
    }

    /** After the last answer of the retrieval. */
    Proof proof(Reply last) {
        if (found.isPresent()) {
            return found.get();
        }
        Status status = Status.of(last.status());
        boolean nothing = last.isSuccess() || status == Status.NO_SUCH_INSTANCE;
        return nothing
                ? Proof.of(Finding.MISSING, "The archive does not hand it out; what is missed twice is sent again.")
                : Proof.of(Finding.LATER, last.code() + " " + status.words() + " " + last.comment());
    }

    @Override
    public Reply commitment(CommitmentReport report) {
        return Reply.of(Status.CLASS_NOT_SUPPORTED, "Reports are not taken on this association.");
    }
}
