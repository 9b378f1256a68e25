// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.document;

import dev.plumbline.agents.AgentEntry;
import dev.plumbline.agents.Basis;
import dev.plumbline.agents.Dose;
import dev.plumbline.agents.Exceeding;
import dev.plumbline.agents.Labelled;
import dev.plumbline.agents.Mass;
import dev.plumbline.agents.OtherDoses;
import dev.plumbline.agents.Patient;
import dev.plumbline.agents.Route;
import dev.plumbline.agents.Stage;
import dev.plumbline.agents.Volume;
import dev.plumbline.agents.Weight;
import dev.plumbline.procedure.CheckEntry;
import dev.plumbline.procedure.Happening;
import dev.plumbline.procedure.Laterality;
import dev.plumbline.procedure.LoggedEvent;
import dev.plumbline.procedure.Pain;
import dev.plumbline.procedure.ProcedureContext;
import dev.plumbline.procedure.Resistance;
import dev.plumbline.procedure.SetUpChecks;
import dev.plumbline.procedure.SightDetail;
import dev.plumbline.procedure.Spread;
import dev.plumbline.procedure.StopMoment;
import dev.plumbline.procedure.Supervision;
import dev.plumbline.record.Bedside;
import dev.plumbline.record.FrameRef;
import dev.plumbline.record.FrameRole;
import dev.plumbline.record.KeptFrame;
import dev.plumbline.record.Surroundings;
import dev.plumbline.record.TeamMember;
import dev.plumbline.sight.Seen;
import dev.plumbline.sight.StopSign;
import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** What can be said at the bedside, every field stated or not, at random; any seed gives something that is read. */
final class Bedsides {
    private static final OffsetDateTime TEN = OffsetDateTime.parse("2026-01-05T10:00:00+01:00");

    private final Random random;

    private Bedsides(Random random) {
        this.random = random;
    }

    static Bedside of(Random random) {
        return new Bedsides(random).bedside();
    }

    private Bedside bedside() {
        return new Bedside(
                maybe(() -> "session-1"),
                some(i -> new TeamMember(
                        "m" + i,
                        "Roe^Al",
                        maybe(() -> "assistant"),
                        maybe(() -> "consultant"),
                        maybe(() -> one(Supervision.values())))),
                some(i -> new CheckEntry("c" + i, answered("survey"))),
                some(this::event),
                some(this::agent),
                maybe(this::surroundings).orElse(Surroundings.NOTHING_STATED),
                maybe(() -> "As planned; differs from plan by little."),
                maybe(() -> one(SightDetail.values())),
                some(this::kept));
    }

    private SetUpChecks.Answered answered(String check) {
        SetUpChecks.Answer answer = one(SetUpChecks.Answer.values());
        return new SetUpChecks.Answered(
                check,
                answer,
                answer == SetUpChecks.Answer.NOT_DONE ? Optional.of("no time") : maybe(() -> "remark"),
                "Roe^Al",
                time());
    }

    /** The first may be one that something is made on. */
    private KeptFrame kept(int i) {
        return new KeptFrame(new FrameRef.Held("2.25.7" + (7 - i), 3), one(FrameRole.values()));
    }

    private LoggedEvent event(int i) {
        OffsetDateTime at = time();
        Happening what = happening();
        if (random.nextInt(4) == 0) {
            boolean ownReason = what instanceof Happening.PlanChanged || what instanceof Happening.Halt;
            what = new Happening.Correction(
                    "e0", Optional.of(what), ownReason ? Optional.empty() : maybe(() -> "wrong button"));
        }
        return new LoggedEvent("e" + i, what, at, at.plusSeconds(random.nextInt(90)), "Roe^Al", random.nextBoolean());
    }

    private Happening happening() {
        return switch (random.nextInt(17)) {
            case 0 ->
                new Happening.Stopped(
                        new StopMoment(
                                List.of("Doe^Jo", "Roe^Al"),
                                "axillaryBrachialPlexus",
                                one(Laterality.values()),
                                random.nextBoolean(),
                                random.nextBoolean()),
                        1 + random.nextInt(3));
            case 1 -> new Happening.Puncture(1 + random.nextInt(3));
            case 2 -> new Happening.Redirection();
            case 3 -> new Happening.Pass();
            case 4 -> new Happening.Sight(one(Seen.values()), maybe(() -> "slide"));
            case 5 -> new Happening.Doppler(maybe(() -> "no flow in the path"));
            case 6 -> new Happening.Aspiration(random.nextBoolean());
            case 7 -> new Happening.Halt(maybe(() -> one(StopSign.values())), maybe(() -> "asked by the patient"));
            case 8 -> new Happening.PlanChanged("vessel in the path");
            case 9 -> new Happening.ContextChanged(one(Happening.ContextChanged.What.values()));
            case 10 -> new Happening.NeedleOut();
            case 11 -> new Happening.Complication("vascularPuncture", maybe(() -> "pressed for 5 min"));
            case 12 -> new Happening.LookedForComplications("Doe^Jo");
            case 13 -> new Happening.NearMiss("wrong syringe seen in time");
            case 14 -> new Happening.HandOver("Poe^An");
            default -> aliquot();
        };
    }

    private Happening aliquot() {
        boolean agent = random.nextBoolean();
        return new Happening.Aliquot(
                new Volume(decimal(1, 300, 1)),
                agent ? maybe(() -> "local anaesthetic") : Optional.of("saline"),
                agent ? Optional.of("a0") : Optional.empty(),
                random.nextBoolean(),
                maybe(() -> one(Spread.values())),
                maybe(() -> random.nextBoolean()
                        ? new Resistance.Felt(one(Resistance.Word.values()))
                        : new Resistance.Measured(decimal(0, 999, 1), "kPa", "in-line gauge")),
                maybe(() -> one(Pain.values())));
    }

    private AgentEntry agent(int i) {
        Map<Stage, Volume> volumes = new EnumMap<>(Stage.class);
        maybe(() -> volumes.put(Stage.PLANNED, new Volume(decimal(0, 400, 1))));
        maybe(() -> volumes.put(Stage.DRAWN_UP, new Volume(decimal(200, 400, 1))));
        maybe(() -> volumes.put(Stage.GIVEN, new Volume(decimal(0, 100, 1))));
        maybe(() -> volumes.put(Stage.DISCARDED, new Volume(decimal(0, 100, 1))));
        return new AgentEntry(
                "a" + i,
                maybe(() -> "a0"),
                new AgentEntry.Solution(
                        "bupivacaine",
                        one(Basis.values()),
                        labelled(),
                        some(j -> new AgentEntry.Additive("epinephrine", one(Basis.values()), labelled()))),
                new AgentEntry.Handling(
                        one(new Dose.Purpose[] {
                            Dose.Purpose.BLOCK, Dose.Purpose.SKIN_INFILTRATION, Dose.Purpose.HYDROLOCATION
                        }),
                        one(Route.values()),
                        maybe(() -> "single shot"),
                        maybe(() -> "mix-1")),
                volumes,
                new AgentEntry.Packaging(maybe(() -> "Brand"), maybe(() -> "L-1")),
                maybe(() -> new Exceeding("second block needed", "Doe^Jo", time())));
    }

    private Labelled labelled() {
        return switch (random.nextInt(4)) {
            case 0 -> new Labelled(decimal(1, 400, 2), Labelled.Form.PERCENT);
            case 1 -> new Labelled(decimal(1, 4000, 2), Labelled.Form.MG_PER_ML);
            case 2 -> new Labelled(decimal(1, 900, 1), Labelled.Form.MICROGRAMS_PER_ML);
            default -> new Labelled(BigDecimal.valueOf(200_000), Labelled.Form.ONE_IN);
        };
    }

    private Surroundings surroundings() {
        Set<ProcedureContext.Localisation> found = new HashSet<>();
        for (ProcedureContext.Localisation way : ProcedureContext.Localisation.values()) {
            maybe(() -> found.add(way));
        }
        ProcedureContext said = new ProcedureContext(
                maybe(() -> "hand surgery"),
                found,
                maybe(() -> one(ProcedureContext.PatientState.values())),
                maybe(() -> "supine"),
                maybe(() -> one(ProcedureContext.Allergies.values())),
                maybe(() -> "latex"),
                maybe(() -> one(ProcedureContext.Coagulation.values())),
                maybe(() -> one(ProcedureContext.Neurology.values())),
                maybe(() -> "chlorhexidine"),
                maybe(() -> "left hand"),
                maybe(() -> "ECG, pulse oximetry"),
                some(i -> "L-" + i));
        return new Surroundings(
                said,
                new Patient(
                        maybe(() -> new Weight(decimal(400, 1200, 1), one(Weight.Source.values()))),
                        maybe(() -> decimal(400, 1200, 1)),
                        maybe(() -> decimal(400, 1200, 1)),
                        random.nextBoolean() ? OptionalInt.of(random.nextInt(100)) : OptionalInt.empty()),
                maybe(() -> decimal(1400, 2000, 1)),
                maybe(() -> answered("consent")),
                otherToday(),
                random.nextBoolean(),
                maybe(() -> one(Laterality.values())),
                maybe(() -> "marked on the wrong image"));
    }

    private Surroundings.OtherToday otherToday() {
        return switch (random.nextInt(3)) {
            case 0 -> Surroundings.OtherToday.NOT_ASKED;
            case 1 -> new Surroundings.OtherToday(OtherDoses.ASKED_NONE, List.of());
            default ->
                new Surroundings.OtherToday(
                        OtherDoses.ASKED_GIVEN,
                        List.of(new Surroundings.OtherDose(
                                "o1",
                                new Dose(
                                        "lidocaine",
                                        one(Basis.values()),
                                        new Mass(decimal(1, 2000, 1)),
                                        random.nextBoolean(),
                                        one(Route.values()),
                                        maybe(() -> "tumescence"),
                                        Dose.Purpose.OTHER_TODAY,
                                        time()))));
        };
    }

    /** From low to high, both divided by a power of ten, without idle zeros. */
    private BigDecimal decimal(int low, int high, int places) {
        BigDecimal value =
                BigDecimal.valueOf(low + random.nextInt(high - low + 1), places).stripTrailingZeros();
        return value.scale() < 0 ? value.setScale(0) : value;
    }

    private OffsetDateTime time() {
        return TEN.plusSeconds(random.nextInt(3600));
    }

    private <T> List<T> some(IntFunction<T> making) {
        return new ArrayList<>(
                IntStream.range(0, random.nextInt(4)).mapToObj(making).toList());
    }

    private <T> Optional<T> maybe(Supplier<T> value) {
        return random.nextBoolean() ? Optional.ofNullable(value.get()) : Optional.empty();
    }

    private <T> T one(T[] values) {
        return values[random.nextInt(values.length)];
    }
}
