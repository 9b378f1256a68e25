// SPDX-License-Identifier: Apache-2.0
/** The command line: parses arguments, makes one call, prints the answer. Results go to stdout, everything else to stderr. */
@NullMarked
package dev.plumbline.cli;

import org.jspecify.annotations.NullMarked;
