// SPDX-License-Identifier: Apache-2.0
/**
 * Signed records on their way to other archives: sent, proved, held. The queue is the store's; here are the couriers that
 * carry it, what each answer of an archive leads to, and how a sent object is proved to be there.
 */
@NullMarked
package dev.plumbline.dispatch;

import org.jspecify.annotations.NullMarked;
