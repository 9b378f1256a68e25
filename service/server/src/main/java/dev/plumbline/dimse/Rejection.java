// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.Arrays;
import java.util.Optional;

/** Why an association is rejected: result, source and reason of A-ASSOCIATE-RJ. Source: DICOM PS3.8, table 9-21. */
public enum Rejection {
    NO_REASON(1, 1, 1, "no reason given"),
    APPLICATION_CONTEXT_NOT_SUPPORTED(1, 1, 2, "application context name not supported"),
    CALLING_AE_TITLE_NOT_RECOGNISED(1, 1, 3, "calling AE title not recognised"),
    CALLED_AE_TITLE_NOT_RECOGNISED(1, 1, 7, "called AE title not recognised"),
    PROTOCOL_VERSION_NOT_SUPPORTED(1, 2, 2, "protocol version not supported"),
    PROVIDER_NO_REASON(1, 2, 1, "no reason given by the peer's service provider"),
    TEMPORARY_CONGESTION(2, 3, 1, "temporary congestion"),
    LOCAL_LIMIT_EXCEEDED(2, 3, 2, "local limit exceeded");

    private final int result;
    private final int source;
    private final int reason;
    private final String words;

    Rejection(int result, int source, int reason, String words) {
        this.result = result;
        this.source = source;
        this.reason = reason;
        this.words = words;
    }

    /** Result 2: asking again later may be answered otherwise. */
    public boolean isTransient() {
        return result == 2;
    }

    int result() {
        return result;
    }

    int source() {
        return source;
    }

    int reason() {
        return reason;
    }

    /** The standard's words. */
    public String words() {
        return words;
    }

    /** The known one with these numbers; of unknown reasons only whether they are transient counts. */
    static Rejection of(int result, int source, int reason) {
        Optional<Rejection> known = Arrays.stream(values())
                .filter(r -> r.result == result && r.source == source && r.reason == reason)
                .findFirst();
        return known.orElse(result == 2 ? TEMPORARY_CONGESTION : NO_REASON);
    }
}
