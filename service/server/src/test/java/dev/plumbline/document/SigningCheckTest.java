// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.InstanceOfAssertFactories.type;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.InventedLimit;
import dev.plumbline.agents.Formulary;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.SigningCheck;
import dev.plumbline.record.SiteRules;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Who may sign: a limit exceeded needs its reason, sides that differ their answer. The limit is invented. */
class SigningCheckTest {
    private static final OffsetDateTime NOW = OffsetDateTime.parse("2026-01-05T10:15:00+01:00");
    private static final String CASE = """
            {"schema": "plumbline-case/1", "caseId": "case-1", "approach": "inPlane",
             "frame": {"columns": 640, "rows": 640, "mmPerColumn": 0.05, "mmPerRow": 0.05},
             "marks": {"target": {"column": 320, "row": 360}},
             "context": {"block": "axillaryBrachialPlexus", "laterality": "right"},
             "agents": [{"id": "a1", "drug": "bupivacaine", "basis": "salt", "concentration": {"percent": 0.5},
                         "purpose": "block", "route": "perineural", "volumeMl": {"drawnUp": 30, "given": %s}}],
             "signature": {"name": "Sample^Signer", "time": "2026-01-05T10:15:00+01:00",
                           "incompleteBecause": {"patient": "-", "performer": "-", "consent": "-", "stopMoment": "-",
                              "patientState": "-", "needle": "-", "aspirationAndSpread": "-", "pain": "-",
                              "complications": "-"}}}
            """;

    private static ObjectNode json(String given) {
        try {
            return (ObjectNode) new JsonMapper().readTree(CASE.formatted(given));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static CaseDocument document(ObjectNode json) {
        return CaseJson.read(json, Door.HTTP);
    }

    private static void sign(CaseDocument document, SiteRules site, Optional<Laterality> image) {
        SigningCheck.require(document, new SigningCheck.Beside(site, true, image, List.of(document), NOW));
    }

    private static void refusedFor(CaseDocument document, Optional<Laterality> image, String item, String pointer) {
        assertThatThrownBy(() -> sign(document, InventedLimit.approved(), image))
                .isInstanceOf(Refusal.class)
                .extracting(thrown -> ((Refusal) thrown).problem())
                .asInstanceOf(type(Problem.Incomplete.class))
                .matches(problem -> problem.missing().size() == 1
                        && problem.missing().get(0).item().equals(item)
                        && problem.missing().get(0).pointer().equals(pointer));
    }

    @Test
    void theWholeLimitIsSignedWithoutAReason() {
        assertThatCode(() -> sign(document(json("20")), InventedLimit.approved(), Optional.empty()))
                .doesNotThrowAnyException();
    }

    @Test
    void moreThanTheLimitIsNotSignedWithoutAReason() {
        refusedFor(document(json("20.1")), Optional.empty(), "exceeding", "/agents");
    }

    @Test
    void moreThanTheLimitIsSignedWithItsReason() {
        ObjectNode json = json("20.1");
        ((ObjectNode) json.path("agents").get(0))
                .putObject("exceeding")
                .put("reason", "considered")
                .put("by", "Doe^Jo")
                .put("at", "2026-01-05T10:00:00+01:00");
        assertThatCode(() -> sign(document(json), InventedLimit.approved(), Optional.empty()))
                .doesNotThrowAnyException();
    }

    @Test
    void aLimitThatNobodyApprovedAsksForNoReason() {
        assertThatCode(() -> sign(
                        document(json("30")),
                        InventedLimit.site(new Formulary.Approval.Missing("nobody approved it")),
                        Optional.empty()))
                .doesNotThrowAnyException();
    }

    @Test
    void sidesThatDifferAreNotSignedWithoutAnAnswer() {
        refusedFor(document(json("10")), Optional.of(Laterality.LEFT), "sideAnswered", "/context/sideAnswered");
        ObjectNode answered = json("10");
        answered.withObjectProperty("context").put("sideAnswered", "The image is labelled wrongly; patient asked.");
        assertThatCode(() -> sign(document(answered), InventedLimit.approved(), Optional.of(Laterality.LEFT)))
                .doesNotThrowAnyException();
    }

    @Test
    void anOrderForAnotherSideIsNotSignedWithoutAnAnswer() {
        ObjectNode json = json("10");
        json.withObjectProperty("context").put("orderLaterality", "left");
        refusedFor(document(json), Optional.empty(), "sideAnswered", "/context/sideAnswered");
        refusedFor(document(json), Optional.of(Laterality.RIGHT), "sideAnswered", "/context/sideAnswered");
        json.withObjectProperty("context").put("sideAnswered", "The order was written for the other arm; corrected.");
        assertThatCode(() -> sign(document(json), InventedLimit.approved(), Optional.empty()))
                .doesNotThrowAnyException();
    }

    @Test
    void anOrderForTheSameSideAsksNothing() {
        ObjectNode json = json("10");
        json.withObjectProperty("context").put("orderLaterality", "right");
        assertThatCode(() -> sign(document(json), InventedLimit.approved(), Optional.of(Laterality.RIGHT)))
                .doesNotThrowAnyException();
    }

    @Test
    void anOrderForBothSidesIsTwoCases() {
        ObjectNode json = json("10");
        json.withObjectProperty("context").put("orderLaterality", "bilateral");
        assertThatThrownBy(() -> document(json))
                .isInstanceOf(Refusal.class)
                .extracting(thrown -> ((Refusal) thrown).problem().pointer())
                .isEqualTo("/context/orderLaterality");
    }
}
