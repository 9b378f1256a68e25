// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.observation;

import dev.plumbline.geometry.Assumption;
import dev.plumbline.geometry.Calibration;
import dev.plumbline.geometry.CaseInputs;
import dev.plumbline.geometry.FrameGeometry;
import dev.plumbline.geometry.MarkPx;
import dev.plumbline.geometry.MarkedFrame;
import dev.plumbline.geometry.NamedMark;
import dev.plumbline.geometry.PointMm;
import dev.plumbline.geometry.ProbeFrame;
import dev.plumbline.geometry.SpeedOfSound;
import dev.plumbline.plan.PlanDraft;
import dev.plumbline.plan.PlanInput;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.RealFieldElement;

/**
 * The frame of an observation with its marks. What was not marked on it is taken from the plan where the same spot of the
 * image shows the same thing: on the same picture, or where size and scale of the frames are equal and the probe is
 * assumed not to have moved.
 *
 * @param axes empty without a skin line
 * @param shaft as marked, on the display's axes
 * @param tip on the display's axes
 */
record ObservedFrame<T extends RealFieldElement<T>>(
        PlanDraft<T> plan,
        ObservationInput input,
        MarkedFrame<T> frame,
        Optional<ProbeFrame<T>> axes,
        List<PointMm<T>> shaft,
        Optional<PointMm<T>> tip,
        List<Assumption> inherited) {
    static Calibration calibration(ObservationInput input, String pointer, PlanInput plan) {
        List<NamedMark> marks = new ArrayList<>();
        input.marks().target().ifPresent(target -> marks.add(new NamedMark(pointer + "/target", target)));
        for (int i = 0; i < input.marks().shaft().size(); i++) {
            marks.add(
                    new NamedMark(pointer + "/shaft/" + i, input.marks().shaft().get(i)));
        }
        input.marks().tip().ifPresent(tip -> marks.add(new NamedMark(pointer + "/tip", tip)));
        if (input.marks().target().isEmpty() && inherits(input, plan.frame())) {
            marks.add(new NamedMark("/marks/target", plan.marks().target()));
        }
        String frame = pointer + "/frame";
        return SpeedOfSound.applied(
                plan.probe().speedOfSoundMPerS(),
                marks.isEmpty()
                        ? input.frame().calibration(frame)
                        : input.frame().calibration(frame, marks));
    }

    static boolean inherits(ObservationInput input, FrameGeometry planned) {
        return input.samePictureAsPlan() || input.frame().sameGeometryAs(planned);
    }

    static <T extends RealFieldElement<T>> ObservedFrame<T> of(
            ObservationInput input, String pointer, PlanDraft<T> plan, CaseInputs<T> inputs) {
        ObservationMarks marks = input.marks();
        boolean inherits = inherits(input, plan.frame().geometry());
        Calibration calibration = calibration(input, pointer, plan.input());
        MarkedFrame<T> planned = plan.frame();
        boolean ownSkin = !marks.skin().isEmpty();
        boolean planSkin = inherits && !ownSkin && !planned.skin().isEmpty();
        MarkedFrame<T> frame = new MarkedFrame<>(
                input.frame(),
                calibration,
                inputs.scale(input.frame(), calibration),
                marks.midpoint().map(inputs::mark).or(() -> inherits ? planned.midpoint() : Optional.empty()),
                marks.target().map(inputs::mark).or(() -> inherits ? planned.target() : Optional.empty()),
                planSkin ? planned.skin() : inputs.marks(marks.skin()),
                planSkin && planned.skinAssumed());
        List<MarkPx<T>> shaft = inputs.marks(marks.shaft());
        Optional<MarkPx<T>> tip = marks.tip().map(inputs::mark);
        String skinPointer = ownSkin ? pointer + "/skin" : "/marks/skin";
        return new ObservedFrame<>(
                plan,
                input,
                frame,
                frame.probeFrame(plan.orientation(), skinPointer),
                shaft.stream().map(frame.scale()::onDisplay).toList(),
                tip.map(frame.scale()::onDisplay),
                assumptions(input, planned, frame));
    }

    private static <T extends RealFieldElement<T>> List<Assumption> assumptions(
            ObservationInput input, MarkedFrame<T> planned, MarkedFrame<T> frame) {
        ObservationMarks marks = input.marks();
        List<Assumption> assumptions = new ArrayList<>();
        boolean targetTaken = marks.target().isEmpty() && frame.target().isPresent();
        boolean anyTaken = targetTaken
                || (marks.midpoint().isEmpty() && frame.midpoint().isPresent())
                || (marks.skin().isEmpty() && !frame.skin().isEmpty());
        if (anyTaken && !input.samePictureAsPlan()) {
            assumptions.add(Assumption.PROBE_NOT_MOVED);
        }
        if (targetTaken && planned.target().isPresent()) {
            assumptions.add(Assumption.TARGET_DID_NOT_MOVE);
        }
        return assumptions;
    }

    /** The tip only counts as such when a person says that it is. */
    boolean tipConfirmed() {
        return tip.isPresent() && input.marks().tipIsTip().orElse(false);
    }
}
