// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import com.fasterxml.jackson.databind.node.ObjectNode;
import dev.plumbline.http.Problems.Row;
import dev.plumbline.problem.Problem;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/** What the server refuses on its own, such as a request that is no HTTP, in the same form as every other refusal. */
final class ServerErrors extends ErrorHandler {
    private static final int SERVER_FAULT = 500;
    private static final int VERSION_NOT_SUPPORTED = 505;

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        byte[] body = body(response.getStatus());
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, ProblemJson.MEDIA_TYPE);
        response.getHeaders().put(HttpHeader.CONTENT_LENGTH, body.length);
        response.write(true, ByteBuffer.wrap(body), callback);
        return true;
    }

    private static byte[] body(int status) {
        boolean ours = status >= SERVER_FAULT && status != VERSION_NOT_SUPPORTED;
        boolean crowded = status == HttpStatus.SERVICE_UNAVAILABLE_503;
        Row fault = crowded ? Problems.of(Problem.Unavailable.class) : Problems.OUR_FAULT;
        Row known = ours ? fault : Problems.BAD_REQUEST;
        Row row = new Row(status, known.slug(), known.title());
        ObjectNode body = crowded
                ? ProblemJson.body(
                        row, "Too many large bodies are being sent at once.", "Send it again a little later.")
                : ProblemJson.body(
                        row, "The server ended the request before a route was reached.", "See GET /v1/openapi.json.");
        return body.put("pointer", "").toString().getBytes(StandardCharsets.UTF_8);
    }
}
