// SPDX-License-Identifier: Apache-2.0
/**
 * The service's own pages as HTML text: one class for each page, one place for what they share. They know nothing of HTTP;
 * what a page does after it has been sent, its ES module does through the documented routes.
 */
@NullMarked
package dev.plumbline.pages;

import org.jspecify.annotations.NullMarked;
