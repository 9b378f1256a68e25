// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dispatch;

import java.util.function.Supplier;

/**
 * An archive that records are sent to.
 *
 * @param name of the peer in the configuration
 * @param provable whether the archive offers a proof, so that a sent record need not stay unproved for ever
 * @param carrier makes the way to it
 */
public record Destination(String name, boolean provable, Supplier<Carrier> carrier) {}
