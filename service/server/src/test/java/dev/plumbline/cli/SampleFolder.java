// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.SampleCases;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.document.CaseJson;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.samples.Sample;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A folder with the frames of the two demo cases and the case documents beside them. */
final class SampleFolder {
    final Path path;

    SampleFolder(Path path) throws IOException {
        this.path = path;
        SampleSet set = new SampleSet(1);
        SampleObjects objects = new SampleObjects(set);
        for (Sample sample :
                List.of(set.inPlanePlan(), set.inPlaneNeedle(), set.outOfPlanePlan(), set.outOfPlaneNeedle())) {
            Files.write(path.resolve(sample.name() + ".dcm"), objects.file(sample));
        }
        SampleCases cases = SampleCases.besideFiles(set);
        write("in-plane.json", cases.inPlane());
        write("proposal.json", cases.inPlaneProposal());
        write("out-of-plane.json", cases.outOfPlane());
    }

    private void write(String name, CaseDocument document) throws IOException {
        String json = CaseJson.write(document).toPrettyString();
        Files.writeString(
                path.resolve(name), json.replaceFirst("\"block\" : \"[^\"]*\"", "\"block\" : \"sciaticPopliteal\""));
    }

    /** The text of a case document. */
    String text(String name) throws IOException {
        return Files.readString(path.resolve(name));
    }

    /** A case document beside the others. */
    Path write(String name, String json) throws IOException {
        return Files.writeString(path.resolve(name), json);
    }
}
