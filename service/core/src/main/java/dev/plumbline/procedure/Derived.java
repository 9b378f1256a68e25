// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import dev.plumbline.agents.Volume;
import java.util.List;

/**
 * What follows from a log. Nothing here is entered by anybody.
 *
 * @param passes punctures and further passes together
 * @param underSkin from puncture to needle out, all punctures together
 * @param tipUnseen while the needle was in and the tip was not seen, from one note of the view to the next
 * @param injected everything injected, whatever the fluid
 */
public record Derived(int passes, int redirections, Elapsed underSkin, Elapsed tipUnseen, Volume injected) {
    /** From a log; times only where both ends were entered while they happened. */
    public static Derived of(ProcedureLog log) {
        List<LoggedEvent> standing = log.standing();
        return new Derived(
                count(standing, Happening.Puncture.class) + count(standing, Happening.Pass.class),
                count(standing, Happening.Redirection.class),
                underSkin(standing),
                tipUnseen(standing),
                standing.stream()
                        .map(LoggedEvent::what)
                        .filter(Happening.Aliquot.class::isInstance)
                        .map(what -> ((Happening.Aliquot) what).volume())
                        .reduce(Volume.NONE, Volume::plus));
    }

    private static int count(List<LoggedEvent> events, Class<? extends Happening> kind) {
        return (int)
                events.stream().filter(event -> kind.isInstance(event.what())).count();
    }

    private static Elapsed underSkin(List<LoggedEvent> events) {
        Stopwatch watch = new Stopwatch();
        for (LoggedEvent event : events) {
            if (event.what() instanceof Happening.Puncture) {
                watch.start(event);
            } else if (event.what() instanceof Happening.NeedleOut) {
                watch.stop(event);
            }
        }
        return watch.read();
    }

    private static Elapsed tipUnseen(List<LoggedEvent> events) {
        Stopwatch watch = new Stopwatch();
        boolean noted = false;
        for (LoggedEvent event : events) {
            if (event.what() instanceof Happening.Sight sight) {
                noted = true;
                if (sight.seen().tipKnown()) {
                    watch.stopIfRunning(event);
                } else {
                    watch.startIfStopped(event);
                }
            } else if (event.what() instanceof Happening.NeedleOut) {
                watch.stopIfRunning(event);
            }
        }
        return noted ? watch.readOrNothing() : Elapsed.notLoggedLive();
    }
}
