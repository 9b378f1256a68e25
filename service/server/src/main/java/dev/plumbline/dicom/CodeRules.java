// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Coded;
import dev.plumbline.dicom.ItemValue.Numeric;
import java.util.stream.Stream;

/** Every code that the master file knows has its one meaning there, and fits SH and LO. */
final class CodeRules {
    private static final int LONGEST_VALUE = 16;
    private static final int LONGEST_MEANING = 64;

    private final Findings findings;

    CodeRules(Findings findings) {
        this.findings = findings;
    }

    void check(ContentItem root) {
        root.walk().forEach(item -> codes(item).forEach(code -> check(item, code)));
    }

    /** Name, value, unit and qualifier. */
    static Stream<Code> codes(ContentItem item) {
        Stream<Code> value = Stream.of();
        if (item.value() instanceof Coded coded) {
            value = Stream.of(coded.code());
        } else if (item.value() instanceof Numeric numeric) {
            value = Stream.concat(
                    numeric.measured().map(ItemValue.Measured::unit).stream(), numeric.qualifier().stream());
        }
        return Stream.concat(item.name().stream(), value);
    }

    private void check(ContentItem item, Code code) {
        if (code.value().length() > LONGEST_VALUE || code.meaning().length() > LONGEST_MEANING) {
            findings.at(item, code + " is longer than 16 characters, or its meaning than 64");
        }
        boolean ours = code.scheme().equals(Codes.OWN_SCHEME);
        Codes.known(code)
                .ifPresentOrElse(
                        entry -> {
                            if (!entry.code().meaning().equals(code.meaning())) {
                                findings.at(
                                        item, code + " means \"" + entry.code().meaning() + "\"");
                            }
                        },
                        () -> {
                            if (ours) {
                                findings.at(item, code + " is not in the code master file");
                            }
                        });
    }
}
