// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import dev.plumbline.dicom.ItemValue.Instance;
import dev.plumbline.dicom.ObjectHeader.Kind;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.PixelSize;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Context;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Grayscale and Color Softcopy Presentation State, DICOM PS3.3 A.33.1 and A.33.2: plan and observation as graphics over the
 * frame as it is, one per frame used. Which of the two follows from the frame's photometric interpretation.
 */
final class PresentationState {
    /** Pixel sizes become whole numbers of nanometres, whose ratio is the aspect. */
    private static final double NM_PER_MM = 1e6;

    private final RecordSource source;
    private final FramesUsed.Use use;
    private final DataSet header;
    private final FrameGeometry geometry;
    private final Instance instance;

    private PresentationState(RecordSource source, FramesUsed.Use use) {
        this.source = source;
        this.use = use;
        header = use.placed().frame().header();
        geometry = use.placed().frame().geometry();
        instance = use.placed().instance();
    }

    /**
     * The state of one frame; empty where the report draws nothing on it.
     *
     * @param number of the frame within the record, from 1
     * @param report the content tree whose groups are drawn
     */
    static Optional<DataSet> of(RecordSource source, FramesUsed.Use use, int number, ContentItem report) {
        List<DataSet> graphics = FrameGraphics.of(report, use.placed().instance());
        return graphics.isEmpty()
                ? Optional.empty()
                : Optional.of(new PresentationState(source, use).compose(number, graphics));
    }

    /** Whether there is a state of this frame. */
    static boolean draws(FramesUsed.Use use, ContentItem report) {
        return !FrameGraphics.of(report, use.placed().instance()).isEmpty();
    }

    /** Grey for MONOCHROME1 and MONOCHROME2 only; RGB, YBR and PALETTE COLOR are colour. */
    static boolean isGrey(DataSet frame) {
        return frame.string(Tag.PHOTOMETRIC_INTERPRETATION)
                .filter(photometric -> photometric.startsWith("MONOCHROME"))
                .isPresent();
    }

    private DataSet compose(int number, List<DataSet> graphics) {
        boolean grey = isGrey(header);
        Kind kind = grey ? Kind.GREY_PRESENTATION : Kind.COLOUR_PRESENTATION;
        Timestamp time = new Timestamp(source.revision().time());
        DataSet state = ObjectHeader.of(source, kind, kind.part(number))
                .put(Tag.LATERALITY, ObjectHeader.laterality(source.revision().document()))
                .put(Tag.INSTANCE_NUMBER, ObjectHeader.instanceNumber(source.revision(), number))
                .put(Tag.CONTENT_LABEL, "NEEDLE_PATH")
                .put(Tag.CONTENT_DESCRIPTION, "Plan and observation drawn on the frame")
                .put(Tag.PRESENTATION_CREATION_DATE, time.date())
                .put(Tag.PRESENTATION_CREATION_TIME, time.timeOfDay())
                .put(Tag.CONTENT_CREATOR_NAME, creator())
                .put(Tag.REFERENCED_SERIES_SEQUENCE, List.of(series()))
                .put(Tag.DISPLAYED_AREA_SELECTION_SEQUENCE, List.of(displayedArea()));
        if (grey) {
            greyLevels(state);
        } else {
            state.put(Tag.ICC_PROFILE, ColourProfile.sRgb());
        }
        state.put(Tag.GRAPHIC_ANNOTATION_SEQUENCE, graphics);
        layers(state, graphics);
        return state;
    }

    private String[] creator() {
        return Observers.author(source.revision().document())
                .map(Context.Person::name)
                .map(name -> new String[] {name})
                .orElse(new String[0]);
    }

    private DataSet series() {
        return new DataSet()
                .put(Tag.REFERENCED_IMAGE_SEQUENCE, List.of(ContentWriter.instance(instance)))
                .put(
                        Tag.SERIES_INSTANCE_UID,
                        header.string(Tag.SERIES_INSTANCE_UID).orElseThrow());
    }

    /** The whole image; corners are pixels counted from 1 (C.10.4). */
    private DataSet displayedArea() {
        return new DataSet()
                .put(Tag.REFERENCED_IMAGE_SEQUENCE, List.of(ContentWriter.instance(instance)))
                .put(Tag.DISPLAYED_AREA_TOP_LEFT_HAND_CORNER, 1, 1)
                .put(Tag.DISPLAYED_AREA_BOTTOM_RIGHT_HAND_CORNER, geometry.columns(), geometry.rows())
                .put(Tag.PRESENTATION_SIZE_MODE, "SCALE TO FIT")
                .put(Tag.PRESENTATION_PIXEL_ASPECT_RATIO, aspect());
    }

    /** Height to width of a pixel, in lowest terms; square where the frame has no scale. */
    private String[] aspect() {
        CaseDocument document = source.revision().document();
        Optional<PixelSize> pixel = Scales.of(
                        geometry, document.probe(), List.of(document.marks().target()))
                .map(Calibration::pixel);
        BigInteger height =
                BigInteger.valueOf(Math.round(pixel.map(PixelSize::mmPerRow).orElse(1.0) * NM_PER_MM));
        BigInteger width =
                BigInteger.valueOf(Math.round(pixel.map(PixelSize::mmPerColumn).orElse(1.0) * NM_PER_MM));
        BigInteger both = height.gcd(width);
        return new String[] {height.divide(both).toString(), width.divide(both).toString()};
    }

    /**
     * What the frame itself says on how its samples become grey: an absent stage would be taken for none (C.11.1, C.11.8).
     */
    private void greyLevels(DataSet state) {
        List<DataSet> sources =
                FrameGeometryReader.sources(header, use.placed().ref().frameNumber());
        first(sources, Tag.MODALITY_LUT_SEQUENCE)
                .ifPresentOrElse(
                        from -> state.copy(Tag.MODALITY_LUT_SEQUENCE, from),
                        () -> first(sources, Tag.RESCALE_SLOPE).ifPresent(from -> rescale(state, from)));
        window(sources).ifPresent(window -> state.put(Tag.SOFTCOPY_VOI_LUT_SEQUENCE, List.of(window)));
        boolean inverse = header.string(Tag.PHOTOMETRIC_INTERPRETATION)
                .filter("MONOCHROME1"::equals)
                .isPresent();
        state.put(Tag.PRESENTATION_LUT_SHAPE, inverse ? "INVERSE" : "IDENTITY");
    }

    private static void rescale(DataSet state, DataSet from) {
        state.put(Tag.RESCALE_INTERCEPT, from.string(Tag.RESCALE_INTERCEPT).orElse("0"))
                .put(Tag.RESCALE_SLOPE, from.string(Tag.RESCALE_SLOPE).orElseThrow())
                .put(Tag.RESCALE_TYPE, from.string(Tag.RESCALE_TYPE).orElse("US"));
    }

    /** The first window or table, as the frame is shown without a presentation state. */
    private static Optional<DataSet> window(List<DataSet> sources) {
        Optional<DataSet> table = first(sources, Tag.VOI_LUT_SEQUENCE)
                .map(from -> from.items(Tag.VOI_LUT_SEQUENCE))
                .filter(items -> !items.isEmpty())
                .map(items -> new DataSet().put(Tag.VOI_LUT_SEQUENCE, List.of(items.get(0))));
        return first(sources, Tag.WINDOW_CENTER)
                .filter(from -> from.string(Tag.WINDOW_WIDTH).isPresent())
                .map(from -> {
                    DataSet window = new DataSet()
                            .put(
                                    Tag.WINDOW_CENTER,
                                    from.string(Tag.WINDOW_CENTER).orElseThrow())
                            .put(Tag.WINDOW_WIDTH, from.string(Tag.WINDOW_WIDTH).orElseThrow());
                    from.string(Tag.VOI_LUT_FUNCTION).ifPresent(function -> window.put(Tag.VOI_LUT_FUNCTION, function));
                    return window;
                })
                .or(() -> table);
    }

    private static Optional<DataSet> first(List<DataSet> sources, int tag) {
        return sources.stream()
                .filter(candidate ->
                        !candidate.items(tag).isEmpty() || candidate.string(tag).isPresent())
                .findFirst();
    }

    private static void layers(DataSet state, List<DataSet> annotations) {
        List<String> used = annotations.stream()
                .flatMap(annotation -> annotation.string(Tag.GRAPHIC_LAYER).stream())
                .distinct()
                .toList();
        List<DataSet> layers = new ArrayList<>();
        for (GraphicLayer layer : GraphicLayer.values()) {
            if (used.contains(layer.name())) {
                layers.add(layer.item());
            }
        }
        state.put(Tag.GRAPHIC_LAYER_SEQUENCE, layers);
    }
}
