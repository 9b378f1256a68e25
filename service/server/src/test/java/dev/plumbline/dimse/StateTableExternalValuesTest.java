// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The state table against an independent copy of PS3.8, table 9-10. */
class StateTableExternalValuesTest {
    @Test
    void everyCellIsTheStandards() throws IOException {
        List<String> cells = new ArrayList<>();
        for (String line : lines()) {
            String[] columns = line.split(",", -1);
            Event event = Event.of(Integer.parseInt(columns[0].substring(3)));
            for (int state = 1; state < columns.length; state++) {
                String found = StateTable.of(State.values()[state - 1], event)
                        .map(transition -> transition.action().title())
                        .orElse("");
                assertThat(found).as(columns[0] + " in Sta" + state).isEqualTo(columns[state]);
                cells.add(found);
            }
        }
        assertThat(cells).hasSize(19 * 13);
    }

    @Test
    void everyActionLeadsToTheStateThatTheStandardNames() {
        // PS3.8, tables 9-6 to 9-9, column "next state"
        for (State state : State.values()) {
            for (Event event : Event.values()) {
                StateTable.of(state, event)
                        .ifPresent(transition -> assertThat(transition.next())
                                .as(event + " in " + state)
                                .isEqualTo(next(transition.action())));
            }
        }
    }

    private static State next(Action action) {
        return switch (action) {
            case AE_1 -> State.STA4;
            case AE_2 -> State.STA5;
            case AE_3, AE_7, DT_1, DT_2 -> State.STA6;
            case AE_5 -> State.STA2;
            case AE_6 -> State.STA3;
            case AE_4, AR_3, AR_5, AA_2, AA_3, AA_4, AA_5 -> State.STA1;
            case AE_8, AR_4, AA_1, AA_6, AA_7, AA_8 -> State.STA13;
            case AR_1, AR_6 -> State.STA7;
            case AR_2, AR_7 -> State.STA8;
            case AR_8 -> State.STA9;
            case AR_9 -> State.STA11;
            case AR_10 -> State.STA12;
        };
    }

    private static List<String> lines() throws IOException {
        try (InputStream in =
                StateTableExternalValuesTest.class.getResourceAsStream("/external/ps3.8-table-9-10.csv")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return text.lines().filter(line -> line.startsWith("Evt")).toList();
        }
    }
}
