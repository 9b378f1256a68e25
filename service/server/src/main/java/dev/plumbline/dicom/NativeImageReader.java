// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageTypeSpecifier;
import javax.imageio.metadata.IIOMetadata;
import javax.imageio.spi.ImageReaderSpi;
import javax.imageio.stream.ImageInputStream;
import org.jspecify.annotations.Nullable;

/** One compressed frame as an image; the toolkit uses one reader for frame after frame. */
final class NativeImageReader extends ImageReader {
    private static final int CHUNK = 1 << 16;

    private final NativeCodec codec;
    private Optional<BufferedImage> decoded = Optional.empty();

    NativeImageReader(ImageReaderSpi provider, NativeCodec codec) {
        super(provider);
        this.codec = codec;
    }

    @Override
    public void setInput(@Nullable Object source, boolean forwardOnly, boolean ignoreMetadata) {
        super.setInput(source, forwardOnly, ignoreMetadata);
        decoded = Optional.empty();
    }

    @Override
    public BufferedImage read(int index, @Nullable ImageReadParam param) throws IOException {
        if (index != 0) {
            throw new IndexOutOfBoundsException("There is one image only.");
        }
        if (decoded.isEmpty()) {
            decoded = Optional.of(codec.decode(bytes()).image());
        }
        return decoded.get();
    }

    private byte[] bytes() throws IOException {
        if (!(getInput() instanceof ImageInputStream in)) {
            throw new IllegalStateException("An image input stream must be set first.");
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        byte[] chunk = new byte[CHUNK];
        for (int count = in.read(chunk); count >= 0; count = in.read(chunk)) {
            bytes.write(chunk, 0, count);
        }
        return bytes.toByteArray();
    }

    @Override
    public int getNumImages(boolean allowSearch) {
        return 1;
    }

    @Override
    public int getWidth(int index) throws IOException {
        return read(index, null).getWidth();
    }

    @Override
    public int getHeight(int index) throws IOException {
        return read(index, null).getHeight();
    }

    @Override
    public Iterator<ImageTypeSpecifier> getImageTypes(int index) throws IOException {
        return List.of(ImageTypeSpecifier.createFromRenderedImage(read(index, null)))
                .iterator();
    }

    @Override
    public @Nullable IIOMetadata getStreamMetadata() {
        return null;
    }

    @Override
    public @Nullable IIOMetadata getImageMetadata(int index) {
        return null;
    }
}
