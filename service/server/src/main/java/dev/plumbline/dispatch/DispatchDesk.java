// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.archive.Dispatch;
import dev.plumbline.archive.Dispatch.Part;
import dev.plumbline.archive.Dispatch.Progress;
import dev.plumbline.archive.Dispatch.State;
import dev.plumbline.archive.Dispatches;
import dev.plumbline.archive.DueCompanions;
import dev.plumbline.archive.Store;
import dev.plumbline.archive.StoredRevision;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.LongConsumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Where people look at what is on its way, and decide about what is held. */
public final class DispatchDesk {
    private static final Logger LOG = LoggerFactory.getLogger(DispatchDesk.class);

    private final Store store;
    private final Dispatches dispatches;
    private final List<Destination> destinations;
    private final Clock clock;
    private final LongConsumer hurry;

    private DispatchDesk(Store store, List<Destination> destinations, Clock clock, LongConsumer hurry) {
        this.store = store;
        this.dispatches = store.dispatches();
        this.destinations = List.copyOf(destinations);
        this.clock = clock;
        this.hurry = hurry;
    }

    /** With a dispatcher at work. */
    public static DispatchDesk of(Store store, List<Destination> destinations, Clock clock, Dispatcher dispatcher) {
        return new DispatchDesk(store, destinations, clock, dispatcher::hurry);
    }

    /** Where nothing is carried just now; what is decided holds when the service runs again. */
    public static DispatchDesk closed(Store store, List<Destination> destinations, Clock clock) {
        return new DispatchDesk(store, destinations, clock, id -> {});
    }

    /** Newest first. */
    public List<Dispatch> list(Optional<State> state, int limit, int offset) {
        return dispatches.list(state, limit, offset);
    }

    /** Of every revision of a case, newest first. */
    public List<Dispatch> ofCase(String caseId) {
        return dispatches.ofCase(caseId);
    }

    /**
     * One of them.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    public Dispatch get(long id) {
        return dispatches
                .get(id)
                .orElseThrow(() -> new Refusal(new Problem.NotHeld(
                        "", "There is no dispatch with this number.", "List them with GET /v1/dispatch.")));
    }

    /**
     * Sends what is held or waits again, now; what the archive has already is not sent twice.
     *
     * @throws Refusal where there is nothing to retry
     */
    public Dispatch retry(long id) {
        Dispatch dispatch = get(id);
        if (dispatch.state() == State.PROVED) {
            throw new Refusal(new Problem.Conflict(
                    "", "This record is proved to be in the archive.", "There is nothing to retry."));
        }
        if (dispatch.released().isPresent()) {
            throw new Refusal(new Problem.Conflict(
                    "",
                    "This dispatch was released; nobody waits for it any more.",
                    "Send the record by other means."));
        }
        String destination = dispatch.addressed().destination();
        if (!destinations().contains(destination)) {
            throw new Refusal(new Problem.Conflict(
                    "",
                    "It goes to " + destination + ", which is no peer any more: nobody carries it.",
                    "Configure that peer again under its name; or release this one and queue the record with"
                            + " plumbline dispatch queue --record UID."));
        }
        List<Part> parts = dispatch.parts().stream()
                .map(part -> part.state() == State.HELD ? part.now(State.QUEUED, part.answer(), clock.instant()) : part)
                .map(part -> part.state() == State.PROVED
                        ? part
                        : part.with(part.asked().anew()))
                .toList();
        Progress progress = new Progress(dispatch.progress().attempts(), Optional.empty());
        dispatches.update(dispatch.now(parts, progress));
        LOG.info("Dispatch {} is tried again by order.", id);
        hurry.accept(id);
        return get(id);
    }

    /**
     * Queues a signed record, or a note of withdrawal, for every configured archive that it was never queued for: one that was
     * added since, or all of them after the index was made again.
     *
     * @return all dispatches of its case, newest first
     * @throws Refusal where there is no such record, or nothing to queue
     */
    public List<Dispatch> queue(String recordUid) {
        StoredRevision revision = store.revisionOfReport(recordUid)
                .filter(each -> each.state() != StoredRevision.State.DRAFT)
                .orElseThrow(() -> new Refusal(new Problem.NotHeld(
                        "", "No signed record with this UID is held here.", "List the records with GET /v1/records.")));
        int added = store.write(writing -> writing.queue(revision, destinations(), clock.instant()));
        if (added == 0) {
            throw new Refusal(new Problem.Conflict(
                    "",
                    destinations().isEmpty()
                            ? "No other archive is configured."
                            : "This record was queued for every configured archive before.",
                    "List its dispatches; retry one that waits or is held."));
        }
        LOG.info("A record was queued for {} archives by order.", added);
        List<Dispatch> all = ofCase(revision.caseId());
        all.forEach(each -> hurry.accept(each.id()));
        return all;
    }

    /**
     * Gives a dispatch up: nobody tries or waits any more; the record stays here.
     *
     * @throws Refusal where it is proved already
     */
    public Dispatch release(long id) {
        if (get(id).state() == State.PROVED) {
            throw new Refusal(new Problem.Conflict(
                    "", "This record is proved to be in the archive.", "There is nothing to release."));
        }
        dispatches.release(id, clock.instant());
        LOG.warn("Dispatch {} was released by order.", id);
        return get(id);
    }

    /** How many stand where. */
    public List<Dispatch.Count> counts() {
        return dispatches.counts();
    }

    /** The oldest record that is not yet where it goes: not proved, or not even sent where no proof is offered. */
    public Optional<Dispatch> oldestUnproved() {
        return dispatches.oldestUnproved(destinations.stream()
                .filter(Destination::provable)
                .map(Destination::name)
                .toList());
    }

    /** How many were altered by an archive, or stay unconfirmed. */
    Dispatches.Remarks remarks() {
        return dispatches.remarks();
    }

    /** Signed records that are not whole yet, the oldest first. */
    List<DueCompanions> companionsDue() {
        return store.companionsDue();
    }

    /** What is queued or held for destinations that are no peers any more: nobody carries it. */
    List<Dispatch.Count> stranded() {
        return counts().stream()
                .filter(count -> count.state() == State.QUEUED || count.state() == State.HELD)
                .filter(count -> !count.released() && !destinations().contains(count.destination()))
                .toList();
    }

    public List<String> destinations() {
        return destinations.stream().map(Destination::name).toList();
    }

    Clock clock() {
        return clock;
    }
}
