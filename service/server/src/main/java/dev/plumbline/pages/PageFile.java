// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.pages;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/** The files that pages are made of besides their HTML; nothing else can be asked for. */
public enum PageFile {
    STYLE("pages.css", "text/css"),
    ICON("mark.svg", "image/svg+xml"),
    DIM("dim.js", "text/javascript"),
    SERVICE("service.js", "text/javascript"),
    PATIENT("patient.js", "text/javascript"),
    MARK("mark.js", "text/javascript"),
    MARKED_CASE("marked-case.js", "text/javascript"),
    KEEPING("keeping.js", "text/javascript"),
    STAGE("stage.js", "text/javascript"),
    DRAWING("drawing.js", "text/javascript"),
    SVG("svg.js", "text/javascript"),
    TURNING("turning.js", "text/javascript"),
    LIVE("live.js", "text/javascript"),
    DESK("desk.js", "text/javascript"),
    MARKS("marks.js", "text/javascript"),
    ANSWER("answer.js", "text/javascript"),
    FIELDS("fields.js", "text/javascript"),
    FRAMES("frames.js", "text/javascript"),
    SIGNING("signing.js", "text/javascript"),
    WORDS("words.js", "text/javascript"),
    LOG("log.js", "text/javascript"),
    OUTBOX("outbox.js", "text/javascript"),
    ENTRIES("entries.js", "text/javascript"),
    PREPARATION("preparation.js", "text/javascript"),
    BEDSIDE("bedside.js", "text/javascript");

    private final String fileName;
    private final String mediaType;
    private final String content;

    PageFile(String fileName, String mediaType) {
        this.fileName = fileName;
        this.mediaType = mediaType;
        this.content = read(fileName);
    }

    /** By its name in an address; empty where there is no such file. */
    public static Optional<PageFile> named(String name) {
        return Arrays.stream(values())
                .filter(file -> file.fileName.equals(name))
                .findFirst();
    }

    /** With the character set of text. */
    public String mediaType() {
        return mediaType + "; charset=utf-8";
    }

    public String content() {
        return content;
    }

    private static String read(String name) {
        try (InputStream in = PageFile.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the build.");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
