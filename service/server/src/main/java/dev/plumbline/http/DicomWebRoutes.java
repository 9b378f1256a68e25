// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import dev.plumbline.archive.Archive;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import io.javalin.config.JavalinConfig;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * DICOMweb over the embedded archive: STOW-RS, QIDO-RS, WADO-RS under {@code /dicomweb}. Source: DICOM PS3.18 8.9, 10.
 *
 * <p>What is refused is thrown as a {@link dev.plumbline.problem.Refusal}; whoever mounts the routes maps it.
 */
public final class DicomWebRoutes {
    private static final String STUDY = "/studies/{study}";
    private static final String SERIES = STUDY + "/series/{series}";
    private static final String INSTANCE = SERIES + "/instances/{instance}";

    /** How a request names a study: in its address, or as a key of a search. */
    private static final List<String> STUDY_KEYS = List.of("StudyInstanceUID", "0020000D");

    private final Archive archive;
    private final DicomWebStore store;
    private final DicomWebSearch search;
    private final DicomWebRetrieve retrieve;
    private final DicomWebParts parts;
    private final DicomWebRendered rendered;

    public DicomWebRoutes(Archive archive) {
        this.archive = archive;
        this.store = new DicomWebStore(archive);
        this.search = new DicomWebSearch(archive);
        this.retrieve = new DicomWebRetrieve(archive);
        this.parts = new DicomWebParts(archive);
        this.rendered = new DicomWebRendered(archive);
    }

    public void register(JavalinConfig config) {
        RoutesConfig routes = config.routes;
        routes.post(DicomWebAddress.ROOT + "/studies", ctx -> handle(store::store, ctx));
        routes.post(DicomWebAddress.ROOT + STUDY, ctx -> handle(store::store, ctx));
        routes.options(DicomWebAddress.ROOT, DicomWebCapabilities::answer);
        routes.options(DicomWebAddress.ROOT + "/", DicomWebCapabilities::answer);
        registerSearch(routes);
        registerRetrieve(routes);
        get(routes, STUDY + "/rendered", rendered::group);
        get(routes, SERIES + "/rendered", rendered::group);
        get(routes, INSTANCE + "/rendered", rendered::instance);
        get(routes, INSTANCE + "/frames/{frames}/rendered", rendered::frames);
        get(routes, STUDY + "/thumbnail", rendered::groupThumbnail);
        get(routes, SERIES + "/thumbnail", rendered::groupThumbnail);
        get(routes, INSTANCE + "/thumbnail", rendered::thumbnail);
        get(routes, INSTANCE + "/frames/{frames}/thumbnail", rendered::frameThumbnail);
    }

    private void registerSearch(RoutesConfig routes) {
        get(routes, "/studies", search::studies);
        get(routes, "/series", search::series);
        get(routes, STUDY + "/series", search::series);
        get(routes, "/instances", search::instances);
        get(routes, STUDY + "/instances", search::instances);
        get(routes, SERIES + "/instances", search::instances);
    }

    private void registerRetrieve(RoutesConfig routes) {
        get(routes, STUDY, retrieve::study);
        get(routes, SERIES, retrieve::series);
        get(routes, INSTANCE, retrieve::instance);
        get(routes, STUDY + "/metadata", parts::studyMetadata);
        get(routes, SERIES + "/metadata", parts::seriesMetadata);
        get(routes, INSTANCE + "/metadata", parts::instanceMetadata);
        get(routes, INSTANCE + "/frames/{frames}", parts::frames);
        get(routes, INSTANCE + "/bulkdata/{place}", parts::bulk);
        // Some viewers resolve the relative address of bulk data against the study, whatever it was read from.
        get(routes, STUDY + "/instances/{instance}/bulkdata/{place}", parts::bulk);
    }

    /** A HEAD is answered as the GET would be, without its body, so also where there is nothing. Source: RFC 9110, 9.3.2. */
    private void get(RoutesConfig routes, String path, Handler handler) {
        Handler answered = ctx -> {
            ctx.header("X-Content-Type-Options", "nosniff");
            named(ctx).forEach(archive::finish);
            handle(handler, ctx);
        };
        routes.get(DicomWebAddress.ROOT + path, answered);
        routes.head(DicomWebAddress.ROOT + path, answered);
    }

    /** A value that cannot be taken is a bad request here, whatever it is elsewhere. Source: DICOM PS3.18 8.3. */
    private static void handle(Handler handler, Context ctx) throws Exception {
        try {
            handler.handle(ctx);
        } catch (Refusal refusal) {
            if (!(refusal.problem() instanceof Problem.InvalidValue)) {
                throw refusal;
            }
            ProblemJson.answer(ctx, Problems.BAD_REQUEST, refusal.problem());
        }
    }

    private static Stream<String> named(Context ctx) {
        return Stream.concat(
                Optional.ofNullable(ctx.pathParamMap().get("study")).stream(),
                STUDY_KEYS.stream().map(ctx::queryParam).filter(Objects::nonNull));
    }
}
