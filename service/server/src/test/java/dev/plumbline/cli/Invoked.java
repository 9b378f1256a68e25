// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.plumbline.config.BedsideFiles;
import dev.plumbline.dicom.Installation;
import dev.plumbline.dicom.RecordComposer;
import dev.plumbline.procedure.SightDetail;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;

/** One command as it ended: its exit code and what it wrote. */
record Invoked(int code, String out, String err) {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-01-05T09:30:00Z"), ZoneOffset.ofHours(1));
    private static final Installation INSTALLATION = new Installation(
            "2.25.329800735698586629295641978511506172918",
            "test",
            "Plumbline",
            "0001",
            "0.0-test",
            "",
            "GB",
            SightDetail.SUMMARY);

    static Invoked plumbline(Object... arguments) {
        return reading("", arguments);
    }

    /** With something on standard input. */
    static Invoked reading(String in, Object... arguments) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        Plumbline.Streams streams =
                new Plumbline.Streams(new ByteArrayInputStream(in.getBytes(StandardCharsets.UTF_8)), bytes);
        Plumbline.Collaborators with = new Plumbline.Collaborators(
                "0.0-test",
                new RecordComposer(INSTALLATION),
                BedsideFiles.shipped(),
                CLOCK,
                config -> {
                    throw new IllegalStateException("secret inside");
                },
                streams);
        Plumbline plumbline = new Plumbline(with, new PrintWriter(out), new PrintWriter(err));
        int code = plumbline.run(Arrays.stream(arguments).map(String::valueOf).toArray(String[]::new));
        return new Invoked(code, out + bytes.toString(StandardCharsets.UTF_8), err.toString());
    }

    /** The one JSON document on stdout; anything else there is a failure. */
    JsonNode json() throws IOException {
        return new ObjectMapper()
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .readTree(out);
    }
}
