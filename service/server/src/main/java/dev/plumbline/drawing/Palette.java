// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.drawing;

/** Which of its two colours every ink takes. */
enum Palette {
    /** Dark, so that the sheet does not outshine the image. */
    OVER_FRAME,
    /** Paper. */
    ALONE
}
