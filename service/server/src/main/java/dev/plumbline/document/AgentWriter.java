// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.agents.AgentEntry;
import dev.plumbline.agents.Dose;
import dev.plumbline.agents.Exceeding;
import dev.plumbline.agents.Labelled;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.record.Surroundings;
import java.util.Map;

/** Writes one agent as it was entered, the mirror of {@link AgentReader}. */
final class AgentWriter {
    private AgentWriter() {}

    static ObjectNode agent(AgentEntry entry) {
        return new Stated()
                .put("id", entry.id())
                .putText("corrects", entry.corrects())
                .put("drug", entry.solution().drug())
                .putText("basis", AgentReader.word(entry.solution().basis()))
                .putObject("concentration", concentration(entry.solution().concentration()))
                .putObjects("additives", entry.solution().additives(), AgentWriter::additive)
                .put("purpose", entry.handling().purpose().word())
                .putText("route", AgentReader.word(entry.handling().route()))
                .putText("technique", entry.handling().technique())
                .putText("mixture", entry.handling().mixture())
                .putObject("volumeMl", volumes(entry.volumes()))
                .putText("brand", entry.packaging().brand())
                .putText("lot", entry.packaging().lot())
                .putObject(
                        "exceeding",
                        entry.exceeding().map(AgentWriter::exceeding).orElseGet(() -> new Stated().node()))
                .node();
    }

    private static ObjectNode additive(AgentEntry.Additive additive) {
        return new Stated()
                .put("drug", additive.drug())
                .putText("basis", AgentReader.word(additive.basis()))
                .putObject("concentration", concentration(additive.concentration()))
                .node();
    }

    private static ObjectNode concentration(Labelled labelled) {
        return new Stated().put(labelled.form().word(), labelled.value()).node();
    }

    private static ObjectNode volumes(Map<Stage, Volume> volumes) {
        Stated node = new Stated();
        for (Stage stage : Stage.values()) {
            Volume volume = volumes.get(stage);
            if (volume != null) {
                node.put(stage.word(), volume.ml());
            }
        }
        return node.node();
    }

    private static ObjectNode exceeding(Exceeding exceeding) {
        return new Stated()
                .put("reason", exceeding.reason())
                .put("by", exceeding.by())
                .putTime("at", exceeding.at())
                .node();
    }

    static ObjectNode otherDose(Surroundings.OtherDose other) {
        Dose dose = other.dose();
        return new Stated()
                .put("id", other.id())
                .put("drug", dose.drug())
                .putText("basis", AgentReader.word(dose.basis()))
                .put("massMg", dose.mass().mg())
                .putFlag("vasoconstrictor", dose.vasoconstrictor())
                .putText("route", AgentReader.word(dose.route()))
                .putText("technique", dose.technique())
                .putTime("at", dose.at())
                .node();
    }
}
