// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.AgentEntry;
import dev.plumbline.procedure.CheckEntry;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.ProcedureLog;
import dev.plumbline.procedure.SightDetail;
import java.util.List;
import java.util.Optional;

/**
 * What was said and done around the needle, as stated and nothing added; what is absent was not said.
 *
 * @param session name of the sitting that links this case to others of the patient
 * @param events in the order they came in, never changed
 * @param agents as they were entered, never changed
 * @param impression free text of whoever signs
 * @param frames kept for what they show, in the order of the case; each once
 * @param sightDetail how much of the search for the needle goes into the record; the site's choice where absent
 */
public record Bedside(
        Optional<String> session,
        List<TeamMember> team,
        List<CheckEntry> checks,
        List<LoggedEvent> events,
        List<AgentEntry> agents,
        Surroundings surroundings,
        Optional<String> impression,
        Optional<SightDetail> sightDetail,
        List<KeptFrame> frames) {
    public static final Bedside NOTHING_STATED = new Bedside(
            Optional.empty(),
            List.of(),
            List.of(),
            List.of(),
            List.of(),
            Surroundings.NOTHING_STATED,
            Optional.empty(),
            Optional.empty(),
            List.of());

    public Bedside {
        team = List.copyOf(team);
        checks = List.copyOf(checks);
        events = List.copyOf(events);
        agents = List.copyOf(agents);
        frames = List.copyOf(frames);
    }

    /** The same with other events. */
    public Bedside withEvents(List<LoggedEvent> other) {
        return new Bedside(session, team, checks, other, agents, surroundings, impression, sightDetail, frames);
    }

    /** The same with other frames. */
    public Bedside withFrames(List<KeptFrame> other) {
        return new Bedside(session, team, checks, events, agents, surroundings, impression, sightDetail, other);
    }

    /**
     * The events as a log.
     *
     * @throws dev.plumbline.problem.Refusal for a correction of nothing; {@link CaseCheck} has refused it before
     */
    public ProcedureLog log() {
        return ProcedureLog.stored(events);
    }

    /** Somebody kept a log, answered checks or entered agents, so that a record of them can be incomplete. */
    public boolean kept() {
        return !events.isEmpty() || !agents.isEmpty() || !checks.isEmpty();
    }
}
