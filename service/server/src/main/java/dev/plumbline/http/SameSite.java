// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.Set;

/**
 * Keeps pages of other sites from writing through somebody's browser. Programs that are no browser send neither header
 * and are not concerned. Source: Fetch Metadata Request Headers (W3C) 2.4; RFC 6454 7; Fetch (WHATWG) 3.1.
 */
final class SameSite {
    private static final Set<HandlerType> READING = Set.of(HandlerType.GET, HandlerType.HEAD, HandlerType.OPTIONS);
    private static final Set<String> OWN = Set.of("same-origin", "none");

    private SameSite() {}

    /**
     * Lets a request pass that only reads, or that no other site's page can have sent.
     *
     * @throws Refusal {@link Problem.CrossSite}
     */
    static void require(Context ctx) {
        if (READING.contains(ctx.method())) {
            return;
        }
        String site = ctx.header("Sec-Fetch-Site");
        String origin = ctx.header("Origin");
        boolean foreign = site == null ? origin != null && !isOwn(origin, ctx) : !OWN.contains(site);
        if (foreign) {
            throw new Refusal(new Problem.CrossSite(""));
        }
    }

    /** The scheme is left out: a proxy may end TLS in front of us. */
    private static boolean isOwn(String origin, Context ctx) {
        String host = ctx.header("Host");
        int scheme = origin.indexOf("://");
        return host != null && scheme > 0 && origin.substring(scheme + 3).equalsIgnoreCase(host);
    }
}
