# SPDX-License-Identifier: Apache-2.0
"""Writes reports and presentation states as other software does, with pydicom.

usage: foreign_marks.py FRAME.dcm SPEC.json OUT.dcm

The layout of the reports is that of an open-source web viewer as measured for this project: Enhanced SR, TID 1500, one group
per mark, the label in Comment, no frame number unless the specification gives one.
"""
import json
import sys

import pydicom
from pydicom.dataset import Dataset, FileMetaDataset
from pydicom.sequence import Sequence
from pydicom.uid import ExplicitVRLittleEndian, generate_uid

REPORT = "1.2.840.10008.5.1.4.1.1.88.22"
GREY = "1.2.840.10008.5.1.4.1.1.11.1"
COLOUR = "1.2.840.10008.5.1.4.1.1.11.2"


def code(value, scheme, meaning):
    d = Dataset()
    d.CodeValue, d.CodingSchemeDesignator, d.CodeMeaning = value, scheme, meaning
    return d


def item(relation, kind, name=None):
    d = Dataset()
    if relation:
        d.RelationshipType = relation
    d.ValueType = kind
    if name:
        d.ConceptNameCodeSequence = Sequence([code(*name)])
    return d


def text(relation, name, value):
    d = item(relation, "TEXT", name)
    d.TextValue = value
    return d


def image(frame, mark):
    d = item("SELECTED FROM", "IMAGE")
    reference = Dataset()
    reference.ReferencedSOPClassUID = frame.SOPClassUID
    reference.ReferencedSOPInstanceUID = mark.get("image", frame.SOPInstanceUID)
    if mark.get("frame"):
        reference.ReferencedFrameNumber = mark["frame"]
    d.ReferencedSOPSequence = Sequence([reference])
    return d


def coordinates(frame, mark):
    d = item("INFERRED FROM", mark.get("valueType", "SCOORD"))
    d.GraphicType = mark["type"]
    d.GraphicData = [float(v) for v in mark["points"]]
    if not mark.get("imageless"):
        d.ContentSequence = Sequence([image(frame, mark)])
    return d


def number(mark):
    value, unit = mark.get("value", 1), mark.get("unit", "mm")
    d = item("CONTAINS", "NUM", mark.get("concept", ["410668003", "SCT", "Length"]))
    measured = Dataset()
    measured.NumericValue = value
    measured.MeasurementUnitsCodeSequence = Sequence([code(unit[:16], "UCUM", unit)])
    d.MeasuredValueSequence = Sequence([measured])
    return d


def group(frame, mark, where):
    d = item("CONTAINS", "CONTAINER", ["125007", "DCM", "Measurement Group"])
    d.ContinuityOfContent = "SEPARATE"
    tracking = item("HAS OBS CONTEXT", "UIDREF", ["112040", "DCM", "Tracking Unique Identifier"])
    tracking.UID = generate_uid()
    children = [
        text("HAS OBS CONTEXT", ["112039", "DCM", "Tracking Identifier"], mark.get("tracking", "Tools@^0.1.0:Length")),
        tracking,
    ]
    if mark.get("finding"):
        found = item("CONTAINS", "CODE", ["121071", "DCM", "Finding"])
        found.ConceptCodeSequence = Sequence([code(*mark["finding"])])
        children.append(found)
    measured = number(mark)
    if mark.get("byReference"):
        children.append(coordinates(frame, mark))
        children[-1].RelationshipType = "CONTAINS"
        reference = Dataset()
        reference.RelationshipType = "INFERRED FROM"
        place = where + [len(children)]
        reference.ReferencedContentItemIdentifier = mark.get("refersTo", place)
        measured.ContentSequence = Sequence([reference])
    else:
        measured.ContentSequence = Sequence([coordinates(frame, mark)])
    children.append(measured)
    if mark.get("label"):
        children.append(text("CONTAINS", ["121106", "DCM", "Comment"], mark["label"]))
    d.ContentSequence = Sequence(children)
    return d


def report(frame, spec, out):
    out.ValueType = "CONTAINER"
    out.ContinuityOfContent = "SEPARATE"
    out.ConceptNameCodeSequence = Sequence([code("126000", "DCM", "Imaging Measurement Report")])
    template = Dataset()
    template.MappingResource, template.TemplateIdentifier = "DCMR", "1500"
    out.ContentTemplateSequence = Sequence([template])
    out.CompletionFlag, out.VerificationFlag = "COMPLETE", "UNVERIFIED"
    measurements = item("CONTAINS", "CONTAINER", ["126010", "DCM", "Imaging Measurements"])
    measurements.ContinuityOfContent = "SEPARATE"
    measurements.ContentSequence = Sequence(
        [group(frame, mark, [1, 1, i + 1]) for i, mark in enumerate(spec["marks"])]
    )
    for _ in range(spec.get("depth", 0)):
        inner = measurements
        measurements = item("CONTAINS", "CONTAINER", ["126010", "DCM", "Imaging Measurements"])
        measurements.ContinuityOfContent = "SEPARATE"
        measurements.ContentSequence = Sequence([inner])
    out.ContentSequence = Sequence([measurements])
    if spec.get("predecessor"):
        instance = Dataset()
        instance.ReferencedSOPClassUID, instance.ReferencedSOPInstanceUID = REPORT, spec["predecessor"]
        series = Dataset()
        series.SeriesInstanceUID = generate_uid()
        series.ReferencedSOPSequence = Sequence([instance])
        study = Dataset()
        study.StudyInstanceUID = frame.StudyInstanceUID
        study.ReferencedSeriesSequence = Sequence([series])
        out.PredecessorDocumentsSequence = Sequence([study])


def state(frame, spec, out):
    annotations = []
    for mark in spec["marks"]:
        graphic = Dataset()
        graphic.GraphicAnnotationUnits = mark.get("units", "PIXEL")
        graphic.GraphicDimensions = 2
        graphic.NumberOfGraphicPoints = len(mark["points"]) // 2
        graphic.GraphicData = [float(v) for v in mark["points"]]
        graphic.GraphicType = mark["type"]
        annotation = Dataset()
        annotation.GraphicLayer = "MARKS"
        annotation.GraphicObjectSequence = Sequence([graphic])
        if mark.get("label"):
            words = Dataset()
            words.UnformattedTextValue = mark["label"]
            words.AnchorPoint = [float(v) for v in mark["points"][:2]]
            words.AnchorPointAnnotationUnits = "PIXEL"
            words.AnchorPointVisibility = "N"
            annotation.TextObjectSequence = Sequence([words])
        reference = Dataset()
        reference.ReferencedSOPClassUID = frame.SOPClassUID
        reference.ReferencedSOPInstanceUID = frame.SOPInstanceUID
        if mark.get("frame"):
            reference.ReferencedFrameNumber = mark["frame"]
        annotation.ReferencedImageSequence = Sequence([reference])
        annotations.append(annotation)
    out.GraphicAnnotationSequence = Sequence(annotations)


def main():
    frame = pydicom.dcmread(sys.argv[1], stop_before_pixels=True)
    with open(sys.argv[2], encoding="utf-8") as file:
        spec = json.load(file)
    kind = {"sr": REPORT, "grey": GREY, "colour": COLOUR}[spec.get("kind", "sr")]
    out = Dataset()
    out.SpecificCharacterSet = "ISO_IR 192"
    out.SOPClassUID = kind
    out.SOPInstanceUID = spec.get("uid", generate_uid())
    out.PatientName, out.PatientID = frame.PatientName, spec.get("patient", frame.PatientID)
    out.PatientBirthDate, out.PatientSex = frame.get("PatientBirthDate", ""), frame.get("PatientSex", "")
    out.StudyInstanceUID = spec.get("study", frame.StudyInstanceUID)
    out.SeriesInstanceUID = generate_uid()
    out.StudyDate, out.StudyTime = frame.get("StudyDate", ""), frame.get("StudyTime", "")
    out.StudyID, out.AccessionNumber, out.ReferringPhysicianName = "", "", ""
    out.Manufacturer = "Unspecified"
    out.Modality = "SR" if kind == REPORT else "PR"
    out.SeriesNumber, out.InstanceNumber = 3001, 1
    out.ContentDate, out.ContentTime = "20260105", "093000"
    (report if kind == REPORT else state)(frame, spec, out)
    out.file_meta = FileMetaDataset()
    out.file_meta.MediaStorageSOPClassUID = kind
    out.file_meta.MediaStorageSOPInstanceUID = out.SOPInstanceUID
    out.file_meta.TransferSyntaxUID = ExplicitVRLittleEndian
    out.is_little_endian, out.is_implicit_VR = True, False
    pydicom.dcmwrite(sys.argv[3], out, write_like_original=False)
    print(out.SOPInstanceUID)


main()
