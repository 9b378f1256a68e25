// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import io.javalin.http.Context;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;

/** Pictures as bodies of answers. */
final class Pictures {
    static final String PNG = "image/png";
    static final String JPEG = "image/jpeg";

    private Pictures() {}

    /** @param type {@link #PNG} or {@link #JPEG} */
    static void send(Context ctx, BufferedImage picture, String type) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(picture, type.substring("image/".length()), bytes);
        ctx.disableCompression().contentType(type).result(bytes.toByteArray());
    }
}
