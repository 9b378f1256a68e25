// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.Pain;
import dev.plumbline.procedure.Resistance;
import dev.plumbline.procedure.Spread;
import dev.plumbline.procedure.StopMoment;
import dev.plumbline.sight.StopSign;
import java.util.Optional;

/** Writes one event of the log, the mirror of {@link EventReader}. */
final class EventWriter {
    private EventWriter() {}

    static ObjectNode event(LoggedEvent event) {
        Stated node = new Stated().put("id", event.id());
        if (event.what() instanceof Happening.Correction correction) {
            node.put("corrects", correction.corrects()).putText("reason", correction.reason());
            correction.instead().ifPresentOrElse(what -> what(node, what), () -> kind(node, EventKind.CORRECTION));
        } else {
            what(node, event.what());
        }
        return node.putTime("happenedAt", event.happenedAt())
                .putTime("enteredAt", event.enteredAt())
                .put("enteredBy", event.enteredBy())
                .putFlag("enteredLater", event.enteredLater())
                .node();
    }

    private static Stated kind(Stated node, EventKind kind) {
        return node.put("kind", kind.word());
    }

    private static void what(Stated node, Happening what) {
        if (what instanceof Happening.Stopped stopped) {
            stopMoment(kind(node, EventKind.STOP_MOMENT), stopped);
        } else if (what instanceof Happening.Puncture puncture) {
            kind(node, EventKind.PUNCTURE).put("punctureSite", puncture.punctureSite());
        } else if (what instanceof Happening.Sight sight) {
            kind(node, EventKind.SIGHT_STEP).put("state", sight.seen().word()).putText("step", sight.step());
        } else if (what instanceof Happening.Aliquot aliquot) {
            aliquot(kind(node, EventKind.ALIQUOT), aliquot);
        } else if (what instanceof Happening.Halt halt) {
            kind(node, EventKind.STOP)
                    .putText("sign", halt.sign().map(StopSign::word))
                    .putText("reason", halt.reason());
        } else {
            simple(node, what);
        }
    }

    private static void simple(Stated node, Happening what) {
        if (what instanceof Happening.Redirection) {
            kind(node, EventKind.REDIRECTION);
        } else if (what instanceof Happening.Pass) {
            kind(node, EventKind.PASS);
        } else if (what instanceof Happening.NeedleOut) {
            kind(node, EventKind.NEEDLE_OUT);
        } else if (what instanceof Happening.Doppler doppler) {
            kind(node, EventKind.DOPPLER).putText("finding", doppler.finding());
        } else if (what instanceof Happening.Aspiration aspiration) {
            kind(node, EventKind.ASPIRATION).putFlag("blood", aspiration.blood());
        } else if (what instanceof Happening.PlanChanged changed) {
            kind(node, EventKind.PLAN_CHANGED).put("reason", changed.reason());
        } else if (what instanceof Happening.ContextChanged changed) {
            kind(node, EventKind.CONTEXT_CHANGED).put("what", changed.what().word());
        } else {
            afterwards(node, what);
        }
    }

    private static void afterwards(Stated node, Happening what) {
        if (what instanceof Happening.Complication complication) {
            kind(node, EventKind.COMPLICATION)
                    .put("complication", complication.code())
                    .putText("text", complication.text());
        } else if (what instanceof Happening.LookedForComplications looked) {
            kind(node, EventKind.COMPLICATIONS_LOOKED_FOR).put("by", looked.by());
        } else if (what instanceof Happening.NearMiss miss) {
            kind(node, EventKind.NEAR_MISS).put("text", miss.text());
        } else if (what instanceof Happening.HandOver over) {
            kind(node, EventKind.HAND_OVER).put("to", over.to());
        } else {
            throw new IllegalArgumentException("No kind is known for " + what.getClass());
        }
    }

    private static void stopMoment(Stated node, Happening.Stopped stopped) {
        StopMoment moment = stopped.moment();
        node.putTexts("names", moment.names())
                .put("block", moment.block())
                .put("side", moment.side().word())
                .putFlag("markSeen", moment.markSeen())
                .putFlag("consentSeen", moment.consentSeen())
                .put("punctureSite", stopped.punctureSite());
    }

    private static void aliquot(Stated node, Happening.Aliquot aliquot) {
        node.put("volumeMl", aliquot.volume().ml())
                .putText("fluid", aliquot.fluid())
                .putText("agent", aliquot.agentId())
                .putFlag("hydrolocation", aliquot.hydrolocation())
                .putText("spread", aliquot.spread().map(Spread::word))
                .putText("pain", aliquot.pain().map(Pain::word));
        Optional<Resistance> resistance = aliquot.resistance();
        if (resistance.isPresent() && resistance.get() instanceof Resistance.Measured read) {
            node.putObject(
                    "resistance",
                    new Stated()
                            .put("value", read.value())
                            .put("unit", read.unit())
                            .put("device", read.device())
                            .node());
        } else {
            node.putText(
                    "resistance",
                    resistance.map(felt -> ((Resistance.Felt) felt).word().word()));
        }
    }
}
