// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.config;

import dev.plumbline.problem.Refusal;
import java.time.Clock;
import java.util.Optional;
import java.util.function.Supplier;
import javax.net.ssl.SSLContext;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The TLS files of one connection as they are now: looked at for each new association or request, and taken where their
 * content changed and can be used, so that a renewed certificate needs no restart. Files that cannot be used change nothing:
 * the ones before stay in use, and somebody is told.
 */
public final class RenewableTls implements Supplier<SSLContext> {
    private static final Logger LOG = LoggerFactory.getLogger(RenewableTls.class);

    private final String user;
    private final TlsFiles files;
    private final Clock clock;
    private String content;
    private SSLContext context;
    private Optional<Broken> broken = Optional.empty();

    /** Files that cannot be used, and why not. */
    private record Broken(String content, String words) {}

    /**
     * Reads them.
     *
     * @param user the door or the peer that they are used for, in words
     * @throws Refusal where they cannot be used
     */
    public RenewableTls(String user, TlsFiles files, Clock clock) {
        this.user = user;
        this.files = files;
        this.clock = clock;
        this.content = files.content(); // before the context: what changes in between is seen the next time
        this.context = files.context();
    }

    @Override
    public synchronized SSLContext get() {
        String now = files.content();
        if (now.equals(content)) {
            broken = Optional.empty();
        } else {
            renew(now);
        }
        return context;
    }

    /** What somebody has to be told, if there is anything. */
    public synchronized Optional<String> warning() {
        get();
        return broken.map(Broken::words);
    }

    private void renew(String now) {
        try {
            SSLContext renewed = files.context();
            files.requireValidAt(clock.instant());
            context = renewed;
            content = now;
            broken = Optional.empty();
            LOG.info("The renewed TLS files of {} are in use.", user);
        } catch (Refusal refusal) {
            String words =
                    "The TLS files of " + user + " were changed and cannot be used; the ones before stay in use. "
                            + refusal.problem().detail();
            if (broken.filter(before -> before.content().equals(now)).isEmpty()) {
                LOG.warn(words);
            }
            broken = Optional.of(new Broken(now, words));
        }
    }
}
