// SPDX-License-Identifier: Apache-2.0
package dev.plumbline.dicom;

import static org.assertj.core.api.Assertions.assertThat;

import dev.plumbline.geometry.PointPx;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What no other program checks, SR 8 "No judge sees": each rule with an offender. */
class TemplateCheckTest {
    @ParameterizedTest
    @EnumSource
    void findsNothingInOurOwnRecords(RecordFixtures fixture) {
        assertThat(TemplateCheck.check(fixture.report()).lines()).isEmpty();
    }

    /** A record with one thing changed somewhere in its tree. */
    private static CheckReport changed(Predicate<ContentItem> where, UnaryOperator<ContentItem> change) {
        return changed(RecordFixtures.IN_PLANE, where, change);
    }

    private static CheckReport changed(
            RecordFixtures fixture, Predicate<ContentItem> where, UnaryOperator<ContentItem> change) {
        DataSet report = fixture.report();
        ContentItem root = ContentReader.read(report);
        ContentItem offender = replaceFirst(root, where, change);
        assertThat(offender).as("the offender differs").isNotEqualTo(root);
        report.remove(Tag.CONTENT_SEQUENCE);
        ContentWriter.write(offender, report);
        return TemplateCheck.check(report);
    }

    private static ContentItem replaceFirst(
            ContentItem item, Predicate<ContentItem> where, UnaryOperator<ContentItem> change) {
        if (where.test(item)) {
            return change.apply(item);
        }
        List<ContentItem> children = new ArrayList<>(item.children());
        for (int i = 0; i < children.size(); i++) {
            ContentItem changed = replaceFirst(children.get(i), where, change);
            if (!changed.equals(children.get(i))) {
                children.set(i, changed);
                break;
            }
        }
        return item.with(children);
    }

    private static Predicate<ContentItem> named(Code name) {
        return item -> item.isNamed(name);
    }

    private static UnaryOperator<ContentItem> value(ItemValue value) {
        return item -> new ContentItem(item.relation(), item.name(), value, item.children());
    }

    private static UnaryOperator<ContentItem> without(Predicate<ContentItem> child) {
        return item -> item.with(item.children().stream().filter(child.negate()).toList());
    }

    private static void finds(CheckReport report, String place, String text) {
        assertThat(report.conforms()).isFalse();
        assertThat(report.lines())
                .as("%s", report.lines())
                .anyMatch(line -> line.place().contains(place) && line.text().contains(text));
    }

    private static boolean isThin(ContentItem item) {
        return item.value() instanceof ItemValue.Numeric
                && item.children().size() == 1
                && item.children().get(0).value() instanceof ItemValue.Coordinates;
    }

    private static ItemValue.Image image(ContentItem item, OptionalInt frame) {
        ItemValue.Instance instance = ((ItemValue.Image) item.value()).instance();
        return new ItemValue.Image(new ItemValue.Instance(instance.sopClassUid(), instance.sopInstanceUid(), frame));
    }

    private static boolean isFrame(ContentItem item, int number) {
        return item.value() instanceof ItemValue.Image image
                && image.instance().frameNumber().orElse(0) == number
                && item.relation() == Relation.SELECTED_FROM;
    }

    @Test
    void noticesAFrameNumberOutOfRange() {
        DataSet report = RecordFixtures.IN_PLANE.report();
        CheckReport found =
                TemplateCheck.check(report, uid -> uid.equals("2.25.3002") ? OptionalInt.of(6) : OptionalInt.of(1));
        finds(found, "IMAGE", "names frame 7, which does not exist");
        finds(
                changed(
                        item -> isFrame(item, 7),
                        item -> value(image(item, OptionalInt.of(0))).apply(item)),
                "IMAGE",
                "names frame 0");
    }

    @Test
    void noticesAFrameNumberMissingOnAnObjectWithFrames() {
        finds(
                changed(
                        item -> isFrame(item, 7),
                        item -> value(image(item, OptionalInt.empty())).apply(item)),
                "IMAGE",
                "no frame of it");
    }

    @Test
    void noticesAFrameNumberOnAnObjectWithoutFrames() {
        finds(
                changed(
                        item -> isFrame(item, 0),
                        item -> value(image(item, OptionalInt.of(1))).apply(item)),
                "IMAGE",
                "has no frames");
    }

    @Test
    void noticesCoordinatesOutsideTheImage() {
        finds(
                changed(
                        named(Concepts.TARGET),
                        value(new ItemValue.Coordinates(ItemValue.GraphicType.POINT, List.of(new PointPx(640.5, 10))))),
                "Target",
                "outside the image");
    }

    @Test
    void noticesAPolylineOfOnePoint() {
        finds(
                changed(
                        named(Concepts.PATH),
                        value(new ItemValue.Coordinates(ItemValue.GraphicType.POLYLINE, List.of(new PointPx(1, 1))))),
                "Path",
                "POLYLINE of one point");
    }

    @Test
    void noticesAnAngleInKilograms() {
        Quantity angle = Quantity.of("Q-ANGSKIN");
        finds(
                changed(
                        item -> item.codeOf(Concepts.EQUIVALENT_MEANING)
                                .filter(angle.code()::means)
                                .isPresent(),
                        value(new ItemValue.Numeric(
                                Optional.of(DecimalText.measured(33, Codes.ucum("kg"))), Optional.empty()))),
                "Angle",
                "is in kg");
    }

    @Test
    void noticesAWrongMeaning() {
        finds(
                changed(
                        named(Concepts.IMAGING_MEASUREMENTS),
                        item -> new ContentItem(
                                item.relation(),
                                Optional.of(new Code("126010", "DCM", "Imaging measurements")),
                                item.value(),
                                item.children())),
                "Imaging measurements",
                "means \"Imaging Measurements\"");
    }

    @Test
    void noticesThatThereIsNoLanguage() {
        finds(changed(named(Concepts.IMAGING_MEASUREMENT_REPORT), without(named(Concepts.LANGUAGE))), "1 ", "Language");
    }

    @Test
    void noticesThatThereIsNoObserver() {
        finds(
                changed(named(Concepts.IMAGING_MEASUREMENT_REPORT), without(named(Codes.dcm("121012")))),
                "1 ",
                "no device observer");
        finds(
                changed(named(Concepts.IMAGING_MEASUREMENT_REPORT), without(named(Codes.dcm("121008")))),
                "1 ",
                "without a name");
    }

    @Test
    void noticesThatTheTemplateIsNotNamed() {
        DataSet report = RecordFixtures.IN_PLANE.report().remove(Tag.CONTENT_TEMPLATE_SEQUENCE);
        finds(TemplateCheck.check(report), "ContentTemplateSequence", "1500");
    }

    @Test
    void noticesThatTheCodingSchemeIsNotIdentified() {
        DataSet report = RecordFixtures.IN_PLANE.report().remove(Tag.CODING_SCHEME_IDENTIFICATION_SEQUENCE);
        finds(TemplateCheck.check(report), "CodingSchemeIdentificationSequence", "not identified");
    }

    @Test
    void noticesATrackingUidUsedTwice() {
        DataSet report = RecordFixtures.IN_PLANE.report();
        String plan = RecordReader.groups(ContentReader.read(report))
                .get(0)
                .item()
                .named(Concepts.TRACKING_UID)
                .map(item -> ((ItemValue.Uid) item.value()).uid())
                .findFirst()
                .orElseThrow();
        finds(
                changed(
                        item -> item.isNamed(Concepts.TRACKING_UID)
                                && !((ItemValue.Uid) item.value()).uid().equals(plan),
                        value(new ItemValue.Uid(plan))),
                "Tracking Unique Identifier",
                "another group");
    }

    @Test
    void noticesAThinNumberThatDiffersFromItsTwin() {
        finds(
                changed(
                        TemplateCheckTest::isThin,
                        value(new ItemValue.Numeric(
                                Optional.of(DecimalText.measured(1, Codes.ucum("mm"))), Optional.empty()))),
                "Depth",
                "no rich number");
    }

    @Test
    void noticesAThinNumberWithASecondChild() {
        finds(
                changed(
                        TemplateCheckTest::isThin,
                        item -> item.with(
                                item.children().get(0), item.children().get(0))),
                "Depth",
                "exactly one SCOORD");
    }

    @Test
    void noticesSomethingDrawableDirectlyInAGroup() {
        DataSet report = RecordFixtures.IN_PLANE.report();
        ContentItem scoord = ContentReader.read(report)
                .walk()
                .filter(named(Concepts.TARGET))
                .findFirst()
                .orElseThrow();
        ContentItem direct = new ContentItem(Relation.CONTAINS, scoord.name(), scoord.value(), scoord.children());
        finds(
                changed(named(Concepts.MEASUREMENT_GROUP), group -> {
                    List<ContentItem> children = new ArrayList<>(group.children());
                    children.add(direct);
                    return group.with(children);
                }),
                "Target",
                "directly in a group");
    }

    @Test
    void noticesAnImageDirectlyInAGroup() {
        finds(
                changed(named(Concepts.MEASUREMENT_GROUP), group -> {
                    List<ContentItem> children = new ArrayList<>(group.children());
                    ItemValue.Image image = (ItemValue.Image) group.walk()
                            .filter(item -> item.value() instanceof ItemValue.Image)
                            .findFirst()
                            .orElseThrow()
                            .value();
                    children.add(new ContentItem(Relation.CONTAINS, Optional.empty(), image, List.of()));
                    return group.with(children);
                }),
                "IMAGE",
                "directly in a group");
    }

    @Test
    void noticesThatParametersAndCodesDiffer() {
        finds(
                changed(named(Codes.own("APPROACH")), value(new ItemValue.Coded(Codes.own("AP-OUT")))),
                "Procedure details",
                "outOfPlane");
        finds(
                changed(
                        named(Codes.dcm("111465")),
                        value(new ItemValue.Numeric(
                                Optional.of(DecimalText.measured(21, Codes.ucum("{gauge}"))), Optional.empty()))),
                "Instrument",
                "Needle Gauge");
    }

    @Test
    void noticesANumberThatIsNotWritten() {
        Code path = Codes.own("Q-NEEDLEMIN");
        finds(
                changed(
                        named(Concepts.MEASUREMENT_GROUP),
                        without(item -> item.codeOf(Concepts.EQUIVALENT_MEANING)
                                .filter(path::means)
                                .isPresent())),
                "Measurement Group",
                "Q-NEEDLEMIN");
    }

    @Test
    void noticesItemsOutOfOrder() {
        finds(
                changed(named(Concepts.IMAGING_MEASUREMENT_REPORT), root -> {
                    List<ContentItem> children = new ArrayList<>(root.children());
                    children.add(0, children.remove(children.size() - 1));
                    return root.with(children);
                }),
                "Language",
                "out of order");
    }

    @Test
    void noticesAnItemThatNoRowAllows() {
        finds(
                changed(named(Concepts.IMAGE_LIBRARY_GROUP), group -> {
                    List<ContentItem> children = new ArrayList<>(group.children());
                    children.add(ContentItem.text(Relation.CONTAINS, Codes.dcm("121073"), "a thought"));
                    return group.with(children);
                }),
                "Impression",
                "not in the template");
    }

    @Test
    void noticesARelationshipOfAnotherKind() {
        finds(
                changed(
                        named(Concepts.UNCERTAINTY),
                        item -> new ContentItem(Relation.INFERRED_FROM, item.name(), item.value(), item.children())),
                "measurement uncertainty",
                "wants HAS PROPERTIES");
    }

    @Test
    void noticesAValueOutsideItsSet() {
        finds(
                changed(named(Concepts.FINDING), value(new ItemValue.Coded(Codes.own("TQ-SINGLE")))),
                "Finding",
                "not a value of PL2");
    }

    @Test
    void noticesAMissingValueWithoutReason() {
        finds(
                changed(
                        RecordFixtures.TIP_NOT_CONFIRMED,
                        item -> item.first(Concepts.WHY_ABSENT).isPresent(),
                        without(named(Concepts.WHY_ABSENT))),
                "",
                "Reason value is absent");
    }

    @Test
    void noticesFlagsThatDoNotGoTogether() {
        DataSet report = RecordFixtures.DRAFT.report().put(Tag.COMPLETION_FLAG, "COMPLETE");
        finds(TemplateCheck.check(report), "CompletionFlag", "neither a draft nor a signed record");
    }

    @Test
    void noticesEvidenceThatTheTreeDoesNotName() {
        DataSet report = RecordFixtures.IN_PLANE.report();
        report.remove(Tag.CURRENT_REQUESTED_PROCEDURE_EVIDENCE_SEQUENCE);
        finds(TemplateCheck.check(report), "CurrentRequestedProcedureEvidenceSequence", "lists 0 objects");
    }

    @Test
    void noticesAMarkThatDiffersFromItsRepeat() {
        finds(
                changed(
                        item -> item.value() instanceof ItemValue.Numeric
                                && item.codeOf(Concepts.EQUIVALENT_MEANING).isPresent()
                                && item.first(Concepts.TARGET).isPresent(),
                        number -> replaceFirst(
                                number,
                                named(Concepts.TARGET),
                                value(new ItemValue.Coordinates(
                                        ItemValue.GraphicType.POINT, List.of(new PointPx(321, 360)))))),
                "Target",
                "differs from the same mark");
    }

    @Test
    void noticesALabelThatAViewerWouldCut() {
        finds(
                changed(named(Concepts.COMMENT), value(new ItemValue.Text("Plan 33.7° and more words"))),
                "Comment",
                "longer than 16");
    }

    @Test
    void noticesASideThatContradictsItself() {
        Predicate<ContentItem> right = item -> item.isNamed(Concepts.LATERALITY);
        UnaryOperator<ContentItem> toLeft = value(new ItemValue.Coded(Codes.ofWord("laterality", "left")));
        finds(
                changed(named(Codes.own("BLOCK")), block -> replaceFirst(block, right, toLeft)),
                "Finding Site",
                "Right here, Left there");
        finds(
                changed(named(Concepts.FINDING_SITE), site -> replaceFirst(site, right, toLeft)),
                "Finding Site",
                "Left here, Right there");
        finds(
                changed(RecordFixtures.CUT_PATH_MIDLINE_UTC, named(Concepts.FINDING_SITE), site -> {
                    List<ContentItem> children = new ArrayList<>(site.children());
                    children.add(ContentItem.code(
                            Relation.HAS_CONCEPT_MOD, Concepts.LATERALITY, Codes.ofWord("laterality", "left")));
                    return site.with(children);
                }),
                "Finding Site",
                "Left here, no side there");
    }

    /** Changed wherever it stands, the image library included, so that the report does not contradict itself. */
    @Test
    void noticesAFrameThatDoesNotExistInTheReportAlone() {
        DataSet report = RecordFixtures.IN_PLANE.report();
        ContentItem root = ContentReader.read(report);
        report.remove(Tag.CONTENT_SEQUENCE);
        ContentWriter.write(everywhere(root, 7, 999), report);
        finds(TemplateCheck.check(report), "IMAGE", "names frame 999, which does not exist");
        finds(
                changed(
                        named(ImageLibrary.FRAMES),
                        value(new ItemValue.Numeric(
                                Optional.of(DecimalText.measured(6, Codes.ucum("1"))), Optional.empty()))),
                "IMAGE",
                "names frame 7, which does not exist");
        CheckReport beside = TemplateCheck.check(
                RecordFixtures.IN_PLANE.report(),
                uid -> uid.equals("2.25.3002") ? OptionalInt.of(20) : OptionalInt.empty());
        finds(beside, "IMAGE", "has 12 frames, which it has not");
    }

    private static ContentItem everywhere(ContentItem item, int from, int to) {
        ItemValue value = item.value() instanceof ItemValue.Image image
                        && image.instance().frameNumber().orElse(0) == from
                ? image(item, OptionalInt.of(to))
                : item.value();
        return new ContentItem(
                item.relation(),
                item.name(),
                value,
                item.children().stream()
                        .map(child -> everywhere(child, from, to))
                        .toList());
    }

    @Test
    void noticesADrawnNumberBehindOneThatIsNot() {
        finds(
                changed(named(Concepts.MEASUREMENT_GROUP), group -> {
                    List<ContentItem> children = new ArrayList<>(group.children());
                    ContentItem thin = children.stream()
                            .filter(TemplateCheckTest::isThin)
                            .findFirst()
                            .orElseThrow();
                    children.remove(thin);
                    children.add(children.size() - 1, thin);
                    return group.with(children);
                }),
                "Depth",
                "stands after a number that is not");
    }

    @Test
    void noticesGroupsOutOfOrder() {
        finds(
                changed(named(Concepts.IMAGING_MEASUREMENTS), container -> {
                    List<ContentItem> children = new ArrayList<>(container.children());
                    Collections.reverse(children);
                    return container.with(children);
                }),
                "Measurement Group",
                "groups are out of order");
    }

    @Test
    void noticesATrackingIdentifierThatAViewerWouldTakeOver() {
        finds(
                changed(
                        named(Concepts.TRACKING_IDENTIFIER),
                        value(new ItemValue.Text("Cornerstone3DTools@^0.1.0:Length"))),
                "Tracking Identifier",
                "take the group over");
    }

    @Test
    void noticesAValueWithoutUncertainty() {
        finds(
                changed(item -> item.first(Concepts.UNCERTAINTY).isPresent(), without(named(Concepts.UNCERTAINTY))),
                "",
                "no uncertainty");
    }

    @Test
    void noticesAJudgementThatItsNumberContradicts() {
        Code other = Codes.ofWord("evaluations", "false");
        finds(
                changed(named(Codes.own("E-ANGLE")), value(new ItemValue.Coded(other))),
                "Measurement Group",
                "says within the uncertainty, the number and its uncertainty say larger");
        finds(
                changed(item -> item.first(Codes.own("E-ANGLE")).isPresent(), without(named(Codes.own("E-ANGLE")))),
                "Measurement Group",
                "says nothing");
    }

    @Test
    void noticesASignedReportWithoutAPerson() {
        finds(
                changed(
                        named(Concepts.IMAGING_MEASUREMENT_REPORT),
                        without(item -> item.isNamed(Concepts.OBSERVER_TYPE)
                                && item.value().equals(new ItemValue.Coded(Concepts.PERSON)))),
                "1 ",
                "signed and has no person observer");
        assertThat(TemplateCheck.check(RecordFixtures.DRAFT.report()).lines())
                .as("a draft may name nobody")
                .isEmpty();
    }

    @Test
    void noticesCautionsThatWereReworded() {
        finds(
                changed(named(Codes.own("CAUTIONS")), value(new ItemValue.Text("Take care."))),
                "Cautions",
                "word for word");
    }
}
