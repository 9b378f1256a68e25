// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.util.List;

/** What somebody may send in place of a UID to write, read or break something else. TRUST 2.2 (path traversal). */
public final class HostileUids {
    private HostileUids() {}

    /** None of them is a UID. */
    public static List<String> all() {
        return List.of(
                "../escape1",
                "..",
                ".",
                "../../etc/passwd",
                "/etc/passwd",
                "1.2/../3",
                "1.2\\..\\3",
                "1.2/3",
                "1.2..3",
                ".1.2",
                "1.2.",
                "1.2 3",
                "1.2,x",
                "-1.2",
                "+1.2",
                "1.2e3",
                "1.2a",
                "a.b",
                "%2e%2e%2f",
                "1.2%00",
                "1.2;rm",
                "1.2|ls",
                "$(id)",
                "`id`",
                "1.2'",
                "1.2\"",
                "1.2' OR '1'='1",
                "1.2\n1.3",
                "1.2\r\nX: y",
                "1.2\t3",
                "<b>1</b>",
                "\u0661.\u0662",
                "\uff11.2",
                "1.2\u2024" + "3",
                "con",
                "nul.dcm",
                "~root",
                "1.2*",
                "?",
                "1.2.840.10008.5.1.4.1.1.7.1.2.3.4.5.6.7.8.9.10.11.12.13.14.15.16.17.18",
                "1".repeat(65),
                "1." + "2".repeat(3000));
    }
}
