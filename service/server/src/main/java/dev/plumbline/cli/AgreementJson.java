// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.review.BlandAltman;
import dev.plumbline.review.ConfidenceInterval;
import dev.plumbline.review.IntraclassCorrelation;

/** Agreement of observers as JSON; what cannot be computed is null. */
final class AgreementJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private AgreementJson() {}

    static ObjectNode of(Agreement agreement) {
        ObjectNode node =
                JSON.objectNode().put("subjects", agreement.ratings().table().subjects());
        ArrayNode observers = node.putArray("observers");
        agreement.ratings().observers().forEach(observers::add);
        ArrayNode pairs = node.putArray("limitsOfAgreement");
        agreement.pairs().forEach(pair -> pairs.add(pair(pair)));
        ArrayNode correlations = node.putArray("intraclassCorrelations");
        agreement.correlations().forEach(correlation -> correlations.add(correlation(correlation)));
        node.putObject("technicalError")
                .put("value", agreement.technicalError().value())
                .put("repeatability", agreement.technicalError().repeatability());
        return node.put("text", AgreementWords.of(agreement));
    }

    private static ObjectNode pair(Agreement.Pair pair) {
        BlandAltman limits = pair.limits();
        ObjectNode node = JSON.objectNode()
                .put("first", pair.first())
                .put("second", pair.second())
                .put("bias", limits.bias())
                .put("sd", limits.sd())
                .put("multiple", limits.multiple())
                .put("lowerLimit", limits.lowerLimit())
                .put("upperLimit", limits.upperLimit());
        node.set("biasInterval", interval(limits.biasInterval()));
        node.set("lowerLimitInterval", interval(limits.lowerInterval()));
        node.set("upperLimitInterval", interval(limits.upperInterval()));
        return node;
    }

    private static ObjectNode correlation(IntraclassCorrelation correlation) {
        ObjectNode node = JSON.objectNode()
                .put("form", correlation.form().word())
                .put("meaning", correlation.form().meaning());
        if (correlation.value().isPresent()) {
            node.put("value", correlation.value().getAsDouble());
        } else {
            node.putNull("value");
        }
        if (correlation.interval().isPresent()) {
            node.set("interval", interval(correlation.interval().get()));
        } else {
            node.putNull("interval");
        }
        return node;
    }

    private static ObjectNode interval(ConfidenceInterval interval) {
        return JSON.objectNode()
                .put("low", interval.low())
                .put("high", interval.high())
                .put("level", interval.level())
                .put("method", interval.method());
    }
}
