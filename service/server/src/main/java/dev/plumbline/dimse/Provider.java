// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import dev.plumbline.dicom.UidSyntax;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Answers what a peer asks on an association. Source: DICOM PS3.7, 9.1.1.1.9 (C-STORE), 9.1.5 (C-ECHO), 10.1.1
 * (N-EVENT-REPORT), annex C (statuses).
 */
final class Provider {
    private static final Logger LOG = LoggerFactory.getLogger(Provider.class);

    private final Association association;
    private final Services services;

    Provider(Association association, Services services) {
        this.association = association;
        this.services = services;
    }

    /** Serves until the peer releases the association or is silent for too long. */
    void serve(Duration idle) throws IOException {
        for (Optional<Message> next = association.nextMessage(idle);
                next.isPresent();
                next = association.nextMessage(idle)) {
            serve(next.get());
        }
    }

    /** Answers one request; what is left of its data set is read first, as the peer is still sending it. */
    void serve(Message message) throws IOException {
        if (message.commandField() == CommandField.C_CANCEL_RQ) {
            return; // nothing that could be cancelled is ever running
        }
        if ((message.commandField() & CommandField.RESPONSE) != 0) {
            association.abort();
            throw new PeerFailure(PeerFailure.Kind.PROTOCOL, "The peer answered what nobody asked.");
        }
        Reply reply = reply(message);
        if (message.data().isPresent()) {
            message.data().get().transferTo(OutputStream.nullOutputStream());
        }
        association.send(message.contextId(), CommandSet.response(message.command(), reply));
    }

    private Reply reply(Message message) throws IOException {
        return switch (message.commandField()) {
            case CommandField.C_ECHO_RQ -> echo(message);
            case CommandField.C_STORE_RQ -> store(message);
            case CommandField.N_EVENT_REPORT_RQ -> report(message);
            default -> Reply.of(Status.UNRECOGNISED_OPERATION, "This service is not provided here.");
        };
    }

    private Reply echo(Message message) {
        return isAbout(message, SopClass.VERIFICATION)
                ? Reply.SUCCESS
                : Reply.of(Status.CLASS_NOT_SUPPORTED, "An echo needs the verification class.");
    }

    private boolean isAbout(Message message, String sopClass) {
        return association.contexts().abstractSyntax(message.contextId()).equals(sopClass);
    }

    private Reply store(Message message) throws IOException {
        String sopClass = text(message, CommandElement.AFFECTED_SOP_CLASS_UID);
        String sopInstance = text(message, CommandElement.AFFECTED_SOP_INSTANCE_UID);
        if (!UidSyntax.holds(sopInstance)) {
            return Reply.of(Status.INVALID_INSTANCE, "The SOP Instance UID is missing or no UID.");
        }
        if (!isAbout(message, sopClass)) {
            return Reply.of(Status.CLASS_NOT_SUPPORTED, "The SOP class is not the one of the presentation context.");
        }
        if (message.data().isEmpty()) {
            return Reply.of(Status.MISTYPED_ARGUMENT, "There is no data set.");
        }
        Services.Incoming object = new Services.Incoming(
                sopClass,
                sopInstance,
                association.contexts().transferSyntax(message.contextId()).orElseThrow(),
                association.proposal().titles().calling());
        return stored(object, message.data().get());
    }

    private Reply stored(Services.Incoming object, InputStream data) throws IOException {
        try {
            return services.store(object, new SequenceInputStream(new ByteArrayInputStream(FileMeta.of(object)), data));
        } catch (RuntimeException e) {
            return failed(e);
        }
    }

    /** Where the association itself broke there is nobody to answer; else the fault is ours. */
    private Reply failed(RuntimeException fault) throws PeerFailure {
        if (fault instanceof UncheckedIOException wrapped && wrapped.getCause() instanceof PeerFailure peer) {
            throw peer;
        }
        LOG.error("An object could not be taken in.", fault);
        return Reply.of(Status.PROCESSING_FAILURE, "Plumbline itself failed; its log says how.");
    }

    private Reply report(Message message) throws IOException {
        if (!isAbout(message, SopClass.STORAGE_COMMITMENT)) {
            return Reply.of(Status.CLASS_NOT_SUPPORTED, "Only storage commitment reports are taken.");
        }
        int eventType = message.command().number(CommandElement.EVENT_TYPE_ID).orElse(0);
        if (eventType != 1 && eventType != 2) {
            return Reply.of(Status.NO_SUCH_EVENT_TYPE, "Events 1 and 2 are known.");
        }
        try {
            return services.commitment(new Services.CommitmentReport(
                    eventType,
                    message.smallDataSet(),
                    association.contexts().transferSyntax(message.contextId()).orElseThrow()));
        } catch (RuntimeException e) {
            return failed(e);
        }
    }

    private static String text(Message message, int element) {
        return message.command().text(element).orElse("");
    }
}
