// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import org.junit.jupiter.api.Test;

class TemplateListTest {
    @Test
    void thePageSaysWhatTheDataFilesSay() throws IOException {
        assertThat(Files.readString(TemplateList.PAGE))
                .as("run %s.main in service/server after a change of the data files", TemplateList.class.getName())
                .isEqualTo(TemplateList.markdown());
    }
}
