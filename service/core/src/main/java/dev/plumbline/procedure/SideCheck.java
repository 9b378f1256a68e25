// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.procedure;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The side as the order, the case and the image say it. It is never filled in from elsewhere: who says nothing is listed as
 * saying nothing, and a disagreement stands until a person answers it.
 */
public record SideCheck(
        Optional<Laterality> order,
        Optional<Laterality> inCase,
        Optional<Laterality> image,
        Optional<String> answered) {
    /** What has been said, by whom. */
    public Map<String, Laterality> said() {
        Map<String, Laterality> said = new LinkedHashMap<>();
        order.ifPresent(side -> said.put("order", side));
        inCase.ifPresent(side -> said.put("case", side));
        image.ifPresent(side -> said.put("image", side));
        return said;
    }

    public boolean disagrees() {
        return said().values().stream().distinct().count() > 1;
    }

    /** A person must answer before the record can be signed. */
    public boolean open() {
        return disagrees() && answered.filter(text -> !text.isBlank()).isEmpty();
    }
}
