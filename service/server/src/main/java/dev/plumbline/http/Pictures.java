// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.http;

import io.javalin.http.Context;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;

/** Pictures as bodies of answers. */
final class Pictures {
    static final String PNG = "image/png";
    static final String JPEG = "image/jpeg";
    static final String GIF = "image/gif";

    private static final float BEST = 100;

    private Pictures() {}

    /** @param type {@link #PNG} or {@link #JPEG} */
    static void send(Context ctx, BufferedImage picture, String type) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(picture, type.substring("image/".length()), bytes);
        ctx.disableCompression().contentType(type).result(bytes.toByteArray());
    }

    /** @param quality of a JPEG, from 1 to 100; the other types lose nothing, but for colours that a GIF has no room for */
    static byte[] encoded(BufferedImage picture, String type, int quality) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByMIMEType(type).next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            if (type.equals(JPEG)) {
                how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
                how.setCompressionQuality(quality / BEST);
            }
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, null), how);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
