// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Archive;
import dev.plumbline.archive.Reception;
import dev.plumbline.archive.Sender;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.Identifiers;
import dev.plumbline.dicom.TransferSyntax;
import dev.plumbline.dimse.Reply;
import dev.plumbline.dimse.Services;
import dev.plumbline.dimse.Status;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.InputStream;
import java.time.Clock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What peers send us by associations: objects go to the archive, reports on commitment to the records they are about.
 *
 * <p>Statuses of C-STORE: DICOM PS3.4 table B.2-1 and PS3.7 annex C.
 */
public final class Inbox implements Services {
    private static final Logger LOG = LoggerFactory.getLogger(Inbox.class);
    private static final int ALL_COMMITTED = 1;

    private final Archive archive;
    private final Commitments commitments;

    public Inbox(Archive archive, Clock clock) {
        this.archive = archive;
        this.commitments = new Commitments(archive.store().dispatches(), clock, archive::queuedAgain);
    }

    @Override
    public Reply store(Incoming object, InputStream file) {
        Reception reception = archive.receive(file, Sender.peer(object.callingAeTitle()));
        return reception.fold(kept -> Reply.SUCCESS, refused -> {
            Problem problem = refused.problem();
            LOG.info("An object of {} was refused: {}", object.callingAeTitle(), problem.detail());
            return Reply.of(status(problem), problem.detail());
        });
    }

    /** Which status a problem has on an association; the conformance statement lists them. */
    static Status status(Problem problem) {
        if (problem instanceof Problem.NoRoom || problem instanceof Problem.TooLarge) {
            return Status.OUT_OF_RESOURCES;
        }
        if (problem instanceof Problem.Conflict) {
            return Status.DUPLICATE_INSTANCE;
        }
        if (problem instanceof Problem.UnsupportedObject) {
            return Status.CLASS_NOT_SUPPORTED;
        }
        return DicomFile.isOtherThanStated(problem) ? Status.DATA_SET_DOES_NOT_MATCH : Status.CANNOT_UNDERSTAND;
    }

    @Override
    public Reply commitment(CommitmentReport report) {
        try {
            DataSet information = Identifiers.read(
                    report.information(),
                    TransferSyntax.of(report.transferSyntaxUid()).orElseThrow());
            return commitments.take(information, report.eventType() == ALL_COMMITTED);
        } catch (Refusal refusal) {
            return Reply.of(Status.PROCESSING_FAILURE, refusal.problem().detail());
        }
    }
}
