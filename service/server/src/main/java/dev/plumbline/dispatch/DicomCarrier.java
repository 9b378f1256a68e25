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
import dev.plumbline.dimse.Services;
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
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** By C-STORE, proved by C-GET or storage commitment. Source: DICOM PS3.4, B, C.4.3, J. */
final class DicomCarrier implements Carrier {
    /** An archive that reports on the association it was asked on does so within this. Source: design choice. */
    private static final Duration FOR_REPORTS = Duration.ofSeconds(1);

    private static final Logger LOG = LoggerFactory.getLogger(DicomCarrier.class);

    private final Archive archive;
    private final Requestor requestor;
    private final Peer peer;
    private final ProofBy proofBy;
    private final Set<Wanted> wanted = new LinkedHashSet<>();
    private Optional<Association> storing = Optional.empty();
    private Optional<Association> asking = Optional.empty();
    private Optional<Services> reports = Optional.empty();

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

    /** Whatever fails here is no reason to stop sending; the next one asks again. */
    @Override
    public Proof prove(Question question) {
        try {
            return switch (proofBy) {
                case NONE -> Proof.of(Finding.NOT_OFFERED, "This destination offers no proof.");
                case GET -> readBack(question.object());
                case COMMITMENT -> committed(question);
            };
        } catch (PeerFailure e) {
            return e.kind() == PeerFailure.Kind.CONTEXT_REFUSED
                    ? Proof.of(Finding.NOT_OFFERED, text(e))
                    : Proof.of(Finding.DESTINATION_LATER, text(e));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Commitment says nothing of whether the archive has what we sent where it altered it or had another before. */
    private Proof committed(Question question) throws IOException {
        boolean exhausted = question.askedBefore() >= CommitmentSchedule.MOST;
        if (question.doubtful() || exhausted) {
            try {
                return readBack(question.object());
            } catch (PeerFailure e) {
                if (e.kind() != PeerFailure.Kind.CONTEXT_REFUSED) {
                    throw e;
                }
                if (exhausted) {
                    return Proof.of(
                            Finding.UNCONFIRMED,
                            "The archive did not commit to it within a day, and hands no objects back.");
                }
            }
        }
        return ask(question);
    }

    private Proof ask(Question question) throws IOException {
        try {
            openToAsk();
        } catch (PeerFailure e) {
            asking = Optional.empty();
            throw e;
        }
        ServiceUser user = new ServiceUser(asking.orElseThrow(), requestor.timeouts());
        if (!user.canRequestCommitment()) {
            return readBack(question.object());
        }
        DataSet reference = new DataSet()
                .put(Tag.REFERENCED_SOP_CLASS_UID, question.object().identity().sopClassUid())
                .put(Tag.REFERENCED_SOP_INSTANCE_UID, question.object().sopInstanceUid());
        DataSet information = new DataSet()
                .put(Tag.TRANSACTION_UID, question.asking().transaction())
                .put(Tag.REFERENCED_SOP_SEQUENCE, List.of(reference));
        reports = Optional.of(question.asking().reports());
        try {
            Reply reply = user.requestCommitment(
                    syntax -> encoded(information, syntax), question.asking().reports());
            return Proof.asked(
                    reply.isSuccess()
                            ? "The archive was asked to commit to it and has not yet reported."
                            : "Asked to commit to it the archive answered " + reply.code() + " " + words(reply) + ".");
        } catch (PeerFailure e) {
            asking = dropped(asking, e);
            return Proof.asked("The archive was asked to commit to it. " + text(e));
        }
    }

    private void openToAsk() throws PeerFailure {
        if (asking.filter(Association::isOpen).isEmpty()) {
            asking.ifPresent(Association::close);
            asking = Optional.of(
                    requestor.open(peer, List.of(Wanted.use(SopClass.STORAGE_COMMITMENT, SopClass.PLAIN_SYNTAXES))));
        }
    }

    private Proof readBack(HeldObject object) throws IOException {
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
        try (Association association = requestor.open(peer, contexts)) {
            Reply last = new ServiceUser(association, requestor.timeouts())
                    .get(syntax -> encoded(identifier, syntax), received);
            return received.proof(last);
        }
    }

    private static byte[] encoded(DataSet dataSet, String syntax) {
        return Identifiers.write(dataSet, TransferSyntax.of(syntax).orElseThrow());
    }

    @Override
    public void rest() {
        storing.ifPresent(Association::close);
        storing = Optional.empty();
        asking.ifPresent(this::endAsking);
        asking = Optional.empty();
        reports = Optional.empty();
    }

    /** The archive may report on the association that it was asked on. Source: DICOM PS3.4, J.3.3. */
    private void endAsking(Association association) {
        try (association) {
            if (reports.isPresent() && association.isOpen()) {
                new ServiceUser(association, requestor.timeouts()).takeReports(reports.get(), FOR_REPORTS);
            }
        } catch (IOException e) {
            LOG.debug("An association ended while reports were awaited: {}", e.getMessage());
        }
    }
}
