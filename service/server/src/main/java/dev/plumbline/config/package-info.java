// SPDX-License-Identifier: Apache-2.0
/**
 * The only reader of the JSON files of a site (configuration, catalogues, ladder, checks, formulary, blocks); turns them into
 * values of the core. The files that ship lie beside it as resources; their schemas in {@code docs/site}.
 */
@NullMarked
package dev.plumbline.config;

import org.jspecify.annotations.NullMarked;
