// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import dev.plumbline.procedure.BlockList;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.procedure.Pain;
import dev.plumbline.procedure.Resistance;
import dev.plumbline.procedure.Spread;
import dev.plumbline.sight.StopSign;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;

/** What the assistant enters while the block is done: one touch where one is enough. */
record EntriesPart(BlockList blocks) {

    void write(Html html) {
        stopMoment(html);
        needle(html);
        stop(html);
        aliquot(html);
    }

    private static void needle(Html html) {
        html.open("section", "aria-labelledby", "needle-title").element("h2", "Needle", "id", "needle-title");
        html.open("div", "class", "touch", "id", "one-touch");
        one(html, "puncture", "", "Puncture");
        one(html, "aspiration", "no", "Aspiration: no blood");
        one(html, "aspiration", "yes", "Aspiration: blood");
        one(html, "redirection", "", "Redirection");
        one(html, "pass", "", "New pass");
        one(html, "needleOut", "", "Needle out");
        one(html, "complicationsLookedFor", "", "Looked for complications: none noticed so far");
        html.end();
        html.open("div", "class", "fields");
        Fields.number(html, "site", "Puncture site, where there are several", "1", "1");
        html.end();
        html.end();
    }

    private static void one(Html html, String kind, String blood, String text) {
        html.element("button", text, "type", "button", "class", "big", "data-kind", kind, "data-blood", blood);
    }

    private static void stop(Html html) {
        html.open("section", "aria-labelledby", "stop-title", "class", "stops");
        html.element("h2", "Stop: what is there?", "id", "stop-title");
        html.open("div", "class", "touch", "id", "signs");
        for (StopSign sign : StopSign.values()) {
            html.element("button", words(sign), "type", "button", "class", "big", "data-sign", sign.word());
        }
        html.end().end();
    }

    private static void aliquot(Html html) {
        html.open("form", "id", "aliquot", "aria-labelledby", "aliquot-title");
        html.element("h2", "Aliquot", "id", "aliquot-title");
        html.open("div", "class", "fields");
        Fields.select(html, "aliquot-agent", "What", new String[][] {{"", "choose"}, {"other", "another fluid"}});
        html.open("div", "id", "fluid-field", "hidden", "").element("label", "Fluid", "for", "aliquot-fluid");
        html.empty("input", "type", "text", "id", "aliquot-fluid", "maxlength", "64", "autocomplete", "off");
        html.end();
        Fields.number(html, "aliquot-volume", "Volume, mL", "0.1", "0.1");
        html.end();
        html.open("div", "class", "touch small", "role", "group", "aria-label", "Volume");
        for (String ml : List.of("1", "2", "3", "5")) {
            html.element("button", ml + " mL", "type", "button", "class", "big", "data-volume", ml);
        }
        html.end();
        choice(html, "spread", "Spread", Spread.values(), Spread::word);
        choice(html, "resistance", "Resistance", Resistance.Word.values(), Resistance.Word::word);
        choice(html, "pain", "Pain", Pain.values(), Pain::word);
        Fields.check(html, "hydrolocation", "Hydrolocation");
        html.element("button", "Enter the aliquot", "type", "submit", "class", "big main");
        html.end();
    }

    private void stopMoment(Html html) {
        html.open("details", "id", "stop-moment-box", "class", "box");
        html.element("summary", "Stop moment, spoken by two", "class", "big", "id", "stop-moment-title");
        html.open("form", "id", "stop-moment", "aria-labelledby", "stop-moment-title");
        html.open("div", "class", "fields");
        Fields.text(html, "stop-name-1", "First name, as in Doe^Jo");
        Fields.text(html, "stop-name-2", "Second name, as in Roe^Al");
        String[][] names = new String[blocks.blocks().size() + 1][];
        names[0] = new String[] {"", "choose as spoken"};
        for (int i = 1; i < names.length; i++) {
            BlockList.Block block = blocks.blocks().get(i - 1);
            names[i] = new String[] {block.id(), block.name()};
        }
        Fields.select(html, "stop-block", "Block, as spoken", names);
        html.end();
        choice(html, "stop-side", "Patient's side, as spoken", Laterality.values(), Laterality::word);
        html.open("div", "class", "ticks");
        Fields.check(html, "mark-seen", "Mark on the skin seen");
        Fields.check(html, "consent-seen", "Consent seen");
        html.end();
        html.element("button", "Stop moment spoken", "type", "submit", "class", "big main");
        html.end().end();
    }

    /** One of several words, or none said. */
    private static <T> void choice(Html html, String name, String legend, T[] values, Function<T, String> word) {
        html.open("fieldset", "class", "choice").element("legend", legend);
        html.open("div");
        Arrays.stream(values).map(word).forEach(each -> {
            html.open("label", "class", "big");
            html.empty("input", "type", "radio", "name", name, "value", each);
            html.element("span", Wording.spelledOut(each)).end();
        });
        html.end().end();
    }

    private static String words(StopSign each) {
        return switch (each) {
            case TOXICITY -> "Sign of toxicity";
            case BLOOD -> "Blood";
            case NERVE_SWELLS -> "Nerve swells";
            case PAIN -> "Pain, paraesthesia or withdrawal";
            case FIRM_RESISTANCE -> "Firm resistance";
            case NO_SPREAD -> "No spread seen";
            case PATIENT_MOVES -> "Patient moves";
            case PAST_LEAD_IN -> "Past the lead-in, nothing seen";
            case TIP_LOST -> "Tip lost";
        };
    }
}
