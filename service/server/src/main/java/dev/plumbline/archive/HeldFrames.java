// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.archive;

import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.RecordFrame;
import dev.plumbline.dicom.RecordFrames;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.record.FrameRef;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;

/** Frames of the objects in the archive. */
public final class HeldFrames implements RecordFrames {
    private final Archive archive;

    public HeldFrames(Archive archive) {
        this.archive = archive;
    }

    /**
     * The object a frame belongs to.
     *
     * @throws Refusal {@link Problem.NotHeld}
     */
    public DicomFile object(String sopInstanceUid) {
        try {
            return archive.open(archive.store()
                    .object(sopInstanceUid)
                    .orElseThrow(() -> new Refusal(new Problem.NotHeld(
                            "",
                            "No object with this SOP Instance UID is held here.",
                            "Send the frame first: POST /v1/frames."))));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Size and scale of a frame that a case names.
     *
     * @throws Refusal {@link Problem.NotHeld}, or where it is named by a file
     */
    public FrameGeometry geometry(FrameRef frame) {
        FrameRef.Held held = held(frame);
        return object(held.sopInstanceUid()).geometry(held.frameNumber());
    }

    @Override
    public RecordFrame of(FrameRef.Held frame) {
        DicomFile object = object(frame.sopInstanceUid());
        int number = frame.frameNumber();
        try {
            return new RecordFrame(object.header(), object.geometry(number), object.image(number));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The picture of a frame that a case names, nothing drawn on it; empty for one that exists as a stated size only.
     *
     * @throws Refusal {@link Problem.NotHeld}, or where it is named by a file
     */
    public Optional<BufferedImage> image(FrameRef frame) {
        if (frame instanceof FrameRef.Stated) {
            return Optional.empty();
        }
        FrameRef.Held held = held(frame);
        try {
            return Optional.of(object(held.sopInstanceUid()).image(held.frameNumber()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static FrameRef.Held held(FrameRef frame) {
        if (frame instanceof FrameRef.Held held) {
            return held;
        }
        throw new Refusal(new Problem.NotHeld(
                "",
                "The service reads no files by name.",
                "Send the file with POST /v1/frames and name its sopInstanceUid here."));
    }
}
