// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** The data files of the module {@code sr-templates}. */
final class TemplateFiles {
    private static final String FOLDER = "/dev/plumbline/templates/";
    private static final JsonMapper JSON = new JsonMapper();

    private TemplateFiles() {}

    static JsonNode json(String name) {
        try (InputStream in = TemplateFiles.class.getResourceAsStream(FOLDER + name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing from the build.");
            }
            return JSON.readTree(in);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
