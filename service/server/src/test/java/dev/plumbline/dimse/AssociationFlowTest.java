// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import static dev.plumbline.archive.InventedObjects.cine;
import static dev.plumbline.archive.InventedObjects.image;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import dev.plumbline.dimse.Listener.Limits;
import dev.plumbline.dimse.PeerFailure.Kind;
import dev.plumbline.dimse.ServiceUser.StoredFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Both ends are ours here; what the other end of the world says is in the conformance tests. */
class AssociationFlowTest {
    @TempDir
    Path folder;

    @Test
    void answersAnEcho() throws Exception {
        try (OpenListener listener = new OpenListener();
                Association association = listener.open(OpenListener.storage())) {
            assertThat(new ServiceUser(association, Timeouts.USUAL).echo()).isEqualTo(Reply.SUCCESS);
        }
    }

    @Test
    void carriesObjectsOfManyPdusUnchanged() throws Exception {
        StoredFile small = OpenListener.file(folder, image(1, 1, 1));
        StoredFile large = OpenListener.file(folder, cine(1, 1, 2, 20_000));
        try (OpenListener listener = new OpenListener()) {
            try (Association association = listener.open(OpenListener.storage())) {
                ServiceUser user = new ServiceUser(association, Timeouts.USUAL);
                assertThat(user.store(large)).isEqualTo(Reply.SUCCESS);
                assertThat(user.store(small)).isEqualTo(Reply.SUCCESS);
            }
            for (StoredFile file : List.of(small, large)) {
                assertThat(Arrays.equals(listener.stored.get(file.sopInstanceUid()), Files.readAllBytes(file.path())))
                        .isTrue();
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "PLUMBLINE, STRANGER, CALLING_AE_TITLE_NOT_RECOGNISED",
        "SOMEBODY, CALLER, CALLED_AE_TITLE_NOT_RECOGNISED",
        "SOMEBODY, STRANGER, CALLED_AE_TITLE_NOT_RECOGNISED"
    })
    void rejectsWhoIsNotExpected(String called, String calling, Rejection why) {
        try (OpenListener listener = new OpenListener()) {
            Peer peer = new Peer(called, "127.0.0.1", listener.port(), Optional.empty());
            PeerFailure failure = catchThrowableOfType(
                    PeerFailure.class, () -> new Requestor(calling, Timeouts.USUAL).open(peer, OpenListener.storage()));
            assertThat(failure.kind()).isEqualTo(Kind.REJECTED);
            assertThat(failure).hasMessageContaining(why.words());
        }
    }

    @Test
    void rejectsOneAssociationTooManyForNow() throws Exception {
        try (OpenListener listener = new OpenListener(new Limits(3, 2), Timeouts.USUAL, Optional.empty())) {
            List<Association> open = new ArrayList<>();
            open.add(listener.open(OpenListener.storage()));
            open.add(listener.open(OpenListener.storage()));
            PeerFailure failure = catchThrowableOfType(PeerFailure.class, () -> listener.open(OpenListener.storage()));
            assertThat(failure.kind()).isEqualTo(Kind.REJECTED_TRANSIENT);
            open.forEach(Association::close);
            while (listener.associations() > 0) {
                Thread.onSpinWait();
            }
            listener.open(OpenListener.storage()).close();
        }
    }

    @Test
    void saysWhichContextWasRefused() throws Exception {
        StoredFile file = OpenListener.file(folder, image(1, 1, 1));
        String deflated = "1.2.840.10008.1.2.1.99";
        try (OpenListener listener = new OpenListener();
                Association association = listener.open(List.of(Wanted.use(file.sopClassUid(), List.of(deflated))))) {
            PeerFailure failure = catchThrowableOfType(
                    PeerFailure.class, () -> new ServiceUser(association, Timeouts.USUAL).store(file));
            assertThat(failure.kind()).isEqualTo(Kind.CONTEXT_REFUSED);
            assertThat(failure).hasMessageContaining("none of the transfer syntaxes is supported");
            assertThat(association.isOpen()).isTrue();
        }
    }

    @Test
    void knowsWhereNothingListens() {
        Peer nobody = new Peer("X", "127.0.0.1", 1, Optional.empty());
        PeerFailure failure = catchThrowableOfType(
                PeerFailure.class, () -> new Requestor("Y", Timeouts.USUAL).open(nobody, OpenListener.storage()));
        assertThat(failure.kind()).isEqualTo(Kind.UNREACHABLE);
    }

    @Test
    void refusesAnObjectWithoutAUid() throws Exception {
        StoredFile file = OpenListener.file(folder, image(1, 1, 1));
        StoredFile hostile = new StoredFile(file.path(), file.sopClassUid(), "../escape", file.transferSyntaxUid());
        try (OpenListener listener = new OpenListener();
                Association association = listener.open(OpenListener.storage())) {
            Reply reply = new ServiceUser(association, Timeouts.USUAL).store(hostile);
            assertThat(Status.of(reply.status())).isEqualTo(Status.INVALID_INSTANCE);
            assertThat(listener.stored).isEmpty();
            assertThat(new ServiceUser(association, Timeouts.USUAL).echo()).isEqualTo(Reply.SUCCESS);
        }
    }

    @Test
    void abortsWhoIsSilentForTooLong() throws Exception {
        try (OpenListener listener = new OpenListener(Limits.USUAL, OpenListener.QUICK, Optional.empty());
                Association association = listener.open(OpenListener.storage())) {
            PeerFailure failure =
                    catchThrowableOfType(PeerFailure.class, () -> association.nextMessage(Timeouts.USUAL.response()));
            assertThat(failure.kind()).isEqualTo(Kind.ABORTED);
        }
    }
}
