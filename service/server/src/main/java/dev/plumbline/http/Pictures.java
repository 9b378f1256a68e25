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

    private static final int BEST = 100;

    private Pictures() {}

    /** Sends a picture as PNG. */
    static void send(Context ctx, BufferedImage picture) throws IOException {
        ctx.disableCompression().contentType(PNG).result(encoded(picture, PNG, BEST));
    }

    /** @param quality of a JPEG, from 1 to 100; the other types lose nothing, but for colours that a GIF has no room for */
    static byte[] encoded(BufferedImage picture, String type, int quality) throws IOException {
        ImageWriter writer = ImageIO.getImageWritersByMIMEType(type).next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ImageOutputStream out = ImageIO.createImageOutputStream(bytes)) {
            ImageWriteParam how = writer.getDefaultWriteParam();
            if (type.equals(JPEG)) {
                how.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
                how.setCompressionQuality((float) quality / BEST);
            }
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, null), how);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
