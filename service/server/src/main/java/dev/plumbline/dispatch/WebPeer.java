// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import dev.plumbline.dimse.TlsWords;
import java.io.IOException;
import java.io.InputStream;
import java.net.ConnectException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpTimeoutException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.function.Supplier;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLException;

/**
 * A DICOMweb service that we call. Redirects are not followed: nobody else than the configured host is spoken to. The token
 * is read from its file for each request, so that it can be renewed there.
 */
public final class WebPeer {
    /** Whoever hands back less in a second is taken for stuck. Source: design choice. */
    private static final long SLOWEST_BYTES_PER_SECOND = 16 << 10;

    private final URI base;
    private final Optional<Path> tokenFile;
    private final Duration response;
    private final Duration connect;
    private final Optional<Supplier<SSLContext>> tls;
    private Optional<SSLContext> shown = Optional.empty();
    private HttpClient client;

    /**
     * Where it is.
     *
     * @param base such as {@code https://pacs.example.org/dicom-web}
     * @param tls asked for at each request; empty for what the Java platform trusts
     */
    public record Place(URI base, Optional<Path> tokenFile, Optional<Supplier<SSLContext>> tls) {}

    public WebPeer(Place place, Duration connect, Duration response) {
        this.base = place.base();
        this.tokenFile = place.tokenFile();
        this.response = response;
        this.connect = connect;
        this.tls = place.tls();
        this.shown = tls.map(Supplier::get);
        this.client = making();
    }

    private HttpClient making() {
        HttpClient.Builder builder = HttpClient.newBuilder()
                .version(HttpClient.Version.HTTP_1_1)
                .followRedirects(HttpClient.Redirect.NEVER)
                .connectTimeout(connect);
        shown.ifPresent(builder::sslContext);
        return builder.build();
    }

    /** Another one where the TLS files were renewed; the one before ends with its last request. */
    private synchronized HttpClient client() {
        Optional<SSLContext> now = tls.map(Supplier::get);
        if (!now.equals(shown)) {
            shown = now;
            client = making();
        }
        return client;
    }

    /** The service did not answer at all; the message says why in words. */
    public static final class Unanswered extends IOException {
        private static final long serialVersionUID = 1L;

        Unanswered(String message, Throwable cause) {
            super(message, cause);
        }
    }

    /** A request to a path under the base address, with the token. */
    public HttpRequest.Builder request(String path) throws IOException {
        String root = base.toString().replaceAll("/+$", "");
        HttpRequest.Builder request =
                HttpRequest.newBuilder(URI.create(root + path)).timeout(response);
        if (tokenFile.isPresent()) {
            try {
                String token = Files.readString(tokenFile.get(), StandardCharsets.US_ASCII);
                request.header("Authorization", "Bearer " + token.strip());
            } catch (IOException e) {
                throw new Unanswered("The token file " + tokenFile.get() + " cannot be read.", e);
            }
        }
        return request;
    }

    /** The answer, whatever its status; its body has to come within the time that is waited for an answer. */
    public HttpResponse<InputStream> send(HttpRequest.Builder request) throws Unanswered {
        return send(request, 0);
    }

    /**
     * The answer, whatever its status.
     *
     * @param bytes that its body may have in about; it gets the time for them
     */
    public HttpResponse<InputStream> send(HttpRequest.Builder request, long bytes) throws Unanswered {
        Duration whole = response.plusSeconds(bytes / SLOWEST_BYTES_PER_SECOND);
        try {
            return client().send(request.build(), headers -> new BoundedBody(whole));
        } catch (HttpTimeoutException e) {
            throw new Unanswered(base.getHost() + " did not answer in time.", e);
        } catch (ConnectException e) {
            throw new Unanswered("Nothing listens at " + base.getHost() + ".", e);
        } catch (SSLException e) {
            throw new Unanswered(TlsWords.of(e), e);
        } catch (IOException e) {
            throw new Unanswered("The connection to " + base.getHost() + " broke before an answer came.", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Unanswered("Plumbline is stopping.", e);
        }
    }
}
