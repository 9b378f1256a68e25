// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class CaseSchemaTest {
    private static final CaseSchema SCHEMA = new CaseSchema();

    private static JsonNode schemaOf(CaseObject object) {
        if (object == CaseObject.CASE) {
            return SCHEMA.json;
        }
        String[] words = object.name().toLowerCase(Locale.ROOT).split("_", -1);
        StringBuilder name = new StringBuilder(words[0]);
        for (int i = 1; i < words.length; i++) {
            name.append(words[i].substring(0, 1).toUpperCase(Locale.ROOT)).append(words[i].substring(1));
        }
        return SCHEMA.json.path("$defs").path(name.toString());
    }

    @ParameterizedTest
    @EnumSource(CaseObject.class)
    void schemaAndReaderKnowTheSameFields(CaseObject object) {
        List<String> properties = new ArrayList<>();
        schemaOf(object).path("properties").fieldNames().forEachRemaining(properties::add);
        assertThat(properties).containsExactlyInAnyOrderElementsOf(object.fields());
        assertThat(schemaOf(object).path("additionalProperties").booleanValue()).isFalse();
    }

    @Test
    void schemaAndReaderKnowTheSameObjects() {
        assertThat(SCHEMA.json.path("$defs").size()).isEqualTo(CaseObject.values().length - 1);
    }

    @Test
    void everyPropertyIsDescribed() {
        for (CaseObject object : CaseObject.values()) {
            assertThat(schemaOf(object).path("description").asText())
                    .as(object.name())
                    .isNotBlank();
            schemaOf(object)
                    .path("properties")
                    .properties()
                    .forEach(property -> assertThat(
                                    property.getValue().path("description").asText())
                            .as(object + " " + property.getKey())
                            .endsWith("."));
        }
    }

    @Test
    void theExampleIsValid() throws Exception {
        JsonNode example = new ObjectMapper()
                .readTree(Objects.requireNonNull(getClass().getResourceAsStream("/cases/everything.json")));
        assertThat(SCHEMA.complaints(example)).isEmpty();
    }

    @Test
    void defaultsAreThoseOfTheEngine() {
        JsonNode limits = schemaOf(CaseObject.CONSTRAINTS).path("properties");
        var inForce = dev.plumbline.plan.Constraints.NOTHING_STATED.limits();
        assertThat(limits.path("footprintClearanceMm").path("default").doubleValue())
                .isEqualTo(inForce.footprintClearanceMm());
        assertThat(limits.path("reserveMm").path("default").doubleValue()).isEqualTo(inForce.reserveMm());
        assertThat(limits.path("cautionWithinMm").path("default").doubleValue()).isEqualTo(inForce.cautionWithinMm());
        assertThat(limits.path("overshootMm").path("default").doubleValue()).isEqualTo(inForce.overshootMm());
        assertThat(limits.path("heelInMaxDeg").path("default").doubleValue()).isEqualTo(inForce.heelInMaxDeg());
        assertThat(limits.path("prefer").path("default").textValue())
                .isEqualTo(inForce.prefer().word());
        assertThat(limits.path("outOfPlaneAngleDeg").path("default").doubleValue())
                .isEqualTo(inForce.outOfPlaneAngleDeg());
        assertThat(limits.path("maxPunctureDistanceMm").path("default").doubleValue())
                .isEqualTo(inForce.maxPunctureDistanceMm());
        assertThat(limits.path("steepPunctureDistanceMm").path("default").doubleValue())
                .isEqualTo(inForce.steepPunctureDistanceMm());
        assertThat(limits.path("angleBandDeg").path("default").get(0).doubleValue())
                .isEqualTo(inForce.angleBand().lowDeg());
        assertThat(limits.path("angleBandDeg").path("default").get(1).doubleValue())
                .isEqualTo(inForce.angleBand().highDeg());
        JsonNode uncertainty = schemaOf(CaseObject.UNCERTAINTY).path("properties");
        var nothing = dev.plumbline.geometry.InputUncertainty.NOTHING_STATED;
        assertThat(uncertainty.path("markPx").path("default").doubleValue()).isEqualTo(nothing.markPxOrDefault());
        assertThat(uncertainty.path("scaleRelative").path("default").doubleValue())
                .isEqualTo(nothing.scaleRelativeOrDefault());
    }
}
