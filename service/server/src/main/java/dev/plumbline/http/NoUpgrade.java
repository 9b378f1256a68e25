// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * No other protocol is spoken on a connection than the one it began with; who asks for one is answered as if it had not
 * (RFC 9110, 7.8). The framework would open a session for each request that wants a web socket, and keep it.
 */
final class NoUpgrade extends Handler.Wrapper {
    NoUpgrade(Handler handler) {
        super(handler);
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        return super.handle(asksForAnother(request) ? new Plain(request) : request, response, callback);
    }

    private static boolean asksForAnother(Request request) {
        return request.getHeaders().stream().anyMatch(NoUpgrade::isAbout);
    }

    private static boolean isAbout(HttpField field) {
        return field.is("Upgrade") || field.getLowerCaseName().startsWith("sec-websocket-");
    }

    /** The request without that wish. */
    private static final class Plain extends Request.Wrapper {
        private final HttpFields headers;

        Plain(Request request) {
            super(request);
            HttpFields.Mutable rest = HttpFields.build();
            request.getHeaders().stream().filter(field -> !isAbout(field)).forEach(rest::add);
            headers = rest.asImmutable();
        }

        @Override
        public HttpFields getHeaders() {
            return headers;
        }
    }
}
