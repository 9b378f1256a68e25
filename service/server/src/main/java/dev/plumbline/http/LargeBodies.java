// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import java.util.concurrent.Semaphore;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.server.handler.EagerContentHandler.RetainedContentLoaderFactory;
import org.eclipse.jetty.util.Callback;

/**
 * How many bodies are read at once by a thread that waits for them: fewer than there are threads, so that a crowd of
 * senders does not keep everybody else from being answered. A small body needs no thread: it is loaded before.
 */
final class LargeBodies extends Handler.Wrapper {
    /** Loaded before a thread is given to the request. Source: design choice. */
    private static final int SMALL_BYTES = 64 * 1024;

    /** Of the 250 threads that the server has. Source: design choice. */
    private static final int MOST = 100;

    /** When to ask again. Source: design choice. */
    private static final String RETRY_SECONDS = "2";

    private final Semaphore places = new Semaphore(MOST);

    /** The handler that loads small bodies, and counts the rest. */
    static Handler.Wrapper behindSmallOnes() {
        return new EagerContentHandler(new LargeBodies(), new RetainedContentLoaderFactory(SMALL_BYTES, 0, false));
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        if (isSmall(request)) {
            return super.handle(request, response, callback);
        }
        if (!places.tryAcquire()) {
            response.getHeaders().put(HttpHeader.RETRY_AFTER, RETRY_SECONDS);
            response.getHeaders().put(HttpHeader.CONNECTION, "close");
            Response.writeError(request, response, callback, HttpStatus.SERVICE_UNAVAILABLE_503);
            return true;
        }
        Request.addCompletionListener(request, failure -> places.release());
        return super.handle(request, response, callback);
    }

    private static boolean isSmall(Request request) {
        long stated = request.getHeaders().getLongField(HttpHeader.CONTENT_LENGTH);
        return stated < 0 ? !request.getHeaders().contains(HttpHeader.TRANSFER_ENCODING) : stated <= SMALL_BYTES;
    }
}
