# Draws what presentation states say onto their frames, with pydicom and numpy only, and prints what it found as JSON.
# Arguments: frame file, presentation state file, PPM file to write.
import json
import sys

import numpy
import pydicom

frame = pydicom.dcmread(sys.argv[1])
state = pydicom.dcmread(sys.argv[2])
grey = frame.pixel_array.astype(float)
if grey.ndim == 3:
    grey = grey.mean(axis=2)
rows, columns = grey.shape
picture = numpy.stack([grey] * 3, axis=2)
layers = {item.GraphicLayer: item for item in state.GraphicLayerSequence}
colours = {"PLAN": (108, 200, 247), "OBSERVED": (255, 192, 74)}
series = state.ReferencedSeriesSequence[0]
images = {image.ReferencedSOPInstanceUID for image in series.ReferencedImageSequence}


def along(points, steps=400):
    for start, end in zip(points, points[1:]):
        for step in range(steps + 1):
            share = step / steps
            # PIXEL units count from the outer corner of the first pixel, so pixel 0 is from 0 to 1
            yield tuple(int(a + share * (b - a)) for a, b in zip(start, end))


def brightness(points, shift=0):
    values = [
        grey[row + shift, column]
        for column, row in along(points)
        if 0 <= column < columns and 0 <= row + shift < rows
    ]
    return float(numpy.mean(values)) if values else None


found = []
for annotation in sorted(
    state.GraphicAnnotationSequence, key=lambda item: layers[item.GraphicLayer].GraphicLayerOrder
):
    named = {image.ReferencedSOPInstanceUID for image in annotation.ReferencedImageSequence}
    for item in annotation.GraphicObjectSequence:
        data = item.GraphicData
        points = list(zip(data[0::2], data[1::2]))
        found.append(
            {
                "layer": annotation.GraphicLayer,
                "order": int(layers[annotation.GraphicLayer].GraphicLayerOrder),
                "type": item.GraphicType,
                "points": points,
                "trackingUid": item.TrackingUID,
                "words": [text.UnformattedTextValue for text in annotation.get("TextObjectSequence", [])],
                "onFrame": named == images == {frame.SOPInstanceUID},
                "brightness": brightness(points) if len(points) > 1 else None,
                "beside": brightness(points, 25) if len(points) > 1 else None,
            }
        )
        for column, row in along(points if len(points) > 1 else [points[0], points[0]], 2000):
            if 0 <= column < columns and 0 <= row < rows:
                picture[row, column] = colours[annotation.GraphicLayer]
with open(sys.argv[3], "wb") as out:
    out.write(b"P6 %d %d 255\n" % (columns, rows))
    out.write(picture.clip(0, 255).astype(numpy.uint8).tobytes())
print(json.dumps(found))
