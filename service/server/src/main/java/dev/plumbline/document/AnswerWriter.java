// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;

/** An answer being written as it goes, without a tree: some hundred numbers for a case, and many cases in a batch. */
final class AnswerWriter {
    private final JsonGenerator json;

    AnswerWriter(JsonGenerator json) {
        this.json = json;
    }

    /** What the generator writes to may fail; what is written to never does here (memory), or the caller ends with it. */
    @FunctionalInterface
    interface Step {
        void write(JsonGenerator json) throws IOException;
    }

    /** Writes several things at once. */
    AnswerWriter step(Step step) {
        try {
            step.write(json);
            return this;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    AnswerWriter put(String name, String value) {
        return step(json -> json.writeStringField(name, value));
    }

    AnswerWriter put(String name, double value) {
        return step(json -> json.writeNumberField(name, value));
    }

    AnswerWriter put(String name, long value) {
        return step(json -> json.writeNumberField(name, value));
    }

    AnswerWriter put(String name, boolean value) {
        return step(json -> json.writeBooleanField(name, value));
    }

    AnswerWriter putNull(String name) {
        return step(json -> json.writeNullField(name));
    }

    AnswerWriter object(String name, Runnable fields) {
        step(json -> json.writeObjectFieldStart(name));
        fields.run();
        return step(JsonGenerator::writeEndObject);
    }

    <T> AnswerWriter words(String name, List<T> values, Function<T, String> word) {
        return array(name, values, value -> step(json -> json.writeString(word.apply(value))));
    }

    /** One object for each value. */
    <T> AnswerWriter objects(String name, List<T> values, Consumer<T> fields) {
        return array(name, values, value -> {
            step(JsonGenerator::writeStartObject);
            fields.accept(value);
            step(JsonGenerator::writeEndObject);
        });
    }

    /** An array of two for each value. */
    <T> AnswerWriter pairs(String name, List<T> values, Function<T, double[]> pair) {
        return array(name, values, value -> step(json -> json.writeArray(pair.apply(value), 0, 2)));
    }

    private <T> AnswerWriter array(String name, List<T> values, Consumer<T> item) {
        step(json -> json.writeArrayFieldStart(name));
        values.forEach(item);
        return step(JsonGenerator::writeEndArray);
    }
}
