// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import com.pixelmed.dicom.AttributeList;
import com.pixelmed.dicom.DicomException;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.KnownDistance;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.Optional;

/**
 * A DICOM file that has passed the strict gate. Pixel data stay in the file; a frame is read when it is asked for, so the
 * file must not go away or change while this is in use.
 */
public final class DicomFile {
    /** Root of their classes, DICOM PS3.4 B.5. Of small objects they are the ones that are read by the thousand. */
    private static final String STRUCTURED_REPORTS = "1.2.840.10008.5.1.4.1.1.88.";

    private final Path path;
    private final GateReport report;
    private final DataSet header;

    private DicomFile(Path path, GateReport report, DataSet header) {
        this.path = path;
        this.report = report;
        this.header = header;
    }

    /**
     * Reads everything but the pixel data.
     *
     * @throws Refusal if the file is not whole, not well-formed, or in an encoding that is not taken
     */
    public static DicomFile open(Path path) throws IOException {
        GateReport report = Gate.inspect(path);
        Optional<PlacedObject> placed = report.placed();
        if (placed.isPresent() && report.sopClassUid().startsWith(STRUCTURED_REPORTS)) {
            return new DicomFile(path, report, new DataSet(placed.get().root()));
        }
        AttributeList attributes = read(path);
        if (AttributeCount.of(attributes) != report.elements()) {
            throw Fault.malformed("The toolkit read " + AttributeCount.of(attributes)
                    + " attributes where the file has " + report.elements());
        }
        if (FrameClass.takes(report.sopClassUid()) && report.pixels().isEmpty()) {
            throw Fault.malformed("The object is an image without " + Fault.name(Tag.PIXEL_DATA));
        }
        return new DicomFile(path, report, new DataSet(attributes));
    }

    /** Whether a file was refused because its data set is another object than its file meta information states. */
    public static boolean isOtherThanStated(Problem problem) {
        return problem instanceof Problem.MalformedObject && problem.detail().contains(Gate.OTHER_THAN_STATED);
    }

    /** Whether a file was refused because of its transfer syntax, whatever the object in it is. */
    public static boolean isOfRefusedSyntax(Problem problem) {
        return problem instanceof Problem.UnsupportedObject && problem.detail().startsWith(RefusedSyntax.SUBJECT);
    }

    private static AttributeList read(Path path) throws IOException {
        AttributeList attributes = new AttributeList();
        attributes.setDecompressPixelData(false);
        try {
            ToolkitLog.watch(() -> attributes.read(path.toFile(), DataSet.toolkitTag(Tag.PIXEL_DATA)));
        } catch (DicomException e) {
            throw Fault.malformed("The toolkit cannot read the object");
        }
        return attributes;
    }

    /** All attributes before the pixel data, file meta information included. */
    public DataSet header() {
        return header;
    }

    /**
     * All attributes behind the pixel data, such as digital signatures and private ones; none as a rule. Read each time it
     * is asked for.
     */
    public DataSet trailer() throws IOException {
        return Trailer.read(path, report.behindPixels(), transferSyntax(), header);
    }

    public Path path() {
        return path;
    }

    public String sopClassUid() {
        return report.sopClassUid();
    }

    public String sopInstanceUid() {
        return report.sopInstanceUid();
    }

    public TransferSyntax transferSyntax() {
        return report.transferSyntax();
    }

    /** Whether there are pixel data in a class of object that can be a frame. */
    public boolean isImage() {
        return report.pixels().isPresent() && FrameClass.takes(sopClassUid());
    }

    /** How many frames; 0 without pixel data. */
    public int frameCount() {
        return report.pixels().map(pixels -> pixels.shape().frames()).orElse(0);
    }

    /**
     * What measuring needs to know of one frame, as the object states it.
     *
     * @param frameNumber from 1
     * @throws Refusal if there is no such frame, or a region is not a rectangle on the image
     */
    public FrameGeometry geometry(int frameNumber) {
        PixelShape shape = frame(frameNumber).shape();
        return new FrameGeometryReader(header, frameNumber).read(shape);
    }

    /**
     * One frame as it is to be shown, window and palette applied: 8-bit grey ({@code TYPE_BYTE_GRAY}) or RGB ({@code
     * TYPE_3BYTE_BGR}). Read or draw a grey image's samples; its {@code getRGB} brightens them.
     *
     * @param frameNumber from 1
     * @throws Refusal if there is no such frame or it cannot be decoded
     */
    public BufferedImage image(int frameNumber) throws IOException {
        return image(frameNumber, Optional.empty());
    }

    private BufferedImage image(int frameNumber, Optional<Window> window) throws IOException {
        PixelBytes pixels = frame(frameNumber);
        ImageDescription description = ImageDescription.of(header, pixels.shape());
        return DecodingMemory.within(description.memory(transferSyntax()), () -> {
            Samples samples = new FrameReader(path, transferSyntax(), description).read(pixels, frameNumber - 1);
            return new Rendering(header, description, frameNumber).render(samples, window);
        });
    }

    /**
     * The bytes of one frame of any object as they are stored: a compressed frame as it is, plain samples little-endian.
     *
     * @param frameNumber from 1
     * @throws Refusal if there is no such frame
     */
    public byte[] storedFrame(int frameNumber) throws IOException {
        PixelBytes pixels = anyFrame(frameNumber);
        ImageDescription description = ImageDescription.of(header, pixels.shape());
        return new FrameReader(path, transferSyntax(), description).stored(pixels, frameNumber - 1);
    }

    /** Whether frames are stored plain, or become plain samples which are what the attributes say of them. */
    public boolean givesPlainFrames() {
        return !transferSyntax().encapsulated()
                || report.pixels()
                        .filter(pixels -> PlainFrame.isDescribed(transferSyntax(), pixels.shape()))
                        .isPresent();
    }

    /**
     * The samples of one frame of any object, little-endian, decoded where they are compressed.
     *
     * @param frameNumber from 1
     * @throws Refusal if there is no such frame or it cannot be decoded
     */
    public byte[] plainFrame(int frameNumber) throws IOException {
        if (!transferSyntax().encapsulated()) {
            return storedFrame(frameNumber);
        }
        PixelBytes pixels = anyFrame(frameNumber);
        ImageDescription description = ImageDescription.of(header, pixels.shape());
        return DecodingMemory.within(description.memory(transferSyntax()), () -> {
            Samples samples = new FrameReader(path, transferSyntax(), description).read(pixels, frameNumber - 1);
            return PlainFrame.of(samples, description);
        });
    }

    /**
     * What the scale of one frame is and why, and what the frame tells about the probe.
     *
     * @param frameNumber from 1
     * @throws Refusal as {@link #geometry} and {@link #image}; not for a frame without a scale, which is an answer too
     */
    public FrameExplanation explain(int frameNumber) throws IOException {
        return explain(frameNumber, Optional.empty());
    }

    /**
     * The same with a scale that a person states.
     *
     * @throws Refusal also where a usable region tells the scale, or the two points give none
     */
    public FrameExplanation explain(int frameNumber, Optional<KnownDistance> scale) throws IOException {
        FrameGeometry geometry = geometry(frameNumber).with(scale);
        FrameExplainer explainer = new FrameExplainer(geometry, frameNumber, frameCount());
        return explainer.explain(FrameProbe.of(header, geometry, explainer.calibration(), image(frameNumber)));
    }

    /**
     * One frame as a person wants to see it: as {@link #image}, and in RGB where something is drawn on it. What is burnt
     * into a region stays, masked or not.
     *
     * @throws Refusal as {@link #image}; for a window on a frame in colour, a mask without regions, a bar without a scale
     */
    public BufferedImage picture(int frameNumber, Appearance appearance) throws IOException {
        FrameGeometry geometry = geometry(frameNumber).with(appearance.scale());
        BufferedImage image = image(frameNumber, appearance.window());
        BufferedImage shown = appearance.masked() ? FrameMask.of(image, geometry) : image;
        if (appearance.regions()) {
            return FramePicture.regions(shown, geometry, explain(frameNumber, appearance.scale()));
        }
        return appearance.scaleBar() ? FramePicture.scaleBar(shown, geometry.calibration("")) : shown;
    }

    private PixelBytes frame(int frameNumber) {
        if (!FrameClass.takes(sopClassUid())) {
            throw FrameClass.refusal(sopClassUid());
        }
        return anyFrame(frameNumber);
    }

    private PixelBytes anyFrame(int frameNumber) {
        PixelBytes pixels = report.pixels()
                .orElseThrow(() -> new IllegalStateException("An image is let in with pixel data only."));
        if (frameNumber < 1 || frameNumber > pixels.shape().frames()) {
            throw new Refusal(new Problem.FrameNumberOutOfRange(
                    "", frameNumber, pixels.shape().frames()));
        }
        return pixels;
    }

    /** A whole file in Explicit VR Little Endian; the same data set always gives the same bytes. */
    public static byte[] encode(DataSet dataSet) {
        return FileEncoding.encode(dataSet);
    }

    /** Writes what {@link #encode} gives; the stream stays open. */
    public static void writeTo(DataSet dataSet, OutputStream out) throws IOException {
        out.write(encode(dataSet));
    }
}
