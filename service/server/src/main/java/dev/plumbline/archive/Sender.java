// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import java.util.Optional;

/**
 * Who adds an object to the archive.
 *
 * @param key under which what came from it is counted
 * @param name for people; empty for the service itself
 */
public record Sender(String key, Optional<String> name) {
    /** The service, which keeps what it composed. */
    static final Sender OURSELVES = new Sender("", Optional.empty());

    /** Everybody who sends over HTTP: nothing tells one from the other there. */
    public static final Sender HTTP = new Sender("http", Optional.of("HTTP"));

    /** Who calls by associations under an AE title. */
    public static Sender peer(String aeTitle) {
        return new Sender("ae " + aeTitle, Optional.of(aeTitle));
    }
}
