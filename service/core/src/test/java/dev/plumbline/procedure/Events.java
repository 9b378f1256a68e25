// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.agents.Volume;
import dev.plumbline.sight.Seen;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Invented logs for tests: each event a number of seconds after ten o'clock, entered at once by the assistant. */
public final class Events {
    public static final OffsetDateTime TEN = OffsetDateTime.parse("2026-01-05T10:00:00+01:00");

    private final List<LoggedEvent> all = new ArrayList<>();

    public static LoggedEvent event(String id, long seconds, Happening what) {
        OffsetDateTime at = TEN.plusSeconds(seconds);
        return new LoggedEvent(id, what, at, at, "Roe^Al", false);
    }

    public static LoggedEvent later(String id, long seconds, Happening what) {
        return new LoggedEvent(id, what, TEN.plusSeconds(seconds), TEN.plusHours(1), "Roe^Al", true);
    }

    public Events add(long seconds, Happening what) {
        all.add(event("e" + (all.size() + 1), seconds, what));
        return this;
    }

    public Events addLater(long seconds, Happening what) {
        all.add(later("e" + (all.size() + 1), seconds, what));
        return this;
    }

    public ProcedureLog log() {
        ProcedureLog log = ProcedureLog.EMPTY;
        for (LoggedEvent event : all) {
            log = log.append(event, event.enteredAt());
        }
        return log;
    }

    public static Happening.Stopped stop(Laterality side) {
        return new Happening.Stopped(
                new StopMoment(List.of("Doe^Jo", "Roe^Al"), "axillaryBrachialPlexus", side, true, true), 1);
    }

    public static Happening.Puncture puncture() {
        return new Happening.Puncture(1);
    }

    public static Happening.NeedleOut out() {
        return new Happening.NeedleOut();
    }

    public static Happening.Sight sight(Seen seen) {
        return new Happening.Sight(seen, Optional.empty());
    }

    public static Happening.Aliquot aliquot(String ml) {
        return new Happening.Aliquot(
                Volume.ofMl(ml),
                Optional.of("local anaesthetic"),
                Optional.of("a-1"),
                false,
                Optional.of(Spread.TARGET),
                Optional.of(new Resistance.Felt(Resistance.Word.EASY)),
                Optional.of(Pain.NONE));
    }

    public static Happening.Correction correction(String corrects, Happening instead) {
        return new Happening.Correction(corrects, Optional.of(instead), Optional.of("wrong button"));
    }

    public static Happening.Correction withdrawal(String corrects) {
        return new Happening.Correction(corrects, Optional.empty(), Optional.of("did not happen"));
    }
}
