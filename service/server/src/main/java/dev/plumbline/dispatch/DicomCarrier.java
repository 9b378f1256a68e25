// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.HeldObject;
import dev.plumbline.config.ProofBy;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.Identifiers;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dicom.TransferSyntax;
import dev.plumbline.dimse.Association;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.PeerFailure;
import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.ServiceUser;
import dev.plumbline.dimse.SopClass;
import dev.plumbline.dimse.Status;
import dev.plumbline.dimse.Wanted;
import dev.plumbline.dispatch.Proof.Finding;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** By C-STORE, proved by C-GET or storage commitment. Source: DICOM PS3.4, B, C.4.3, J. */
final class DicomCarrier implements Carrier {
    private static final Duration PATIENCE_FOR_REPORT = Duration.ofMinutes(10);
    private static final int MOST_REQUESTS = 5;

    private final Archive archive;
    private final Requestor requestor;
    private final Peer peer;
    private final ProofBy proofBy;
    private final Set<Wanted> wanted = new LinkedHashSet<>();
    private Optional<Association> storing = Optional.empty();
    private Optional<Association> proving = Optional.empty();

    DicomCarrier(Archive archive, Requestor requestor, Peer peer, ProofBy proofBy) {
        this.archive = archive;
        this.requestor = requestor;
        this.peer = peer;
        this.proofBy = proofBy;
    }

    @Override
    public Outcome send(HeldObject object) {
        try {
            ServiceUser user = new ServiceUser(storing(object), requestor.timeouts());
            Reply reply = user.store(new ServiceUser.StoredFile(
                    archive.file(object),
                    object.identity().sopClassUid(),
                    object.sopInstanceUid(),
                    object.transferSyntaxUid()));
            return Outcome.of(Verdicts.of(Status.of(reply.status())), reply.code(), words(reply));
        } catch (PeerFailure e) {
            storing = dropped(storing, e);
            return Outcome.of(Verdicts.of(e.kind()), "", text(e));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String words(Reply reply) {
        String standard = Status.of(reply.status()).words();
        return reply.comment().isEmpty() ? standard : standard + ": " + reply.comment();
    }

    private static String text(PeerFailure failure) {
        return String.valueOf(failure.getMessage());
    }

    /** After a refused context the association is as good as before. */
    private static Optional<Association> dropped(Optional<Association> association, PeerFailure why) {
        if (why.kind() == PeerFailure.Kind.CONTEXT_REFUSED) {
            return association;
        }
        association.ifPresent(Association::close);
        return Optional.empty();
    }

    private Association storing(HeldObject object) throws PeerFailure {
        Wanted context = Wanted.use(object.identity().sopClassUid(), List.of(object.transferSyntaxUid()));
        if (wanted.add(context) || storing.filter(Association::isOpen).isEmpty()) {
            storing.ifPresent(Association::close);
            storing = Optional.of(requestor.open(peer, List.copyOf(wanted)));
        }
        return storing.orElseThrow();
    }

    @Override
    public Proof prove(Question question) {
        try {
            return switch (proofBy) {
                case NONE -> Proof.of(Finding.NOT_OFFERED, "This destination offers no proof.");
                case GET -> readBack(question.object());
                case COMMITMENT -> question.askedBefore() < MOST_REQUESTS ? ask(question) : readBack(question.object());
            };
        } catch (PeerFailure e) {
            proving = dropped(proving, e);
            return e.kind() == PeerFailure.Kind.CONTEXT_REFUSED
                    ? Proof.of(Finding.NOT_OFFERED, text(e))
                    : Proof.of(Finding.DESTINATION_LATER, text(e));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Proof ask(Question question) throws IOException {
        List<Wanted> context = List.of(Wanted.use(SopClass.STORAGE_COMMITMENT, SopClass.PLAIN_SYNTAXES));
        DataSet reference = new DataSet()
                .put(Tag.REFERENCED_SOP_CLASS_UID, question.object().identity().sopClassUid())
                .put(Tag.REFERENCED_SOP_INSTANCE_UID, question.object().sopInstanceUid());
        DataSet information = new DataSet()
                .put(Tag.TRANSACTION_UID, question.transactionUid())
                .put(Tag.REFERENCED_SOP_SEQUENCE, List.of(reference));
        Association association = proving(context);
        Reply reply = new ServiceUser(association, requestor.timeouts())
                .requestCommitment(syntax -> encoded(information, syntax));
        return reply.isSuccess()
                ? Proof.asked("The archive was asked to commit to it and has not yet reported.", PATIENCE_FOR_REPORT)
                : Proof.of(Finding.LATER, reply.code() + " " + words(reply));
    }

    private Association proving(List<Wanted> contexts) throws PeerFailure {
        if (proving.filter(Association::isOpen).isEmpty()) {
            proving = Optional.of(requestor.open(peer, contexts));
        }
        return proving.orElseThrow();
    }

    private Proof readBack(HeldObject object) throws IOException {
        proving.ifPresent(Association::close);
        proving = Optional.empty();
        List<Wanted> contexts = new ArrayList<>();
        contexts.add(Wanted.use(SopClass.STUDY_ROOT_GET, SopClass.PLAIN_SYNTAXES));
        contexts.add(new Wanted(object.identity().sopClassUid(), List.of(object.transferSyntaxUid()), true));
        if (SopClass.PLAIN_SYNTAXES.contains(object.transferSyntaxUid())) {
            contexts.add(new Wanted(object.identity().sopClassUid(), SopClass.PLAIN_SYNTAXES, true));
        }
        ReadBack received = new ReadBack(archive, object);
        DataSet identifier = new DataSet()
                .put(Tag.QUERY_RETRIEVE_LEVEL, "IMAGE")
                .put(Tag.STUDY_INSTANCE_UID, object.identity().studyInstanceUid())
                .put(Tag.SERIES_INSTANCE_UID, object.identity().seriesInstanceUid())
                .put(Tag.SOP_INSTANCE_UID, object.sopInstanceUid());
        Reply last = new ServiceUser(proving(contexts), requestor.timeouts())
                .get(syntax -> encoded(identifier, syntax), received);
        return received.proof(last);
    }

    private static byte[] encoded(DataSet dataSet, String syntax) {
        return Identifiers.write(dataSet, TransferSyntax.of(syntax).orElseThrow());
    }

    @Override
    public void rest() {
        storing.ifPresent(Association::close);
        storing = Optional.empty();
        proving.ifPresent(Association::close);
        proving = Optional.empty();
    }
}
