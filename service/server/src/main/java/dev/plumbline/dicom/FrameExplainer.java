// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.FrameExplanation.RegionNote;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.geometry.Region;
import dev.plumbline.geometry.UltrasoundRegion;
import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/** Puts the calibration of one frame into words; the rules themselves are those of {@link FrameGeometry#calibration()}. */
final class FrameExplainer {
    private static final double PIXELS_NOT_SQUARE = 0.01;
    private static final double SMALLEST_MM_PER_PIXEL = 0.005;
    private static final double LARGEST_MM_PER_PIXEL = 1;

    private final FrameGeometry geometry;
    private final int frameNumber;
    private final int frameCount;
    private final Optional<Calibration> calibration;
    private final List<String> doubts = new ArrayList<>();

    FrameExplainer(FrameGeometry geometry, int frameNumber, int frameCount) {
        this.geometry = geometry;
        this.frameNumber = frameNumber;
        this.frameCount = frameCount;
        this.calibration = calibrate();
    }

    Optional<Calibration> calibration() {
        return calibration;
    }

    private Optional<Calibration> calibrate() {
        try {
            return Optional.of(geometry.calibration(""));
        } catch (Refusal e) {
            if (e.problem() instanceof Problem.FrameNotCalibrated
                    || e.problem() instanceof Problem.OutsideMeasuringRegion) {
                doubts.add(e.problem().detail() + " " + e.problem().remedy());
                return Optional.empty();
            }
            throw e;
        }
    }

    FrameExplanation explain(ProbeEstimate probe) {
        calibration.ifPresent(found -> doubts.addAll(found.doubts()));
        calibration.ifPresent(found -> addScaleDoubts(found.pixel()));
        geometry.regions().forEach(region -> addBoundsDoubt(region.bounds()));
        OptionalDouble width = calibration.stream()
                .mapToDouble(found -> size(found).mmPerColumn())
                .findFirst();
        OptionalDouble depth = calibration.stream()
                .mapToDouble(found -> size(found).mmPerRow())
                .findFirst();
        List<RegionNote> regions = regions();
        return new FrameExplanation(
                frameCount,
                frameNumber,
                calibration,
                width,
                depth,
                regions,
                probe,
                doubts,
                text(regions, width, depth, probe));
    }

    /** Millimetres of the area that is measured in; not of a pixel. */
    private PixelSize size(Calibration found) {
        Region area = found.region().orElse(new Region(0, 0, 0, geometry.columns() - 1, geometry.rows() - 1));
        return new PixelSize(
                (area.maxColumn() - area.minColumn() + 1) * found.pixel().mmPerColumn(),
                (area.maxRow() - area.minRow() + 1) * found.pixel().mmPerRow());
    }

    private void addScaleDoubts(PixelSize pixel) {
        double ratio = pixel.mmPerColumn() / pixel.mmPerRow();
        if (Math.abs(ratio - 1) > PIXELS_NOT_SQUARE) {
            doubts.add(String.format(
                    Locale.ROOT,
                    "Pixels are %.4f times as wide as they are high; a picture shown with square pixels bends angles.",
                    ratio));
        }
        double smallest = Math.min(pixel.mmPerColumn(), pixel.mmPerRow());
        double largest = Math.max(pixel.mmPerColumn(), pixel.mmPerRow());
        if (smallest < SMALLEST_MM_PER_PIXEL || largest > LARGEST_MM_PER_PIXEL) {
            doubts.add("The scale is unusual for ultrasound of the body's surface. Compare a known distance.");
        }
    }

    private void addBoundsDoubt(Region region) {
        if (region.maxColumn() >= geometry.columns() || region.maxRow() >= geometry.rows()) {
            doubts.add("Region " + (region.index() + 1) + " reaches beyond the image; only what is on it counts.");
        }
    }

    private List<RegionNote> regions() {
        List<RegionNote> notes = new ArrayList<>();
        for (UltrasoundRegion region : geometry.regions()) {
            boolean used = calibration.flatMap(Calibration::region).equals(Optional.of(region.bounds()));
            notes.add(new RegionNote(region.bounds().index() + 1, used, note(region, used)));
        }
        return notes;
    }

    private String note(UltrasoundRegion region, boolean used) {
        Region bounds = region.bounds();
        String place = String.format(
                Locale.ROOT,
                "columns %d to %d, rows %d to %d: ",
                bounds.minColumn(),
                bounds.maxColumn(),
                bounds.minRow(),
                bounds.maxRow());
        Optional<String> unusable = region.whyUnusable();
        if (unusable.isPresent()) {
            return place + "not measured in, because " + unusable.get();
        }
        String scale = words(region.pixelSize()) + (region.hasPriority() ? ", has priority" : "");
        return place
                + scale
                + (used
                        ? "; used, because it is the largest that is 2D, tissue and in cm"
                        : "; used for marks that lie in it");
    }

    private String text(List<RegionNote> regions, OptionalDouble width, OptionalDouble depth, ProbeEstimate probe) {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "Frame %d of %d, %d x %d pixels.",
                frameNumber,
                frameCount,
                geometry.columns(),
                geometry.rows()));
        lines.add(scaleLine(width, depth));
        regions.forEach(region -> lines.add("Region " + region.number() + ", " + region.note() + "."));
        lines.add(probeLine(probe));
        lines.addAll(probe.why());
        doubts.forEach(doubt -> lines.add("Look: " + doubt));
        return String.join("\n", lines);
    }

    private String scaleLine(OptionalDouble width, OptionalDouble depth) {
        if (calibration.isEmpty()) {
            return "No scale: nothing can be measured in millimetres on this frame.";
        }
        String source = switch (calibration.get().source()) {
            case ULTRASOUND_REGIONS -> "an ultrasound region";
            case PIXEL_SPACING -> "Pixel Spacing";
            case STATED -> "a person's statement";
        };
        return String.format(
                Locale.ROOT,
                "Scale from %s: %s; the area is %.1f mm wide and %.1f mm deep.",
                source,
                words(calibration.get().pixel()),
                width.orElseThrow(),
                depth.orElseThrow());
    }

    private static String probeLine(ProbeEstimate probe) {
        if (probe.kind().isEmpty()) {
            return "Probe: unknown; state probe.kind, footprintMm and midpoint.";
        }
        StringBuilder line = new StringBuilder("Probe: " + probe.kind().get().word() + " array");
        probe.footprintMm().ifPresent(mm -> line.append(String.format(Locale.ROOT, ", face %.1f mm as it shows", mm)));
        probe.arcRadiusMm().ifPresent(mm -> line.append(String.format(Locale.ROOT, ", radius %.1f mm", mm)));
        return line + " (confidence " + probe.confidence().word() + ").";
    }

    private static String words(PixelSize pixel) {
        return String.format(
                Locale.ROOT, "%.5f mm per column and %.5f mm per row", pixel.mmPerColumn(), pixel.mmPerRow());
    }
}
