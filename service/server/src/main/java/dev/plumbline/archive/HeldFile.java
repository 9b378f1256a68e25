// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

/**
 * What the index says of an object's file.
 *
 * @param digest SHA-256 of its bytes, hexadecimal
 * @param size in bytes
 */
public record HeldFile(String digest, long size) {}
