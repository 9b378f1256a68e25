// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.util.Optional;
import java.util.function.Supplier;
import javax.net.ssl.SSLContext;

/**
 * Another application entity that we call.
 *
 * @param host name or address; with TLS its certificate must be made out to it
 * @param tls the certificates to show and to trust, asked for at each association; empty for plain TCP
 */
public record Peer(String aeTitle, String host, int port, Optional<Supplier<SSLContext>> tls) {}
