// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import java.net.http.HttpHeaders;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** How long an HTTP service asks to be left alone, in seconds or until a date. Source: RFC 9110, 10.2.3 and 5.6.7. */
final class RetryAfter {
    private static final Pattern SECONDS = Pattern.compile("\\d{1,9}");

    /** The form of today, and the two of old that have to be understood; all of them in GMT. */
    private static final List<DateTimeFormatter> DATES = List.of(
            DateTimeFormatter.ofPattern("EEE, d MMM uuuu HH:mm:ss 'GMT'", Locale.ENGLISH),
            DateTimeFormatter.ofPattern("EEEE, d-MMM-uu HH:mm:ss 'GMT'", Locale.ENGLISH),
            DateTimeFormatter.ofPattern("EEE MMM ppd HH:mm:ss uuuu", Locale.ENGLISH));

    private RetryAfter() {}

    /**
     * What is asked for; empty where nothing is, or nothing that can be understood, or a time that has passed.
     *
     * @param now counts where the answer has no date of its own: two clocks may differ, the service's own does not
     */
    static Optional<Duration> of(HttpHeaders headers, Instant now) {
        return headers.firstValue("Retry-After").map(String::strip).flatMap(text -> {
            if (SECONDS.matcher(text).matches()) {
                return Optional.of(Duration.ofSeconds(Long.parseLong(text)));
            }
            Instant answered =
                    headers.firstValue("Date").flatMap(RetryAfter::date).orElse(now);
            return date(text).map(until -> Duration.between(answered, until)).filter(wait -> !wait.isNegative());
        });
    }

    private static Optional<Instant> date(String text) {
        return DATES.stream().flatMap(form -> date(text, form).stream()).findFirst();
    }

    private static Optional<Instant> date(String text, DateTimeFormatter form) {
        try {
            return Optional.of(form.withZone(ZoneOffset.UTC).parse(text.strip(), Instant::from));
        } catch (DateTimeException e) {
            return Optional.empty(); // it may be in the next form
        }
    }
}
