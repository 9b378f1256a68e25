// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.geometry;

import dev.plumbline.problem.Problem;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Which scale a measurement uses.
 *
 * <p>Source: DICOM PS3.3 C.8.5.5 for the regions; that regions exclude any other scale, and that one measurement stays in
 * one region, are design choices: the halves of a dual view share a scale, not an origin.
 */
final class CalibrationRules {
    private static final Comparator<UltrasoundRegion> BY_PRIORITY =
            Comparator.comparing(region -> region.hasPriority() ? 0 : 1);
    private static final String SUPPLY_SCALE =
            "Send a frame with Sequence of Ultrasound Regions or Pixel Spacing, or state the scale: \"scale\" of the frame"
                    + " with two points a known distance apart, or a frame of {columns, rows, mmPerColumn, mmPerRow}.";
    private static final String ONE_REGION = "Put target, shaft and tip into one region that is 2D, tissue and in cm.";
    private static final String OR_A_SCALE =
            " Where there is no such region, state the scale of the frame by two points a known distance apart.";

    private final FrameGeometry frame;
    private final String pointer;

    /** @param pointer of the frame in the case document */
    CalibrationRules(FrameGeometry frame, String pointer) {
        this.frame = frame;
        this.pointer = pointer;
    }

    Calibration forMarks(List<NamedMark> marks) {
        if (frame.knownDistance().isPresent()) {
            return stated(
                    frame.knownDistance().get(),
                    usable().stream()
                            .filter(region -> marks.stream()
                                    .anyMatch(mark -> region.bounds().contains(mark.at()))));
        }
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
        if (frame.knownDistance().isPresent()) {
            return stated(frame.knownDistance().get(), usable().stream());
        }
        if (frame.regions().isEmpty()) {
            return withoutRegions();
        }
        return usable().stream()
                .sorted(BY_PRIORITY)
                .max(Comparator.comparing(region -> area(region.bounds())))
                .map(this::inRegion)
                .orElseThrow(() -> new Refusal(new Problem.OutsideMeasuringRegion(
                        pointer,
                        "No region of this frame can be measured in: "
                                + whyUnusable(frame.regions().get(0)) + ".",
                        "Send a frame with a 2D tissue region in cm." + OR_A_SCALE)));
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
        return new Calibration(
                Calibration.Source.ULTRASOUND_REGIONS,
                region.pixelSize(),
                Optional.of(region.bounds()),
                Optional.empty(),
                contradiction("the region", region.pixelSize()));
    }

    private List<String> contradiction(String used, PixelSize scale) {
        return frame.spacingDiffersFrom(scale)
                ? List.of("Pixel Spacing says " + words(frame.pixelSpacing().orElseThrow()) + ", " + used + " "
                        + words(scale) + "; " + used + " is used. Compare a known distance.")
                : List.of();
    }

    /** @param told usable regions that tell the scale; where there is one, nobody else can */
    private Calibration stated(KnownDistance distance, Stream<UltrasoundRegion> told) {
        distance.check(pointer + "/scale", frame);
        PixelSize scale = distance.pixel(frame.heightToWidth().orElse(1));
        told.findFirst().ifPresent(region -> {
            throw new Refusal(new Problem.ContradictoryFields(
                    pointer + "/scale",
                    "A scale is stated where region " + region.bounds().index()
                            + " of the frame tells it: " + words(region.pixelSize()) + ", stated " + words(scale)
                            + ", a difference of " + percent(scale, region.pixelSize()) + ".",
                    "Leave the scale out; the region is used."));
        });
        List<String> doubts = new ArrayList<>();
        doubts.add(String.format(
                Locale.ROOT,
                "The scale was stated by a person: %s mm between two points %.1f pixels apart; nothing in the frame shows it.",
                shortest(distance.distanceMm()),
                distance.from().distanceTo(distance.to())));
        doubts.addAll(contradiction("the stated scale", scale));
        if (frame.heightToWidth().isEmpty()) {
            doubts.add("Pixels are taken to be square; nothing in the frame says so.");
        }
        return new Calibration(Calibration.Source.STATED, scale, Optional.empty(), Optional.of(distance), doubts);
    }

    /** The axis on which the two differ more. */
    private static String percent(PixelSize scale, PixelSize against) {
        double across = 100 * (scale.mmPerColumn() / against.mmPerColumn() - 1);
        double down = 100 * (scale.mmPerRow() / against.mmPerRow() - 1);
        return String.format(Locale.ROOT, "%+.1f %%", Math.abs(down) > Math.abs(across) ? down : across);
    }

    private static String shortest(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }

    private Calibration withoutRegions() {
        if (frame.pixelSpacing().isPresent()) {
            List<String> doubts = List.of("The scale comes from Pixel Spacing; the frame has no ultrasound regions.");
            return new Calibration(
                    Calibration.Source.PIXEL_SPACING,
                    frame.pixelSpacing().get(),
                    Optional.empty(),
                    Optional.empty(),
                    doubts);
        }
        return frame.statedScale()
                .map(scale -> new Calibration(
                        Calibration.Source.STATED,
                        scale,
                        Optional.empty(),
                        Optional.empty(),
                        List.of("The scale was stated by a person; nothing in the frame shows it.")))
                .orElseThrow(() -> new Refusal(new Problem.FrameNotCalibrated(
                        pointer, "Nothing in this frame tells how large a pixel is.", SUPPLY_SCALE)));
    }

    private Calibration refuse(List<NamedMark> marks) {
        List<UltrasoundRegion> usable = usable();
        for (NamedMark mark : marks) {
            if (usable.stream().noneMatch(region -> region.bounds().contains(mark.at()))) {
                throw new Refusal(new Problem.OutsideMeasuringRegion(
                        mark.pointer(),
                        "The mark " + mark.pointer() + " lies " + whereUnusable(mark.at()),
                        ONE_REGION + OR_A_SCALE));
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

    private static String words(PixelSize size) {
        return String.format(Locale.ROOT, "%.5g x %.5g mm", size.mmPerColumn(), size.mmPerRow());
    }
}
