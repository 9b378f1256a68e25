// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Which scale a measurement uses.
 *
 * <p>Source: DICOM PS3.3 C.8.5.5 for the regions; that regions exclude any other scale, and that one measurement stays in
 * one region, are design choices: the halves of a dual view share a scale, not an origin.
 */
final class CalibrationRules {
    private static final double DISAGREEMENT = 0.01;
    private static final Comparator<UltrasoundRegion> BY_PRIORITY =
            Comparator.comparing(region -> region.hasPriority() ? 0 : 1);
    private static final String SUPPLY_SCALE =
            "Send a frame with Sequence of Ultrasound Regions or Pixel Spacing, or state the scale: a frame of"
                    + " {columns, rows, mmPerColumn, mmPerRow}.";
    private static final String ONE_REGION = "Put target, shaft and tip into one region that is 2D, tissue and in cm.";

    private final FrameGeometry frame;

    CalibrationRules(FrameGeometry frame) {
        this.frame = frame;
    }

    Calibration forMarks(List<NamedMark> marks) {
        if (frame.regions().isEmpty()) {
            return withoutRegions();
        }
        List<UltrasoundRegion> holding = usable().stream()
                .filter(region ->
                        marks.stream().allMatch(mark -> region.bounds().contains(mark.at())))
                .sorted(BY_PRIORITY)
                .toList();
        return holding.isEmpty() ? refuse(marks) : inRegion(holding.get(0));
    }

    /** For a frame nobody has marked yet: the largest usable region. */
    Calibration forWholeFrame() {
        if (frame.regions().isEmpty()) {
            return withoutRegions();
        }
        return usable().stream()
                .sorted(BY_PRIORITY)
                .max(Comparator.comparing(region -> area(region.bounds())))
                .map(this::inRegion)
                .orElseThrow(() -> new Refusal(new Problem.OutsideMeasuringRegion(
                        "/frame",
                        "No region of this frame can be measured in: "
                                + whyUnusable(frame.regions().get(0)) + ".",
                        "Send a frame with a 2D tissue region in cm.")));
    }

    private static long area(Region region) {
        return (region.maxColumn() - region.minColumn() + 1L) * (region.maxRow() - region.minRow() + 1L);
    }

    private List<UltrasoundRegion> usable() {
        return frame.regions().stream()
                .filter(region -> region.whyUnusable().isEmpty())
                .toList();
    }

    private Calibration inRegion(UltrasoundRegion region) {
        List<String> doubts = new ArrayList<>();
        frame.pixelSpacing()
                .filter(spacing -> differ(spacing, region.pixelSize()))
                .ifPresent(spacing -> doubts.add("Pixel Spacing says " + words(spacing) + ", the region "
                        + words(region.pixelSize()) + "; the region is used. Compare a known distance."));
        return new Calibration(
                Calibration.Source.ULTRASOUND_REGIONS, region.pixelSize(), Optional.of(region.bounds()), doubts);
    }

    private Calibration withoutRegions() {
        if (frame.pixelSpacing().isPresent()) {
            List<String> doubts = List.of("The scale comes from Pixel Spacing; the frame has no ultrasound regions.");
            return new Calibration(
                    Calibration.Source.PIXEL_SPACING, frame.pixelSpacing().get(), Optional.empty(), doubts);
        }
        return frame.statedScale()
                .map(scale -> new Calibration(
                        Calibration.Source.STATED,
                        scale,
                        Optional.empty(),
                        List.of("The scale was stated by a person; nothing in the frame shows it.")))
                .orElseThrow(() -> new Refusal(new Problem.FrameNotCalibrated(
                        "/frame", "Nothing in this frame tells how large a pixel is.", SUPPLY_SCALE)));
    }

    private Calibration refuse(List<NamedMark> marks) {
        List<UltrasoundRegion> usable = usable();
        for (NamedMark mark : marks) {
            if (usable.stream().noneMatch(region -> region.bounds().contains(mark.at()))) {
                throw new Refusal(new Problem.OutsideMeasuringRegion(
                        mark.pointer(),
                        "The mark " + mark.pointer() + " lies " + whereUnusable(mark.at()),
                        ONE_REGION));
            }
        }
        NamedMark first = marks.get(0);
        UltrasoundRegion home = home(usable, first);
        NamedMark stray = marks.stream()
                .filter(mark -> !home.bounds().contains(mark.at()))
                .findFirst()
                .orElse(first);
        throw new Refusal(new Problem.OutsideMeasuringRegion(
                stray.pointer(),
                "The marks " + first.pointer() + " and " + stray.pointer() + " lie in different regions, "
                        + home.bounds().index() + " and "
                        + home(usable, stray).bounds().index() + ".",
                ONE_REGION));
    }

    private static UltrasoundRegion home(List<UltrasoundRegion> usable, NamedMark mark) {
        return usable.stream()
                .filter(region -> region.bounds().contains(mark.at()))
                .min(BY_PRIORITY)
                .orElseThrow();
    }

    private String whereUnusable(PointPx point) {
        return frame.regions().stream()
                .filter(region -> region.bounds().contains(point))
                .findFirst()
                .map(region -> "in region " + region.bounds().index() + ", where nothing can be measured: "
                        + whyUnusable(region) + ".")
                .orElse("outside every region of the frame.");
    }

    private static String whyUnusable(UltrasoundRegion region) {
        return region.whyUnusable().orElse("it is usable");
    }

    private static boolean differ(PixelSize a, PixelSize b) {
        return Math.abs(a.mmPerColumn() / b.mmPerColumn() - 1) > DISAGREEMENT
                || Math.abs(a.mmPerRow() / b.mmPerRow() - 1) > DISAGREEMENT;
    }

    private static String words(PixelSize size) {
        return size.mmPerColumn() + " x " + size.mmPerRow() + " mm";
    }
}
