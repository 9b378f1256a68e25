// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.app;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.dicom.SampleCases;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.document.CaseJson;
import dev.plumbline.samples.SampleSet;
import java.io.IOException;

/** The in-plane sample case as clients send it, under as many names as are needed. */
final class SampleWork {
    private static final SampleSet SET = new SampleSet(1);
    private static final SampleObjects OBJECTS = new SampleObjects(SET);

    static final String PLANNED_UID = OBJECTS.sopInstanceUid(SET.inPlanePlan());

    private SampleWork() {}

    /** Sends both frames. */
    static void frames(ServiceProcess service) throws IOException, InterruptedException {
        for (byte[] file : new byte[][] {OBJECTS.file(SET.inPlanePlan()), OBJECTS.file(SET.inPlaneNeedle())}) {
            int status = service.postDicom(file).status();
            if (status != 201 && status != 200) {
                throw new IOException("The frame was answered with " + status);
            }
        }
    }

    /** Signed, without a name. */
    static ObjectNode signed() {
        return CaseJson.write(SampleCases.held(SET).inPlane());
    }

    static String signed(String caseId) {
        return signed().put("caseId", caseId).toString();
    }
}
