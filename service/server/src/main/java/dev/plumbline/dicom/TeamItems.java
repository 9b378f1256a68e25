// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;

/**
 * Members of PL1 TEAM as the case lists them. Each has the identifier of its entry, by which members are told from the
 * operator and from who signs.
 */
final class TeamItems {
    private static final Code TEAM = Codes.own("TEAM");
    private static final Code NAME = Codes.dcm("113870");
    private static final Code ENTRY_ID = Codes.own("ENTRY-ID");
    private static final List<FieldItem> FIELDS = List.of(
            FieldItem.word("role", Relation.HAS_PROPERTIES, Codes.dcm("113875"), "roles"),
            FieldItem.text("grade", Relation.HAS_PROPERTIES, Codes.dcm("113874")),
            FieldItem.word("supervision", Relation.HAS_PROPERTIES, Codes.own("SUPERVISION"), "supervision"),
            FieldItem.text("id", Relation.HAS_PROPERTIES, ENTRY_ID));

    private TeamItems() {}

    static List<ContentItem> members(JsonNode team) {
        List<ContentItem> members = new ArrayList<>();
        team.forEach(member -> members.add(
                ContentItem.person(Relation.CONTAINS, NAME, member.get("name").asText())
                        .with(FieldItem.write(FIELDS, member))));
        return members;
    }

    static boolean isMember(ContentItem person) {
        return person.first(ENTRY_ID).isPresent();
    }

    static void read(ContentItem details, ObjectNode json) {
        List<ContentItem> members = details.named(TEAM)
                .flatMap(team -> team.named(NAME))
                .filter(TeamItems::isMember)
                .toList();
        if (members.isEmpty()) {
            return;
        }
        ArrayNode team = json.putArray("team");
        for (ContentItem item : members) {
            ObjectNode member = team.addObject();
            if (item.value() instanceof ItemValue.Person person) {
                member.put("name", person.name());
            }
            FieldItem.read(FIELDS, item, member);
        }
    }
}
