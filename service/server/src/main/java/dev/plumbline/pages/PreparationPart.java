// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import dev.plumbline.agents.Drug;
import dev.plumbline.procedure.SetUpChecks;
import dev.plumbline.record.SiteRules;
import java.util.List;

/** What is entered before and after the needle: checks, agents, team, and what happens rarely. */
record PreparationPart(SiteRules site) {
    void write(Html html) {
        checks(html);
        agents(html);
        team(html);
        other(html);
        html.open("section", "aria-labelledby", "missing-title")
                .element("h2", "Not recorded yet", "id", "missing-title");
        html.element("p", "", "id", "missing-words");
        html.open("ul", "id", "missing", "class", "plain").end();
        html.element(
                "a", "Marks, record and signature of this case", "id", "to-mark", "class", "action", "href", "mark");
        html.end();
    }

    private void checks(Html html) {
        html.open("section", "aria-labelledby", "checks-title").element("h2", "Set-up checks", "id", "checks-title");
        html.open("ul", "id", "checks", "class", "checks");
        for (SetUpChecks.Check check : site.checks().checks()) {
            String id = "check-" + check.id();
            html.open("li", "data-check", check.id());
            html.element("p", check.text(), "id", id);
            html.element("p", "not recorded", "class", "answer");
            html.open("div", "class", "touch small", "role", "group", "aria-labelledby", id);
            for (SetUpChecks.Answer answer : SetUpChecks.Answer.values()) {
                html.element(
                        "button",
                        Wording.spelledOut(answer.word()),
                        "type",
                        "button",
                        "class",
                        "big",
                        "data-answer",
                        answer.word(),
                        "aria-pressed",
                        "false");
            }
            html.end();
            html.open("div", "class", "why", "hidden", "");
            html.element("label", "Why not done", "for", id + "-why");
            html.empty("input", "type", "text", "id", id + "-why", "maxlength", "1024", "autocomplete", "off");
            html.element("button", "Enter: not done", "type", "button", "class", "big", "data-because", "");
            html.end().end();
        }
        html.end().end();
    }

    private void agents(Html html) {
        html.open("form", "id", "agent", "aria-labelledby", "agent-title");
        html.element("h2", "Agents", "id", "agent-title");
        html.open("div", "class", "fields");
        Fields.select(html, "agent-of", "Entry", new String[][] {{"", "a new agent"}});
        List<Drug> drugs = site.drugs().drugs();
        String[][] names = new String[drugs.size() + 1][];
        names[0] = new String[] {"", "choose"};
        for (int i = 1; i < names.length; i++) {
            names[i] = new String[] {
                drugs.get(i - 1).id(), Wording.spelledOut(drugs.get(i - 1).id())
            };
        }
        Fields.select(html, "agent-drug", "Drug", names);
        Fields.number(html, "agent-strength", "Concentration, as the label prints it", "0", "any");
        Fields.select(html, "agent-unit", "Unit of the concentration", new String[][] {
            {"percent", "%"}, {"mgPerMl", "mg/mL"}, {"microgramsPerMl", "micrograms/mL"}, {"oneIn", "1 in ..."}
        });
        Fields.select(
                html, "agent-basis", "Stated as", new String[][] {{"", "not stated"}, {"salt", "salt"}, {"base", "base"}
                });
        Fields.select(html, "agent-route", "Route", new String[][] {
            {"", "not stated"},
            {"perineural", "perineural"},
            {"fascialPlane", "fascial plane"},
            {"infiltration", "infiltration"}
        });
        for (String stage : List.of("planned", "drawnUp", "given", "discarded")) {
            Fields.number(html, "agent-" + stage, "Volume " + Wording.spelledOut(stage) + ", mL", "0", "0.1");
        }
        html.end();
        html.element("button", "Enter the agent", "type", "submit", "class", "big main");
        html.open("ul", "id", "agents", "class", "plain").end();
        html.end();
    }

    private static void team(Html html) {
        html.open("form", "id", "member", "aria-labelledby", "team-title").element("h2", "Team", "id", "team-title");
        html.open("div", "class", "fields");
        Fields.text(html, "member-name", "Name, as in Doe^Jo");
        Fields.text(html, "member-role", "Role, such as assistant");
        html.end();
        html.element("button", "Enter the person", "type", "submit", "class", "big main");
        html.open("ul", "id", "team", "class", "plain").end();
        html.end();
    }

    private static void other(Html html) {
        html.open("form", "id", "rare", "aria-labelledby", "rare-title");
        html.element("h2", "Other entries", "id", "rare-title");
        html.open("div", "class", "fields");
        Fields.select(html, "rare-kind", "What", new String[][] {
            {"complication", "complication"},
            {"doppler", "colour Doppler"},
            {"planChanged", "plan changed"},
            {"contextChanged", "changed since the stop moment"},
            {"handOver", "handed over"},
            {"nearMiss", "what nearly happened"}
        });
        html.open("div", "id", "rare-text-field");
        html.element("label", "Which complication", "for", "rare-text", "id", "rare-label");
        html.empty("input", "type", "text", "id", "rare-text", "maxlength", "1024", "autocomplete", "off");
        html.end();
        Fields.select(html, "rare-what", "What changed", new String[][] {
            {"position", "position"}, {"block", "block"}, {"side", "side"}
        });
        html.end();
        html.element("button", "Enter", "type", "submit", "class", "big main");
        html.end();
    }
}
