// SPDX-License-Identifier: Apache-2.0
// Reads a structured report as a web viewer on dcmjs does: naturalised data sets, where a sequence of one item gives its
// attributes directly and one of several is an array. Only a NUM with a single SCOORD under it is drawn.
// usage: node report.mjs REPORT.dcm
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const dcmjs = createRequire(import.meta.url)('dcmjs'); // its ES module needs a newer Node.js than stock Debian's 18
dcmjs.log.setLevel?.('error');
const { DicomMessage, DicomMetaDictionary } = dcmjs.data;
const bytes = readFileSync(process.argv[2]);
const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
const report = DicomMetaDictionary.naturalizeDataset(DicomMessage.readFile(buffer).dict);

const list = sequence => (sequence === undefined ? [] : Array.isArray(sequence) ? sequence : [sequence]);
const one = sequence => list(sequence)[0];
const named = (items, value) => list(items).filter(item => one(item.ConceptNameCodeSequence)?.CodeValue === value);

const groups = named(report.ContentSequence, '126010')
  .flatMap(measurements => named(measurements.ContentSequence, '125007'))
  .map(group => ({
    tracking: named(group.ContentSequence, '112040')[0]?.UID,
    label: named(group.ContentSequence, '121106').map(item => item.TextValue).join(' / '),
    directCoordinates: list(group.ContentSequence).filter(item => item.ValueType === 'SCOORD').length,
    unnamed: list(group.ContentSequence).filter(item => !one(item.ConceptNameCodeSequence)).length,
    lines: list(group.ContentSequence)
      .filter(item => item.ValueType === 'NUM' && item.ContentSequence?.ValueType === 'SCOORD')
      .map(item => {
        const measured = one(item.MeasuredValueSequence);
        const image = one(one(item.ContentSequence.ContentSequence).ReferencedSOPSequence);
        return {
          concept: one(item.ConceptNameCodeSequence).CodeMeaning,
          value: Number(list(measured?.NumericValue)[0]),
          unit: one(measured?.MeasurementUnitsCodeSequence)?.CodeValue,
          type: item.ContentSequence.GraphicType,
          points: Array.from(item.ContentSequence.GraphicData),
          image: image.ReferencedSOPInstanceUID,
          frame: image.ReferencedFrameNumber === undefined ? null : Number(image.ReferencedFrameNumber),
        };
      }),
  }));
console.log(JSON.stringify({ root: one(report.ConceptNameCodeSequence).CodeValue, groups }));
