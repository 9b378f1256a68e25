// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dimse;

import java.net.InetAddress;
import java.security.cert.X509Certificate;
import java.util.Optional;

/**
 * Who is at the other end of a connection, as far as the connection tells.
 *
 * @param certificate shown in the TLS handshake; empty without TLS
 */
record Caller(InetAddress from, Optional<X509Certificate> certificate) {}
