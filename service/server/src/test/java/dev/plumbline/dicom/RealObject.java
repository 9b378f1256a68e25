// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;

/** Ultrasound objects of real scanners and decoder inputs, out of packages that the tests install. */
final class RealObject {
    private static final Path PYDICOM = Path.of("/usr/lib/python3/dist-packages/pydicom/data/test_files");

    private RealObject() {}

    /** US Image, explicit big endian, 60 x 80 RGB, one frame, without regions. */
    static Path ultrasoundImage() {
        return pydicom("ExplVR_BigEnd.dcm");
    }

    /** US Multi-frame, RLE, palette, 430 x 600, ten frames, without regions. */
    static Path ultrasoundCine() {
        return held(
                Path.of("src/test/npm/node_modules/dicomweb-client/testData/US-PAL-8-10x-echo.dcm"),
                "npm ci in service/server/src/test/npm");
    }

    static Path pydicom(String name) {
        return held(PYDICOM.resolve(name), "apt-get install python3-pydicom");
    }

    private static Path held(Path path, String remedy) {
        assertThat(Files.isRegularFile(path))
                .as(path + " is missing; ./plumbline test installs it (" + remedy + ")")
                .isTrue();
        return path;
    }
}
