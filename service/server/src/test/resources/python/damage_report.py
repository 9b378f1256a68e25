# SPDX-License-Identifier: Apache-2.0
"""A copy of a report with one thing damaged, under a UID of its own, written by pydicom.

usage: damage_report.py REPORT.dcm intact|moved|imageless|elsewhere OUT.dcm
"""
import sys

import pydicom
from pydicom.uid import generate_uid

MOVED_PX = 25


def walk(item):
    yield item
    for child in item.get("ContentSequence", []):
        yield from walk(child)


def main():
    source, kind, out = sys.argv[1:]
    report = pydicom.dcmread(source)
    report.SOPInstanceUID = report.file_meta.MediaStorageSOPInstanceUID = generate_uid()
    drawn = [item for item in walk(report) if item.get("ValueType") == "SCOORD"]
    images = [child for item in drawn for child in item.ContentSequence]
    references = [reference for image in images for reference in image.ReferencedSOPSequence]
    if kind == "moved":
        for item in drawn:
            item.GraphicData = [v + (MOVED_PX if i % 2 == 0 else 0) for i, v in enumerate(item.GraphicData)]
    elif kind == "imageless":
        for item in drawn:
            del item.ContentSequence
    elif kind == "elsewhere":
        frames = sorted({reference.ReferencedSOPInstanceUID for reference in references})
        if len(frames) != 2:
            sys.exit(f"the report is drawn on {len(frames)} frames, not on two")
        for reference in references:
            reference.ReferencedSOPInstanceUID = frames[1 - frames.index(reference.ReferencedSOPInstanceUID)]
    elif kind != "intact":
        sys.exit(f"no such damage: {kind}")
    pydicom.dcmwrite(out, report, write_like_original=False)


main()
