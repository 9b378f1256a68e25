// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.record;

import dev.plumbline.agents.DrugList;
import dev.plumbline.agents.Formulary;
import dev.plumbline.intake.MarkRules;
import dev.plumbline.procedure.BlockList;
import dev.plumbline.procedure.Completeness;
import dev.plumbline.procedure.SetUpChecks;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.sight.SightRules;

/**
 * Everything a site can set for the bedside.
 *
 * @param signing what the site asks of a record before it is signed
 */
public record SiteRules(
        SightRules sight,
        SetUpChecks checks,
        DrugList drugs,
        Formulary formulary,
        BlockList blocks,
        Completeness completeness,
        MarkRules marks,
        Signing signing) {
    /**
     * What the site asks of a record before it is signed.
     *
     * @param always required items are required of every record, not only of those kept at the bedside with this program
     * @param sightDetail how much of the search for the needle goes into a record whose case does not say
     */
    public record Signing(boolean always, SightDetail sightDetail) {}
}
