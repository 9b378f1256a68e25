// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.plumbline.CaseFixture;
import dev.plumbline.geometry.Gradient;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Reading;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.geometry.Spot;
import dev.plumbline.problem.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Feasible entries and clearances equal those of brute force. */
class HazardPropertyTest {
    /** Brute force walks in steps; nearer to a bound than this it cannot tell. */
    private static final double BLUR_MM = 0.25;

    private static final int ENTRIES = 15;

    private final CaseFixture fixture = new CaseFixture();

    private static Shape star(CaseFixture fixture, Random random, double u, double w) {
        int corners = 3 + random.nextInt(6);
        List<PointPx> outline = new ArrayList<>();
        for (int i = 0; i < corners; i++) {
            double angle = 2 * Math.PI * (i + 0.8 * random.nextDouble()) / corners;
            double radius = 1.5 + 7 * random.nextDouble();
            outline.add(onFrame(fixture.at(u + radius * Math.cos(angle), w + radius * Math.sin(angle))));
        }
        return new Shape.Outline(outline);
    }

    private static PointPx onFrame(PointPx point) {
        return new PointPx(Math.min(2000, Math.max(0, point.column())), Math.min(2000, Math.max(0, point.row())));
    }

    private Shape shape(Random random) {
        // Anywhere between the target's far side and behind the entry, some of them across the skin.
        double u = -15 + 60 * random.nextDouble();
        double w = -3 + 45 * random.nextDouble();
        if (random.nextBoolean()) {
            return star(fixture, random, u, w);
        }
        return new Shape.Disc(onFrame(fixture.at(u, w)), 0.5 + 5 * random.nextDouble());
    }

    private SkinBeyondProbe skin(Random random) {
        return switch (random.nextInt(3)) {
            case 0 -> new SkinBeyondProbe.Flat();
            case 1 -> new SkinBeyondProbe.Round(45 + 60 * random.nextDouble());
            default -> new SkinBeyondProbe.Drop(10 * random.nextDouble(), 25 + 30 * random.nextDouble());
        };
    }

    @Property(tries = 300)
    void entriesAllowedByOneHazardAreThoseOfBruteForce(
            @ForAll long seed,
            @ForAll @DoubleRange(min = 5, max = 40) double depth,
            @ForAll @IntRange(min = 0, max = 2) int marginKind) {
        Random random = new Random(seed);
        double margin = marginKind == 0 ? 0 : 4 * random.nextDouble();
        fixture.targetU = -6 + 12 * random.nextDouble();
        fixture.targetW = depth;
        agrees(shape(random), margin, random);
    }

    /** The kinds of scene in which a short cut would go wrong, each many times. */
    private enum Scene {
        ACROSS_THE_SKIN,
        CONCAVE,
        WITHIN_THE_MARGIN_OF_THE_TARGET,
        BEHIND_THE_ENTRY
    }

    private Shape shape(Scene scene, double margin, Random random) {
        double u = fixture.targetU;
        double w = fixture.targetW;
        return switch (scene) {
            case ACROSS_THE_SKIN -> {
                double radius = 1 + 4 * random.nextDouble();
                yield new Shape.Disc(
                        onFrame(fixture.at(20 + 25 * random.nextDouble(), radius * (2 * random.nextDouble() - 1))),
                        radius);
            }
            case CONCAVE -> hook(u + 5 + 15 * random.nextDouble(), w * (0.2 + 0.6 * random.nextDouble()), random);
            case WITHIN_THE_MARGIN_OF_THE_TARGET -> {
                double radius = 1 + 3 * random.nextDouble();
                double away = radius + margin * (0.3 + 0.6 * random.nextDouble());
                double direction = 2 * Math.PI * random.nextDouble();
                yield new Shape.Disc(
                        onFrame(fixture.at(u + away * Math.cos(direction), w + away * Math.sin(direction))), radius);
            }
            case BEHIND_THE_ENTRY ->
                new Shape.Disc(onFrame(fixture.at(35 + 12 * random.nextDouble(), 2 + 4 * random.nextDouble())), 2);
        };
    }

    /** A hook: a path can run into its hollow without crossing it, and out again through it. */
    private Shape hook(double u, double w, Random random) {
        double arm = 3 + 5 * random.nextDouble();
        double turn = 2 * Math.PI * random.nextDouble();
        double[][] corners = {{-1, -1}, {1, -1}, {1, 1}, {-1, 1}, {-1, 0.6}, {0.5, 0.6}, {0.5, -0.6}, {-1, -0.6}};
        List<PointPx> outline = new ArrayList<>();
        for (double[] corner : corners) {
            outline.add(onFrame(fixture.at(
                    u + arm * (corner[0] * Math.cos(turn) - corner[1] * Math.sin(turn)),
                    w + arm * (corner[0] * Math.sin(turn) + corner[1] * Math.cos(turn)))));
        }
        return new Shape.Outline(outline);
    }

    @Property(tries = 120)
    void theAwkwardScenesAreThoseOfBruteForce(@ForAll long seed, @ForAll Scene scene) {
        Random random = new Random(seed);
        double margin = 1 + 3 * random.nextDouble();
        fixture.targetU = -6 + 12 * random.nextDouble();
        fixture.targetW = 10 + 25 * random.nextDouble();
        agrees(shape(scene, margin, random), margin, random);
    }

    private void agrees(Shape shape, double margin, Random random) {
        double depth = fixture.targetW;
        SkinBeyondProbe skin = skin(random);
        double overshoot = random.nextInt(3) == 0 ? 0 : 6 * random.nextDouble();
        fixture.footprint = OptionalDouble.of(30);
        fixture.skinBeyond = Optional.of(skin);
        fixture.constraints = new ConstraintsFixture().overshoot(overshoot).build();
        fixture.hazards.clear();
        fixture.hazards.add(new Hazard("vessel", Hazard.Kind.ARTERY, OptionalDouble.of(margin), shape));

        BruteForce brute = new BruteForce(fixture.targetU, depth, overshoot, skin);
        List<double[]> corners = BruteForce.corners(shape, 0.05, fixture.at(0, 0));
        double radius = shape instanceof Shape.Disc disc ? disc.radiusMm() : 0;
        double targetClearance = brute.targetClearance(corners, radius);
        Assume.that(targetClearance > BLUR_MM);
        double required = Math.min(margin, targetClearance);

        InPlaneScene<Gradient> scene = Scenes.nominal(fixture.input());
        Assume.that(scene.obstacles().ignored().isEmpty() && scene.targetInTissue());
        EntryLimits limits = new EntryLimits(scene);
        Intervals others = limits.without(Optional.of(new Limit(Limit.Kind.HAZARD, Optional.of("vessel"))));
        Intervals feasible = limits.feasible();
        Assume.that(!others.isEmpty());
        for (int i = 0; i < ENTRIES; i++) {
            double far = Math.min(others.greatest(), 90);
            double entry = others.least() + Math.max(0, far - others.least()) * random.nextDouble();
            double clearance = brute.clearance(corners, radius, entry, 15);
            double exact = limits.leastClearance(entry);
            if (clearance > 0) {
                assertThat(exact).as("clearance at %s", entry).isCloseTo(clearance, within(BLUR_MM));
            } else {
                assertThat(exact).as("crossing at %s", entry).isLessThan(BLUR_MM);
            }
            if (Math.abs(clearance - required) > BLUR_MM) {
                assertThat(feasible.holds(entry))
                        .as("entry %s keeps %s of %s", entry, clearance, required)
                        .isEqualTo(clearance > required);
            }
        }
        // The bounds themselves are allowed, and just beyond them nothing is.
        Spot target = scene.targetSpot();
        double asked =
                Math.min(margin, scene.obstacles().hazards().get(0).nominal().clearance(target, target));
        for (InPlanePlan.Interval part : feasible.parts()) {
            for (double bound : new double[] {part.low(), part.high()}) {
                assertThat(limits.leastClearance(bound)).isGreaterThanOrEqualTo(asked - 1e-6);
            }
        }
    }

    @Property(tries = 200)
    void aProposedPathNeverBreaksALimit(@ForAll long seed) {
        Random random = new Random(seed);
        fixture.intent = Optional.empty();
        fixture.targetU = -6 + 12 * random.nextDouble();
        fixture.targetW = 5 + 30 * random.nextDouble();
        fixture.needleLength = OptionalDouble.of(30 + 70 * random.nextDouble());
        fixture.skinBeyond = Optional.of(skin(random));
        fixture.constraints =
                new ConstraintsFixture().leadInMax(5 + 40 * random.nextDouble()).build();
        fixture.hazards.clear();
        fixture.nerves.clear();
        for (int i = 0; i < 4; i++) {
            fixture.hazards.add(new Hazard(
                    "hazard " + i, Hazard.Kind.OTHER, OptionalDouble.of(2 * random.nextDouble()), shape(random)));
        }
        fixture.nerves.add(new Nerve("nerve", shape(random)));
        InPlanePlan plan;
        try {
            plan = (InPlanePlan) Plan.of(fixture.input());
        } catch (Refusal refusal) {
            assertThat(refusal.problem().pointer()).isEqualTo("/marks/target");
            return;
        }
        if (!plan.feasible()) {
            assertThat(plan.judgement().binding()).isNotEmpty();
            assertThat(plan.choices().feasibleEntries()).isEmpty();
            return;
        }
        Reading.Seen entry = (Reading.Seen) plan.readings().of(PlanQuantity.ENTRY_DISTANCE);
        fixture.intent(new Intent.EntryDistance(entry.value()));
        InPlanePlan stated = (InPlanePlan) Plan.of(fixture.input());
        assertThat(stated.judgement().binding()).isEmpty();
        Reading.Seen path = (Reading.Seen) plan.readings().of(PlanQuantity.PATH);
        assertThat(path.value() + 10).isLessThanOrEqualTo(fixture.needleLength.getAsDouble() + 1e-6);
        assertThat(entry.value()).isGreaterThanOrEqualTo(24 - 1e-6);
    }
}
