// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.geometry.InputUncertainty;
import dev.plumbline.geometry.KnownDistance;
import dev.plumbline.geometry.PointPx;
import dev.plumbline.geometry.Probe;
import dev.plumbline.geometry.Repeat;
import dev.plumbline.geometry.Shape;
import dev.plumbline.geometry.Side;
import dev.plumbline.geometry.SkinBeyondProbe;
import dev.plumbline.needle.Needle;
import dev.plumbline.needle.NeedleWish;
import dev.plumbline.needle.TipType;
import dev.plumbline.observation.ObservationMarks;
import dev.plumbline.observation.Phase;
import dev.plumbline.plan.Approach;
import dev.plumbline.plan.Constraints;
import dev.plumbline.plan.Hazard;
import dev.plumbline.plan.Intent;
import dev.plumbline.plan.Nerve;
import dev.plumbline.plan.PlanMarks;
import dev.plumbline.plan.TargetKind;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.record.CaseDocument;
import dev.plumbline.record.Context;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.ObservedFrame;
import dev.plumbline.record.Order;
import dev.plumbline.record.Signature;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.RandomDistribution;

/** Case documents with every field stated or not, at random; any seed gives a valid one. */
public final class CaseDocuments {
    private final Random random;

    private CaseDocuments(Random random) {
        this.random = random;
    }

    /** Documents that any door takes. */
    public static Arbitrary<CaseDocument> any() {
        return Arbitraries.longs()
                .withDistribution(RandomDistribution.uniform())
                .map(seed -> of(seed));
    }

    /** Documents that also say what was said and done at the bedside. */
    public static Arbitrary<CaseDocument> atTheBedside() {
        return Arbitraries.longs()
                .withDistribution(RandomDistribution.uniform())
                .map(CaseDocuments::atTheBedside);
    }

    public static CaseDocument atTheBedside(long seed) {
        Random random = new Random(seed);
        CaseDocument plain = new CaseDocuments(random).document();
        return new CaseDocument(
                plain.caseId(),
                plain.technique(),
                plain.frame(),
                plain.probe(),
                plain.marks(),
                plain.needle(),
                plain.intent(),
                plain.constraints(),
                plain.uncertainty(),
                plain.observations(),
                plain.context(),
                Bedsides.of(random),
                plain.signature()
                        .map(s -> new Signature(
                                s.name(),
                                s.organization(),
                                s.role(),
                                s.time(),
                                random.nextBoolean() ? Map.of() : Map.of("consent", "emergency", "pain", "asleep"))));
    }

    static CaseDocument of(long seed) {
        return new CaseDocuments(new Random(seed)).document();
    }

    private CaseDocument document() {
        Approach approach = one(Approach.values());
        return new CaseDocument(
                maybe(() -> "case-" + random.nextInt(1000)),
                approach,
                frame(),
                maybe(this::probe).orElse(Probe.NOTHING_STATED),
                marks(),
                maybe(() -> new Needle(
                                maybeInt(18, 27), maybeNumber(20, 150), maybe(random::nextBoolean), maybe(this::wish)))
                        .orElse(Needle.NOTHING_STATED),
                maybe(() -> intent(approach)),
                maybe(this::constraints).orElse(Constraints.NOTHING_STATED),
                maybe(this::uncertainty).orElse(InputUncertainty.NOTHING_STATED),
                observations(),
                maybe(this::context).orElse(Context.NOTHING_STATED),
                maybe(() -> new Signature(name(), maybe(this::name), maybe(this::name), time())));
    }

    private FrameRef frame() {
        return random.nextBoolean()
                ? new FrameRef.Held(
                        "2.25." + random.nextInt(Integer.MAX_VALUE) /* two mentions of one frame share a scale */,
                        1 + random.nextInt(9),
                        maybe(this::scale))
                : new FrameRef.Stated(640, 480, number(0.01, 0.2), number(0.01, 0.2));
    }

    private KnownDistance scale() {
        PointPx from = point();
        return new KnownDistance(from, new PointPx(from.column() < 300 ? 600 : 20, from.row()), number(5, 80));
    }

    private Probe probe() {
        return new Probe(
                maybe(() -> one(Probe.Kind.values())),
                maybeNumber(10, 80),
                maybe(this::point),
                maybe(() -> one(Side.values())),
                maybeNumber(0.5, 3),
                maybe(this::skinBeyondProbe),
                maybeNumber(30, 90),
                maybeNumber(5, 20),
                maybe(random::nextBoolean),
                maybeNumber(10, 80),
                maybeNumber(1400, 1700));
    }

    private NeedleWish wish() {
        return new NeedleWish(
                random.nextBoolean() ? List.of() : List.of(one(TipType.values()), one(TipType.values())),
                random.nextBoolean() ? List.of() : List.of(18 + random.nextInt(10)),
                Optional.of(random.nextBoolean()));
    }

    private SkinBeyondProbe skinBeyondProbe() {
        return switch (random.nextInt(3)) {
            case 0 -> new SkinBeyondProbe.Flat();
            case 1 -> new SkinBeyondProbe.Round(number(30, 200));
            default -> new SkinBeyondProbe.Drop(number(-20, 20), number(20, 60));
        };
    }

    private PlanMarks marks() {
        return new PlanMarks(
                point(),
                maybe(() -> one(TargetKind.values())),
                line(),
                IntStream.range(0, random.nextInt(3))
                        .mapToObj(i -> new Nerve("nerve " + i, shape()))
                        .toList(),
                IntStream.range(0, random.nextInt(3))
                        .mapToObj(i ->
                                new Hazard("h\u00e4zard \"" + i, one(Hazard.Kind.values()), maybeNumber(0, 5), shape()))
                        .toList());
    }

    private Shape shape() {
        return random.nextBoolean()
                ? new Shape.Disc(point(), number(0.5, 10))
                : new Shape.Outline(points(3 + random.nextInt(4)));
    }

    private Intent intent(Approach approach) {
        if (approach == Approach.OUT_OF_PLANE) {
            return new Intent.PunctureDistance(number(0, 40));
        }
        return switch (random.nextInt(3)) {
            case 0 -> new Intent.EntryDistance(number(-60, 60));
            case 1 -> new Intent.AngleToSkin(number(5, 90));
            default -> new Intent.EntryMark(point());
        };
    }

    private Constraints constraints() {
        return new Constraints(
                maybe(() -> new Constraints.Band(number(10, 40), number(41, 80))),
                maybeNumber(0, 10),
                maybe(random::nextBoolean),
                maybeNumber(0, 20),
                maybeNumber(0, 10),
                maybeNumber(0, 10),
                maybeNumber(1, 60),
                maybeNumber(0, 30),
                maybe(() -> one(Constraints.Preference.values())),
                maybeNumber(30, 80),
                maybeNumber(10, 50),
                maybeNumber(5, 20));
    }

    private InputUncertainty uncertainty() {
        return new InputUncertainty(
                maybeNumber(0.1, 3),
                maybeNumber(0, 0.05),
                maybe(() -> new InputUncertainty.ScannerTolerance(number(0, 2), number(0, 5))));
    }

    private List<ObservedFrame> observations() {
        return IntStream.range(0, random.nextInt(3))
                .mapToObj(i -> new ObservedFrame(
                        new ObservationMarks(
                                "seen-" + i,
                                maybe(() -> one(Phase.values())),
                                line(),
                                maybe(this::point),
                                maybe(random::nextBoolean),
                                maybe(this::point),
                                maybe(this::point),
                                line(),
                                maybeNumber(0, 40)),
                        frame()))
                .toList();
    }

    private Context context() {
        return new Context(
                maybe(() -> "axillaryBrachialPlexus"),
                maybe(() -> one(Laterality.values())),
                maybe(() -> new Context.Person(name(), maybe(this::name))),
                maybe(this::order));
    }

    private Order order() {
        List<Order.Resolution> resolved = new ArrayList<>();
        for (Order.Item item : Order.Item.values()) {
            if (random.nextInt(3) == 0) {
                Order.Holder take =
                        item.holders().get(random.nextInt(item.holders().size()));
                resolved.add(new Order.Resolution(item, take, name(), "asked the \\ ward"));
            }
        }
        return new Order(
                new Order.Patient(
                        maybe(() -> one(new String[] {"SAMPLE-1", "other", "with space"})),
                        maybe(this::name),
                        maybe(this::name),
                        maybe(() -> "1970-01-3" + random.nextInt(2)),
                        maybe(() -> one(new String[] {"F", "M", "O"}))),
                maybe(() -> "ACC-" + random.nextInt(9)),
                maybe(() -> new Order.Procedure(Optional.of("RP-1"), maybe(this::name))),
                maybe(() -> new Order.Procedure(maybe(() -> "SPS-1"), Optional.of("Block, right"))),
                maybe(() -> "2.25." + random.nextInt(9)),
                maybe(this::name),
                maybe(() -> one(Laterality.values())),
                resolved);
    }

    private String name() {
        return one(new String[] {"Doe^Jo", "Mu\u0308ster^A", "Probe-Person^\u5c71\u7530", "x"});
    }

    private OffsetDateTime time() {
        return OffsetDateTime.of(
                2000 + random.nextInt(50),
                1 + random.nextInt(12),
                1 + random.nextInt(28),
                random.nextInt(24),
                random.nextInt(60),
                random.nextInt(3) * 20,
                random.nextInt(2) * 250_000_000,
                ZoneOffset.ofHoursMinutes(random.nextInt(12), random.nextInt(2) * 30));
    }

    private List<PointPx> line() {
        return random.nextBoolean() ? List.of() : points(2 + random.nextInt(4));
    }

    private List<PointPx> points(int count) {
        List<PointPx> points = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            points.add(point());
        }
        return points;
    }

    /** Marked once, or now and then several times. */
    private PointPx point() {
        PointPx first = onGrid(number(0, 640), number(0, 480));
        if (random.nextInt(6) != 0) {
            return first;
        }
        List<Repeat> repeats = new ArrayList<>();
        for (int i = 0; i < 3 + random.nextInt(3); i++) {
            PointPx near = onGrid(
                    Math.min(640, first.column() + random.nextDouble()),
                    Math.min(480, first.row() + random.nextDouble()));
            repeats.add(new Repeat(near.column(), near.row(), maybe(this::name)));
        }
        return PointPx.meanOf(repeats);
    }

    private static PointPx onGrid(double column, double row) {
        return new PointPx(column, row).onGrid();
    }

    private double number(double low, double high) {
        double value = low + (high - low) * random.nextDouble();
        return random.nextBoolean() ? value : Math.max(low, Math.rint(value)) + 0.0; // no negative zero
    }

    private OptionalDouble maybeNumber(double low, double high) {
        return random.nextBoolean() ? OptionalDouble.of(number(low, high)) : OptionalDouble.empty();
    }

    private OptionalInt maybeInt(int low, int high) {
        return random.nextBoolean() ? OptionalInt.of(low + random.nextInt(high - low + 1)) : OptionalInt.empty();
    }

    private <T> Optional<T> maybe(Supplier<T> value) {
        return random.nextBoolean() ? Optional.of(value.get()) : Optional.empty();
    }

    private <T> T one(T[] values) {
        return values[random.nextInt(values.length)];
    }
}
