// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * The state: the index of objects, cases, revisions of records, answers already given. What {@link #write} returned
 * from is durable.
 */
public interface Store extends AutoCloseable {
    /** One transaction: everything the work does is kept together, or nothing when it throws. */
    <T> T write(Function<Writing, T> work);

    /** Records on their way to other archives. */
    Dispatches dispatches();

    Optional<HeldObject> object(String sopInstanceUid);

    /** Objects of a study, or of one of its series, in the order they were received. */
    List<HeldObject> objects(String studyInstanceUid, Optional<String> seriesInstanceUid);

    /** Every object, in the order received; small stores only, as each comes with its attributes. */
    List<HeldObject> objects();

    /** The file of every object, in the order received. */
    List<HeldFile> files();

    int objectCount();

    /** SOP Instance UIDs of the objects of some classes, in the order received. */
    List<String> instancesOf(Collection<String> sopClassUids);

    List<Found> search(Search search);

    Optional<StoredCase> storedCase(String caseId);

    /** What was appended to a case, in the order received. */
    List<CaseItem> caseItems(String caseId);

    /** The cases of a session, in the order they were opened. */
    List<String> casesOf(String session);

    /** The cases that were opened on an image of a study, in the order they were opened. */
    List<String> casesOfStudy(String studyInstanceUid);

    /** The cases that nobody has signed, in no order. */
    List<OpenCase> openCases();

    /** Of one case, oldest first. */
    List<StoredRevision> revisions(String caseId);

    Optional<StoredRevision> revisionOfReport(String reportUid);

    /** Of all cases, newest first. */
    List<StoredRevision> revisions(int limit, int offset);

    /** Records that a query asks for, newest first; their notes of withdrawal are no records. */
    List<RecordListed> records(RecordQuery query);

    /** How many there are, whatever the page. */
    int countRecords(RecordQuery query);

    /** Reports and drafts that no list speaks of yet, oldest first. */
    List<StoredRevision> unlistedRevisions();

    /** Signed revisions whose companions are to be composed, the oldest first. */
    List<DueCompanions> companionsDue();

    /** Of one study only. */
    List<DueCompanions> companionsDue(String studyInstanceUid);

    /**
     * The answer already given under a key, if one is still kept.
     *
     * @throws Refusal {@link Problem.KeyReused} where the key came with another body
     */
    Optional<KeptAnswer> answer(String key, String requestDigest, Instant now);

    /** How many bytes a sender added on a day, as far as they were counted. */
    long received(Sender sender, LocalDate day);

    /** The UID of this installation as an observer: asked of the supplier once in its life, then kept. */
    String deviceObserverUid(Supplier<String> fresh);

    @Override
    void close();

    /** What a transaction can do. */
    interface Writing {
        /**
         * Adds an index row, unless the same object has one.
         *
         * @return false where it was there
         * @throws Refusal {@link Problem.Conflict} where another object has this SOP Instance UID
         */
        boolean add(HeldObject object);

        /**
         * Adds a case, unless the same case is there.
         *
         * @return false where it was there
         * @throws Refusal {@link Problem.Conflict} where the case is there with another content
         */
        boolean add(StoredCase stored);

        /** Appends to a case that is there; the same part holds no item of this id yet. */
        void add(CaseItem item);

        /**
         * Adds a revision, unless the same revision is there.
         *
         * @return false where it was there
         * @throws Refusal {@link Problem.Conflict} where the revision is there with another content
         */
        boolean add(StoredRevision revision);

        /** Adds by what a revision that is there is found. */
        void add(RecordRow row);

        /** Notes that the companions of a revision, which is there, are to be composed. */
        void add(DueCompanions due);

        /** Notes why they could not be composed. */
        void failed(DueCompanions due, String why);

        /** Notes that they are composed, or were before. */
        void composed(DueCompanions due);

        /**
         * Queues a revision, which is there, for those of the destinations that it was not queued for before.
         *
         * @return how many these are
         */
        int queue(StoredRevision revision, List<String> destinations, Instant when);

        /**
         * Keeps an answer and forgets those that are too old.
         *
         * @return the answer that stands: this one, or the one given before to the same request
         * @throws Refusal {@link Problem.KeyReused} where the key came with another body
         */
        KeptAnswer add(KeptAnswer answer);

        /**
         * Counts bytes that a sender adds, and forgets earlier days.
         *
         * @return what it has added on this day, these included
         */
        long received(Sender sender, LocalDate day, long bytes);
    }
}
