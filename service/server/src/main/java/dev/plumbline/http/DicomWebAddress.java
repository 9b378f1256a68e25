// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.HeldObject.Identity;
import dev.plumbline.archive.WireUid;
import io.javalin.http.Context;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Addresses of the archive: read from a request with every UID checked, and written relative to the request (RFC 3986
 * 4.2), so that they hold behind a proxy that moves the root.
 */
final class DicomWebAddress {
    static final String ROOT = "/dicomweb";

    private DicomWebAddress() {}

    static String study(Context ctx) {
        return WireUid.require(ctx.pathParam("study"), "The study in the address");
    }

    /** The series in the address, where the route has one. */
    static Optional<String> series(Context ctx) {
        return Optional.ofNullable(ctx.pathParamMap().get("series"))
                .map(uid -> WireUid.require(uid, "The series in the address"));
    }

    static String instance(Context ctx) {
        return WireUid.require(ctx.pathParam("instance"), "The instance in the address");
    }

    /** Segments below the root. */
    static List<String> study(Identity of) {
        return List.of("studies", of.studyInstanceUid());
    }

    static List<String> series(Identity of) {
        return Stream.concat(study(of).stream(), Stream.of("series", of.seriesInstanceUid()))
                .toList();
    }

    static List<String> instance(Identity of) {
        return Stream.concat(series(of).stream(), Stream.of("instances", of.sopInstanceUid()))
                .toList();
    }

    static List<String> bulk(Identity of) {
        return Stream.concat(instance(of).stream(), Stream.of("bulkdata")).toList();
    }

    /** The shortest relative reference from the request to a place below the root. */
    static String relative(Context ctx, List<String> target) {
        String below = ctx.path().substring(ctx.path().indexOf(ROOT) + ROOT.length() + 1);
        List<String> request = Arrays.asList(below.split("/"));
        List<String> folder = request.subList(0, request.size() - 1);
        int common = 0;
        while (common < Math.min(folder.size(), target.size() - 1)
                && folder.get(common).equals(target.get(common))) {
            common++;
        }
        List<String> up = Collections.nCopies(folder.size() - common, "..");
        return String.join(
                "/",
                Stream.concat(up.stream(), target.subList(common, target.size()).stream())
                        .toList());
    }
}
