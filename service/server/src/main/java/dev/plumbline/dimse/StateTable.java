// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.StringTokenizer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The upper layer's state table. Source: DICOM PS3.8, 9.2.3, table 9-10: one line for each event, with the action and the
 * next state in every state where the event may happen. Where the standard leaves the next state to the action (AE-6,
 * AR-8) the first of the two stands here and the driver says which it is.
 */
final class StateTable {
    private static final String TABLE = """
            1  1:AE-1:4
            2  4:AE-2:5
            3  2:AA-1:13 3:AA-8:13 5:AE-3:6 6-12:AA-8:13 13:AA-6:13
            4  2:AA-1:13 3:AA-8:13 5:AE-4:1 6-12:AA-8:13 13:AA-6:13
            5  1:AE-5:2
            6  2:AE-6:3 3:AA-8:13 5-12:AA-8:13 13:AA-7:13
            7  3:AE-7:6
            8  3:AE-8:13
            9  6:DT-1:6 8:AR-7:8
            10 2:AA-1:13 3:AA-8:13 5:AA-8:13 6:DT-2:6 7:AR-6:7 8-12:AA-8:13 13:AA-6:13
            11 6:AR-1:7
            12 2:AA-1:13 3:AA-8:13 5:AA-8:13 6:AR-2:8 7:AR-8:9 8-12:AA-8:13 13:AA-6:13
            13 2:AA-1:13 3:AA-8:13 5-6:AA-8:13 7:AR-3:1 8-9:AA-8:13 10:AR-10:12 11:AR-3:1 12:AA-8:13 13:AA-6:13
            14 8:AR-4:13 9:AR-9:11 12:AR-4:13
            15 3:AA-1:13 4:AA-2:1 5-12:AA-1:13
            16 2:AA-2:1 3:AA-3:1 5-12:AA-3:1 13:AA-2:1
            17 2:AA-5:1 3-12:AA-4:1 13:AR-5:1
            18 2:AA-2:1 13:AA-2:1
            19 2:AA-1:13 3:AA-8:13 5-12:AA-8:13 13:AA-7:13
            """;

    /** State or range of states, action, next state. */
    private static final Pattern CELL =
            Pattern.compile("(?<first>\\d+)(-(?<last>\\d+))?:(?<action>[A-Z]{2}-\\d+):(?<next>\\d+)");

    private static final Map<Event, Map<State, Transition>> ROWS = rows();

    private StateTable() {}

    /** What is done, and where that leads. */
    record Transition(Action action, State next) {}

    /** Empty where the event cannot happen in the state. */
    static Optional<Transition> of(State state, Event event) {
        return Optional.ofNullable(ROWS.getOrDefault(event, Map.of()).get(state));
    }

    private static Map<Event, Map<State, Transition>> rows() {
        Map<Event, Map<State, Transition>> rows = new EnumMap<>(Event.class);
        TABLE.lines().forEach(line -> {
            StringTokenizer words = new StringTokenizer(line);
            Event event = Event.of(Integer.parseInt(words.nextToken()));
            Map<State, Transition> row = new EnumMap<>(State.class);
            while (words.hasMoreTokens()) {
                cell(words.nextToken(), row);
            }
            rows.put(event, row);
        });
        return rows;
    }

    private static void cell(String text, Map<State, Transition> row) {
        Matcher cell = CELL.matcher(text);
        if (!cell.matches()) {
            throw new IllegalStateException(text + " is no cell of the table.");
        }
        Transition transition =
                new Transition(Action.valueOf(cell.group("action").replace('-', '_')), state(cell.group("next")));
        String last = Optional.ofNullable(cell.group("last")).orElse(cell.group("first"));
        for (int number = Integer.parseInt(cell.group("first")); number <= Integer.parseInt(last); number++) {
            row.put(state(Integer.toString(number)), transition);
        }
    }

    private static State state(String number) {
        return State.valueOf("STA" + number);
    }
}
