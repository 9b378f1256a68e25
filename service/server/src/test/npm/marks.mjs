// SPDX-License-Identifier: Apache-2.0
// Writes marks as an older generation of web viewers does, with the adapters of dcmjs: Enhanced SR, TID 1500, no
// comment; a line's name is the meaning of its finding, an arrow's the text that it carries.
// usage: node marks.mjs FRAME.dcm MARKS.json OUT.dcm
// MARKS: [{"label": .., "type": "Length" | "ArrowAnnotate" | "FreehandRoi", "points": [[column, row], ..]}]
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';

const dcmjs = createRequire(import.meta.url)('dcmjs'); // its ES module needs a newer Node.js than stock Debian's 18
dcmjs.log.setLevel?.('error');
const { DicomMessage, DicomMetaDictionary, datasetToDict } = dcmjs.data;
const { MeasurementReport } = dcmjs.adapters.Cornerstone;

const [frameFile, marksFile, out] = process.argv.slice(2);
const bytes = readFileSync(frameFile);
const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);
const frame = DicomMetaDictionary.naturalizeDataset(DicomMessage.readFile(buffer).dict);
const point = ([x, y]) => ({ x, y });
const finding = (label) => ({ CodeValue: `S-${label}`.slice(0, 16), CodingSchemeDesignator: '99SITE', CodeMeaning: label });
const MM_STATED = 1; // what it says of lengths is not what counts

const TOOLS = {
  Length: ({ label, points: [start, end] }) => ({
    handles: { start: point(start), end: point(end) },
    length: MM_STATED,
    finding: finding(label),
  }),
  ArrowAnnotate: ({ label, points: [head, tail] }) => ({
    handles: { start: point(head), end: point(tail) },
    text: label,
  }),
  FreehandRoi: ({ label, points }) => ({ handles: { points: points.map(point) }, finding: finding(label) }),
};

const drawn = {};
for (const mark of JSON.parse(readFileSync(marksFile, 'utf8'))) {
  (drawn[mark.type] ??= { data: [] }).data.push(TOOLS[mark.type](mark));
}
const about = {
  generalSeriesModule: { studyInstanceUID: frame.StudyInstanceUID, seriesInstanceUID: frame.SeriesInstanceUID },
  sopCommonModule: { sopClassUID: frame.SOPClassUID, sopInstanceUID: frame.SOPInstanceUID },
  frameNumber: 1,
};
const report = MeasurementReport.generateReport({ image: drawn }, { get: (kind) => about[kind] });
const document = Object.assign(report.dataset, {
  PatientName: frame.PatientName,
  PatientID: frame.PatientID,
  PatientBirthDate: frame.PatientBirthDate ?? '',
  PatientSex: frame.PatientSex ?? '',
  StudyDate: frame.StudyDate ?? '',
  StudyTime: frame.StudyTime ?? '',
  SpecificCharacterSet: 'ISO_IR 192',
});
writeFileSync(out, Buffer.from(datasetToDict(document).write()));
