// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Composed objects read again, through the gate. */
final class DataSets {
    private DataSets() {}

    static DataSet of(List<ComposedObject> objects, String part) {
        return of(bytes(objects, part));
    }

    static byte[] bytes(List<ComposedObject> objects, String part) {
        return objects.stream()
                .filter(object -> object.part().equals(part))
                .findFirst()
                .orElseThrow()
                .bytes();
    }

    static DataSet of(byte[] bytes) {
        try {
            Path file = Files.createTempFile("object", ".dcm");
            Files.write(file, bytes);
            DataSet header = DicomFile.open(file).header();
            Files.delete(file);
            return header;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
