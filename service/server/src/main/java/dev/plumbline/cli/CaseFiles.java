// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.cli;

import dev.plumbline.dicom.AcquisitionTime;
import dev.plumbline.dicom.DataSet;
import dev.plumbline.dicom.DicomFile;
import dev.plumbline.dicom.ImageIdentity;
import dev.plumbline.dicom.RecordFrame;
import dev.plumbline.dicom.RecordFrames;
import dev.plumbline.document.CaseInputs;
import dev.plumbline.document.CaseJson;
import dev.plumbline.document.Door;
import dev.plumbline.document.FrameProblem;
import dev.plumbline.document.FrameScales;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import dev.plumbline.procedure.FrameClock;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.KeptFrame;
import dev.plumbline.record.SigningCheck;
import dev.plumbline.record.SiteRules;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A case document with the DICOM files that it names, found relative to it. From here on the frames go by their SOP Instance
 * UID, as everywhere else.
 */
final class CaseFiles implements RecordFrames {
    private final Path folder;
    private final FrameFiles files;
    private final Map<String, DicomFile> byUid = new HashMap<>();

    private CaseFiles(Path folder, FrameFiles files) {
        this.folder = folder;
        this.files = files;
    }

    /** A case ready to be computed. */
    record Loaded(CaseDocument document, CaseInputs inputs, CaseFiles frames) {
        /** What a signature under this case is judged beside; on the command line the case is its whole session. */
        SigningCheck.Beside beside(SiteRules site, OffsetDateTime now) {
            return new SigningCheck.Beside(
                    site, frames.patientKnown(document), frames.imageSide(document), List.of(document), now);
        }
    }

    /**
     * Reads the case and opens its frames.
     *
     * @throws Refusal with the field and the remedy
     */
    static Loaded load(Path path) {
        return load(read(path), path.resolveSibling(""), FrameFiles.once());
    }

    /**
     * Opens the frames of a case.
     *
     * @param folder that names of files start from
     * @throws Refusal with the field and the remedy
     */
    static Loaded load(CaseDocument stated, Path folder, FrameFiles frames) {
        CaseFiles files = new CaseFiles(folder, frames);
        FrameRef planned = files.named(stated.frame(), "/frame");
        List<FrameRef> observed = new ArrayList<>();
        for (int i = 0; i < stated.observations().size(); i++) {
            observed.add(files.named(stated.observations().get(i).frame(), "/observations/" + i + "/frame"));
        }
        List<KeptFrame> kept = new ArrayList<>();
        for (KeptFrame each : stated.bedside().frames()) {
            kept.add(new KeptFrame(files.named(each.frame(), "/frames/" + kept.size() + "/frame"), each.role()));
        }
        CaseDocument document = FrameScales.shared(stated.withFrames(planned, observed)
                .withBedside(stated.bedside().withFrames(kept)));
        return new Loaded(document, CaseInputs.of(document, files::geometry), files);
    }

    private static CaseDocument read(Path path) {
        if (!Files.isRegularFile(path)) {
            throw unreadable("", path);
        }
        try (InputStream in = Files.newInputStream(path)) {
            return CaseJson.read(in, Door.CLI);
        } catch (FileSystemException e) {
            throw unreadable("", path);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Refusal unreadable(String pointer, Path path) {
        return new Refusal(
                new Problem.NotHeld(pointer, "The file " + path + " cannot be read.", "Name a file that is there."));
    }

    private FrameRef named(FrameRef frame, String pointer) {
        if (!(frame instanceof FrameRef.File file)) {
            return frame;
        }
        try {
            DicomFile opened = opened(file);
            return new FrameRef.Held(opened.sopInstanceUid(), file.frameNumber(), file.scale());
        } catch (Refusal refusal) {
            throw new Refusal(FrameProblem.at(pointer, refusal.problem()));
        }
    }

    private DicomFile opened(FrameRef.File frame) {
        try {
            DicomFile file = files.open(folder.resolve(frame.path()));
            DicomFile first = byUid.putIfAbsent(file.sopInstanceUid(), file);
            if (first != null && Files.mismatch(first.path(), file.path()) >= 0) {
                throw new Refusal(new Problem.UnsupportedObject(
                        "",
                        "Two different files carry the same SOP Instance UID.",
                        "Use the original of each object."));
            }
            return file;
        } catch (InvalidPathException e) {
            throw new Refusal(new Problem.NotHeld("", "The file name cannot be used.", "Name a file that is there."));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Opens one DICOM file.
     *
     * @throws Refusal when it is not there, or is no DICOM file that is taken
     */
    static DicomFile open(Path path) throws IOException {
        if (!Files.isRegularFile(path)) {
            throw unreadable("", path);
        }
        try {
            return DicomFile.open(path);
        } catch (FileSystemException e) {
            throw unreadable("", path);
        }
    }

    private DicomFile file(FrameRef.Held frame) {
        DicomFile file = byUid.get(frame.sopInstanceUid());
        if (file == null) {
            throw new Refusal(new Problem.NotHeld(
                    "", "No file of this case holds that object.", "Name the frame by file on the command line."));
        }
        return file;
    }

    /** Whether the planned frame names the patient. */
    boolean patientKnown(CaseDocument document) {
        return header(document.frame()).filter(ImageIdentity::namesPatient).isPresent();
    }

    /** The side that the planned frame states. */
    Optional<Laterality> imageSide(CaseDocument document) {
        return header(document.frame()).flatMap(ImageIdentity::side);
    }

    /** When the frames were saved, by the scanner's clock. */
    List<FrameClock> clocks(CaseDocument document) {
        return AcquisitionTime.all(document, this::header);
    }

    private Optional<DataSet> header(FrameRef named) {
        return named instanceof FrameRef.Held frame ? Optional.of(file(frame).header()) : Optional.empty();
    }

    private FrameGeometry geometry(FrameRef frame) {
        FrameRef.Held held = (FrameRef.Held) frame;
        return files.geometry(file(held), held.frameNumber());
    }

    @Override
    public RecordFrame of(FrameRef.Held frame) {
        return new RecordFrame(
                file(frame).header(), geometry(frame), image(frame).orElseThrow());
    }

    /** The picture of a frame; empty for one that exists as a stated size only. */
    Optional<BufferedImage> image(FrameRef frame) {
        if (!(frame instanceof FrameRef.Held held)) {
            return Optional.empty();
        }
        try {
            return Optional.of(file(held).image(held.frameNumber()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
