// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import dev.plumbline.InventedLimit;
import dev.plumbline.agents.Basis;
import dev.plumbline.agents.DoseShares;
import dev.plumbline.agents.Formulary;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.SessionDose;
import dev.plumbline.record.SessionDose.Amount;
import dev.plumbline.record.SessionDose.Judged;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What is frozen with a revision. The limit is invented. */
class SessionDoseTest {
    private static final OffsetDateTime TIME = OffsetDateTime.parse("2026-01-05T10:15:00+01:00");
    private static final String CASE = """
            {"schema": "plumbline-case/1", "caseId": "%s", "approach": "inPlane",
             "frame": {"columns": 640, "rows": 640, "mmPerColumn": 0.05, "mmPerRow": 0.05},
             "marks": {"target": {"column": 320, "row": 360}}, "session": "monday-3",
             "agents": [{"id": "a1", "drug": "%s", "basis": "salt", "concentration": {"percent": 0.5},
                         "purpose": "block", "route": "perineural", "volumeMl": {"drawnUp": 30, "given": %s}}]}
            """;

    private static CaseDocument document(String caseId, String drug, String given) {
        try {
            return CaseJson.read(new JsonMapper().readTree(CASE.formatted(caseId, drug, given)), Door.HTTP);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    private static SessionDose dose(CaseDocument... cases) {
        return SessionDose.of(List.of(cases), InventedLimit.approved(), TIME).orElseThrow();
    }

    @Test
    void allCasesOfTheSessionCountAsOne() {
        SessionDose dose = dose(document("case-1", "bupivacaine", "4.5"), document("case-2", "bupivacaine", "8"));
        assertThat(dose.totals()).containsExactly(new Amount("bupivacaine", Basis.SALT, new BigDecimal("62.5")));
        assertThat(dose.sumPercent()).contains(new BigDecimal("62.5"));
        assertThat(dose.parts()).extracting(SessionDose.Part::judged).containsExactly(share("22.5"), share("40"));
        assertThat(dose.cautions()).containsExactly(DoseShares.CAUTION, DoseShares.OTHER_UNKNOWN);
    }

    private static Judged share(String percent) {
        return new Judged.Share(new BigDecimal(percent), new BigDecimal("100"), "Invented list", "1", "Doe^Jo");
    }

    @Test
    void aDrugWithoutALimitLeavesNoSum() {
        SessionDose dose = dose(document("case-1", "bupivacaine", "4"), document("case-2", "ropivacaine", "8"));
        assertThat(dose.sumPercent()).isEmpty();
        assertThat(dose.parts().get(1).judged()).isEqualTo(new Judged.None(DoseShares.Why.NO_ROW));
    }

    @Test
    void limitsThatNobodyApprovedGiveMassesOnly() {
        SessionDose dose = SessionDose.of(
                        List.of(document("case-1", "bupivacaine", "4")),
                        InventedLimit.site(new Formulary.Approval.Missing("nobody approved it")),
                        TIME)
                .orElseThrow();
        assertThat(dose.totals()).containsExactly(new Amount("bupivacaine", Basis.SALT, new BigDecimal("20")));
        assertThat(dose.parts().get(0).judged()).isEqualTo(new Judged.None(DoseShares.Why.NOT_APPROVED));
    }

    @Test
    void nothingGivenIsNothingKept() {
        CaseDocument none = document("case-1", "bupivacaine", "null");
        assertThat(SessionDose.of(List.of(none), InventedLimit.approved(), TIME))
                .isEmpty();
        assertThat(SessionDoseJson.write(Optional.empty())).isEmpty();
        assertThat(SessionDoseJson.read("")).isEmpty();
    }

    @Test
    void comesBackFigureByFigure() {
        Optional<SessionDose> dose = Optional.of(
                dose(document("case-1", "bupivacaine", "12.3456789"), document("case-2", "ropivacaine", "0.1"))
                        .with(SessionDose.THIS_CASE_ALONE));
        assertThat(SessionDoseJson.read(SessionDoseJson.write(dose))).isEqualTo(dose);
    }
}
