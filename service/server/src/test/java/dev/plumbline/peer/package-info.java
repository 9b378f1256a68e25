// SPDX-License-Identifier: Apache-2.0
/** Peers of the interop tests: programs that are not ours, and archives that behave badly on purpose. */
package dev.plumbline.peer;
