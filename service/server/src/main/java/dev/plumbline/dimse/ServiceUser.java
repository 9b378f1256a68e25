// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dimse.Association.Negotiated;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What we ask of a peer over an open association, one request after the other. Every request has its bound in time; what
 * comes back is the peer's own status and comment, and returning never means more than that.
 */
public final class ServiceUser {
    /** All matches of a query together. Source: design choice. */
    private static final long MOST_FOUND_BYTES = 16L << 20;

    private static final int MEDIUM_PRIORITY = 0;
    private static final int REQUEST_COMMITMENT = 1;

    private final Association association;
    private final Duration wait;

    public ServiceUser(Association association, Timeouts timeouts) {
        this.association = association;
        this.wait = timeouts.response();
    }

    /** C-ECHO. Source: DICOM PS3.7, 9.1.5. */
    public Reply echo() throws IOException {
        Negotiated context = context(SopClass.VERIFICATION, SopClass.PLAIN_SYNTAXES);
        CommandSet request =
                CommandSet.request(CommandField.C_ECHO_RQ, association.nextMessageId(), SopClass.VERIFICATION);
        association.send(context.contextId(), request);
        return new Exchange(association, request).reply(wait);
    }

    /** An object as a file. */
    public record StoredFile(Path path, String sopClassUid, String sopInstanceUid, String transferSyntaxUid) {}

    /** C-STORE, straight from the file. Source: DICOM PS3.7, 9.1.1. */
    public Reply store(StoredFile file) throws IOException {
        Negotiated context = context(file.sopClassUid(), List.of(file.transferSyntaxUid()));
        CommandSet request = CommandSet.request(
                        CommandField.C_STORE_RQ, association.nextMessageId(), file.sopClassUid())
                .put(CommandElement.PRIORITY, MEDIUM_PRIORITY)
                .putUid(CommandElement.AFFECTED_SOP_INSTANCE_UID, file.sopInstanceUid());
        try (InputStream in = Files.newInputStream(file.path())) {
            FileMeta.skip(in);
            association.send(context.contextId(), request, in);
        }
        return new Exchange(association, request).reply(wait);
    }

    /**
     * What a C-FIND came to.
     *
     * @param identifiers data sets in {@code transferSyntaxUid}
     * @param last the final status
     */
    public record Found(List<byte[]> identifiers, String transferSyntaxUid, Reply last) {
        public Found {
            identifiers = List.copyOf(identifiers);
        }
    }

    /** Makes the data set in the transfer syntax that was agreed upon. */
    public interface Encoded {
        byte[] in(String transferSyntaxUid);
    }

    /**
     * C-FIND. Source: DICOM PS3.7, 9.1.2.
     *
     * @param most so many answers at most; more break the exchange off, so that nobody fills our memory
     */
    public Found find(String sopClassUid, Encoded identifier, int most) throws IOException {
        Negotiated context = context(sopClassUid, SopClass.PLAIN_SYNTAXES);
        CommandSet request = CommandSet.request(CommandField.C_FIND_RQ, association.nextMessageId(), sopClassUid)
                .put(CommandElement.PRIORITY, MEDIUM_PRIORITY);
        association.send(
                context.contextId(), request, new ByteArrayInputStream(identifier.in(context.transferSyntax())));
        Exchange exchange = new Exchange(association, request);
        List<byte[]> found = new ArrayList<>();
        long bytes = 0;
        Message answer = exchange.answer(wait);
        while (Status.of(answer.status()).kind() == Status.Kind.PENDING) {
            byte[] match = answer.smallDataSet();
            found.add(match);
            bytes += match.length;
            if (found.size() > most || bytes > MOST_FOUND_BYTES) {
                association.abort();
                throw new PeerFailure(
                        PeerFailure.Kind.PROTOCOL,
                        "The peer found more than " + most + " matches, or more than " + MOST_FOUND_BYTES + " bytes.");
            }
            answer = exchange.answer(wait);
        }
        return new Found(found, context.transferSyntax(), answer.reply());
    }

    /**
     * C-GET: the objects come back on the same association and are handed to the services one by one. Source: DICOM
     * PS3.7, 9.1.3; PS3.4, C.4.3.
     */
    public Reply get(Encoded identifier, Services services) throws IOException {
        Negotiated context = context(SopClass.STUDY_ROOT_GET, SopClass.PLAIN_SYNTAXES);
        CommandSet request = CommandSet.request(
                        CommandField.C_GET_RQ, association.nextMessageId(), SopClass.STUDY_ROOT_GET)
                .put(CommandElement.PRIORITY, MEDIUM_PRIORITY);
        association.send(
                context.contextId(), request, new ByteArrayInputStream(identifier.in(context.transferSyntax())));
        Exchange exchange = new Exchange(association, request);
        Provider provider = new Provider(association, services);
        while (true) {
            Message message = association
                    .nextMessage(wait)
                    .orElseThrow(() -> new PeerFailure(
                            PeerFailure.Kind.ABORTED, "The peer released the association instead of answering."));
            if (message.commandField() == CommandField.C_STORE_RQ) {
                provider.serve(message);
            } else if (Status.of(exchange.answer(message).status()).kind() != Status.Kind.PENDING) {
                return withFailures(message);
            }
        }
    }

    private static Reply withFailures(Message last) {
        int failed = last.command()
                .number(CommandElement.NUMBER_OF_FAILED_SUB_OPERATIONS)
                .orElse(0);
        return failed > 0 && last.reply().comment().isEmpty()
                ? new Reply(last.status(), failed + " sub-operations failed")
                : last.reply();
    }

    /** Whether the peer agreed to be asked for storage commitment. */
    public boolean canRequestCommitment() {
        return association
                .negotiated(SopClass.STORAGE_COMMITMENT, SopClass.PLAIN_SYNTAXES)
                .isPresent();
    }

    /**
     * N-ACTION of storage commitment. The report comes later, as a rule on another association, but may come on this one,
     * before the answer and after it. Source: DICOM PS3.4, J.3.2 and J.3.3.
     *
     * @param reports takes those that come before the answer
     */
    public Reply requestCommitment(Encoded information, Services reports) throws IOException {
        Negotiated context = context(SopClass.STORAGE_COMMITMENT, SopClass.PLAIN_SYNTAXES);
        CommandSet request = new CommandSet()
                .putUid(CommandElement.REQUESTED_SOP_CLASS_UID, SopClass.STORAGE_COMMITMENT)
                .put(CommandElement.COMMAND_FIELD, CommandField.N_ACTION_RQ)
                .put(CommandElement.MESSAGE_ID, association.nextMessageId())
                .putUid(CommandElement.REQUESTED_SOP_INSTANCE_UID, SopClass.STORAGE_COMMITMENT_INSTANCE)
                .put(CommandElement.ACTION_TYPE_ID, REQUEST_COMMITMENT);
        association.send(
                context.contextId(), request, new ByteArrayInputStream(information.in(context.transferSyntax())));
        Exchange exchange = new Exchange(association, request);
        Provider provider = new Provider(association, reports);
        while (true) {
            Message message = association
                    .nextMessage(wait)
                    .orElseThrow(() -> new PeerFailure(
                            PeerFailure.Kind.ABORTED, "The peer released the association instead of answering."));
            if (message.commandField() != CommandField.N_EVENT_REPORT_RQ) {
                return exchange.answer(message).reply();
            }
            provider.serve(message);
        }
    }

    /**
     * Takes reports that come after the answers, until the peer is silent for so long or ends the association.
     *
     * @throws PeerFailure where it breaks
     */
    public void takeReports(Services reports, Duration silence) throws IOException {
        Provider provider = new Provider(association, reports);
        boolean open = true;
        while (open && association.isSpokenTo(silence)) {
            Optional<Message> message = association.nextMessage(wait);
            if (message.isPresent()) {
                provider.serve(message.get());
            }
            open = message.isPresent();
        }
    }

    private Negotiated context(String sopClassUid, List<String> transferSyntaxes) throws PeerFailure {
        Optional<Negotiated> context = association.negotiated(sopClassUid, transferSyntaxes);
        return context.orElseThrow(() -> new PeerFailure(
                PeerFailure.Kind.CONTEXT_REFUSED,
                "The peer takes no " + sopClassUid + " in " + String.join(" or ", transferSyntaxes) + ": "
                        + association.refusal(sopClassUid) + "."));
    }
}
