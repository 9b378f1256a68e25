// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.worklist;

import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.Identifiers;
import dev.plumbline.dicom.Tag;
import dev.plumbline.dicom.TransferSyntax;
import dev.plumbline.dimse.Association;
import dev.plumbline.dimse.Peer;
import dev.plumbline.dimse.PeerFailure;
import dev.plumbline.dimse.Requestor;
import dev.plumbline.dimse.ServiceUser;
import dev.plumbline.dimse.SopClass;
import dev.plumbline.dimse.Status;
import dev.plumbline.dimse.Wanted;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The modality worklist of one peer. Source: DICOM PS3.4, annex K. */
public final class Worklist {
    private static final int MOST = 1_000;
    private static final DateTimeFormatter DATE = DateTimeFormatter.BASIC_ISO_DATE;

    private final String name;
    private final Requestor requestor;
    private final Peer peer;
    private final Clock clock;

    /**
     * Asks this peer.
     *
     * @param name of the peer in the configuration
     */
    public Worklist(String name, Requestor requestor, Peer peer, Clock clock) {
        this.name = name;
        this.requestor = requestor;
        this.peer = peer;
        this.clock = clock;
    }

    /** What is scheduled on a day, by the time of day. */
    public record Day(LocalDate date, String source, List<ScheduledProcedure> procedures) {
        public Day {
            procedures = List.copyOf(procedures);
        }

        /** What somebody has to be told where texts came in characters that are not declared. */
        public Optional<String> unreadable() {
            long items = procedures.stream()
                    .filter(each -> !each.unreadable().isEmpty())
                    .count();
            return items == 0
                    ? Optional.empty()
                    : Optional.of(
                            "In " + items + " of " + procedures.size() + " items texts come in characters that the"
                                    + " worklist does not declare; they are left out. Have it return Specific Character Set"
                                    + " (0008,0005).");
        }
    }

    /**
     * Asks for the procedures of a day, today where none is given.
     *
     * @throws Refusal {@link Problem.Unavailable} where the peer does not answer properly, in words
     */
    public Day scheduled(Optional<LocalDate> day) {
        LocalDate date = day.orElseGet(() -> LocalDate.now(clock));
        List<Wanted> wanted = List.of(Wanted.use(SopClass.MODALITY_WORKLIST, SopClass.PLAIN_SYNTAXES));
        try (Association association = requestor.open(peer, wanted)) {
            ServiceUser.Found found = new ServiceUser(association, requestor.timeouts())
                    .find(SopClass.MODALITY_WORKLIST, syntax -> encoded(keys(date), syntax), MOST);
            if (!found.last().isSuccess()) {
                throw unavailable(found.last().code() + " "
                        + Status.of(found.last().status()).words() + " "
                        + found.last().comment());
            }
            TransferSyntax syntax = TransferSyntax.of(found.transferSyntaxUid()).orElseThrow();
            List<ScheduledProcedure> procedures = found.identifiers().stream()
                    .map(bytes -> ScheduledProcedure.of(Identifiers.read(bytes, syntax)))
                    .sorted(Comparator.comparing(procedure -> procedure.step().time()))
                    .toList();
            return new Day(date, name, procedures);
        } catch (PeerFailure e) {
            throw unavailable(String.valueOf(e.getMessage()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Refusal unavailable(String words) {
        return new Refusal(new Problem.Unavailable(
                "",
                "The worklist of " + name + " cannot be read: " + words.strip(),
                "Try again, or run plumbline verify, which says what is wrong."));
    }

    private static byte[] encoded(DataSet keys, String syntax) {
        return Identifiers.write(keys, TransferSyntax.of(syntax).orElseThrow());
    }

    /** The day is matched, everything else is asked back. */
    private static DataSet keys(LocalDate date) {
        DataSet step = new DataSet()
                .putEmpty(Tag.MODALITY)
                .putEmpty(Tag.SCHEDULED_STATION_AE_TITLE)
                .put(Tag.SCHEDULED_PROCEDURE_STEP_START_DATE, DATE.format(date))
                .putEmpty(Tag.SCHEDULED_PROCEDURE_STEP_START_TIME)
                .putEmpty(Tag.SCHEDULED_PROCEDURE_STEP_DESCRIPTION)
                .putEmpty(Tag.SCHEDULED_PROCEDURE_STEP_ID);
        return new DataSet()
                .put(Tag.SPECIFIC_CHARACTER_SET, "ISO_IR 192")
                .putEmpty(Tag.ACCESSION_NUMBER)
                .putEmpty(Tag.REFERRING_PHYSICIAN_NAME)
                .putEmpty(Tag.PATIENT_NAME)
                .putEmpty(Tag.PATIENT_ID)
                .putEmpty(Tag.ISSUER_OF_PATIENT_ID)
                .putEmpty(Tag.PATIENT_BIRTH_DATE)
                .putEmpty(Tag.PATIENT_SEX)
                .putEmpty(Tag.STUDY_INSTANCE_UID)
                .putEmpty(Tag.REQUESTED_PROCEDURE_DESCRIPTION)
                .put(Tag.SCHEDULED_PROCEDURE_STEP_SEQUENCE, List.of(step))
                .putEmpty(Tag.REQUESTED_PROCEDURE_ID);
    }
}
