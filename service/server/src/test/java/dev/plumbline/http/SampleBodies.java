// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.dicom.SampleCases;
import dev.plumbline.dicom.SampleObjects;
import dev.plumbline.document.CaseJson;
import dev.plumbline.samples.SampleSet;

/** What clients send in the tests: the frames of the in-plane sample case, and the case itself. */
final class SampleBodies {
    private static final SampleSet SET = new SampleSet(1);
    private static final SampleObjects OBJECTS = new SampleObjects(SET);

    static final byte[] PLANNED_FRAME = OBJECTS.file(SET.inPlanePlan());
    static final byte[] NEEDLE_FRAME = OBJECTS.file(SET.inPlaneNeedle());
    static final String PLANNED_UID = OBJECTS.sopInstanceUid(SET.inPlanePlan());

    /** Signed. */
    static final String CASE = CaseJson.write(SampleCases.held(SET).inPlane()).toString();

    /** Nothing decided, not signed. */
    static final String DRAFT =
            CaseJson.write(SampleCases.held(SET).inPlaneProposal()).toString();

    private SampleBodies() {}
}
