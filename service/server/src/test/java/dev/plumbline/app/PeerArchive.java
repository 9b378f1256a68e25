// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.ObjectComparison;
import dev.plumbline.dicom.Tag;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** What lies in the folder of dcmqrscp, and in ours, by SOP Instance UID. */
record PeerArchive(Map<String, List<Path>> files) {
    static PeerArchive in(Path folder) throws IOException {
        Map<String, List<Path>> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile)
                    .filter(path -> path.getFileName().toString().endsWith(".dcm")
                            || !path.getFileName().toString().startsWith("index"))
                    .toList()) {
                String uid = DicomFile.open(file)
                        .header()
                        .string(Tag.SOP_INSTANCE_UID)
                        .orElseThrow();
                files.merge(
                        uid,
                        List.of(file),
                        (one, other) ->
                                Stream.concat(one.stream(), other.stream()).toList());
            }
        }
        return new PeerArchive(files);
    }

    /** What is wrong with an object that must be here once and say the same as ours. */
    String complaint(String uid, PeerArchive ours) throws IOException {
        List<Path> here = files.getOrDefault(uid, List.of());
        if (here.size() != 1) {
            return uid + " is there " + here.size() + " times";
        }
        List<String> differences = ObjectComparison.differences(
                DicomFile.open(here.get(0)),
                DicomFile.open(ours.files().get(uid).get(0)));
        return differences.isEmpty() ? "" : uid + " differs in " + differences;
    }
}
