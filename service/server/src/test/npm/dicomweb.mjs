// SPDX-License-Identifier: Apache-2.0
// Uses an archive as a viewer's library does; prints what it got as one JSON document.
// Arguments: root address of the archive, then the DICOM files to store.
import fs from 'node:fs';
import crypto from 'node:crypto';
import { createRequire } from 'node:module';

const require = createRequire(import.meta.url);
globalThis.XMLHttpRequest = require('xhr2');
const { api } = require('dicomweb-client');

const [root, ...files] = process.argv.slice(2);
const client = new api.DICOMwebClient({ url: root });
const bytes = (file) => {
  const content = fs.readFileSync(file);
  return content.buffer.slice(content.byteOffset, content.byteOffset + content.byteLength);
};
const sha256 = (buffer) => crypto.createHash('sha256').update(Buffer.from(buffer)).digest('hex');
const value = (object, tag) => object[tag]?.Value?.[0];

const stored = JSON.parse(await client.storeInstances({ datasets: files.map(bytes) }));
const studies = await client.searchForStudies({ queryParams: { PatientID: '*', limit: 10 } });
const studyInstanceUID = value(studies[0], '0020000D');
const series = await client.searchForSeries({ studyInstanceUID });
const seriesInstanceUID = value(series[0], '0020000E');
const instances = await client.searchForInstances({ studyInstanceUID, seriesInstanceUID });
const sopInstanceUID = value(instances[0], '00080018');
const place = { studyInstanceUID, seriesInstanceUID, sopInstanceUID };
const metadata = await client.retrieveInstanceMetadata(place);
const octets = [{ mediaType: 'application/octet-stream', transferSyntaxUID: '*' }];
const bulk = new URL(
  metadata[0]['7FE00010'].BulkDataURI,
  `${root}/studies/${studyInstanceUID}/series/${seriesInstanceUID}/instances/${sopInstanceUID}/metadata`,
).href;

const answer = {
  stored: stored['00081199'].Value.length,
  studies: studies.length,
  series: series.length,
  instances: instances.length,
  nobody: (await client.searchForStudies({ queryParams: { PatientID: 'nobody' } })).length,
  rows: value(metadata[0], '00280010'),
  seriesMetadata: (await client.retrieveSeriesMetadata(place)).length,
  instance: sha256(await client.retrieveInstance(place)),
  wholeSeries: (await client.retrieveSeries(place)).map(sha256),
  wholeStudy: (await client.retrieveStudy(place)).map(sha256),
  frame: sha256((await client.retrieveInstanceFrames({ ...place, frameNumbers: [1], mediaTypes: octets }))[0]),
  bulk: sha256((await client.retrieveBulkData({ BulkDataURI: bulk }))[0]),
  rendered: sha256(await client.retrieveInstanceRendered({ ...place, mediaTypes: [{ mediaType: 'image/png' }] })),
  refused: await client
    .retrieveInstance({ ...place, sopInstanceUID: '1.2.3' })
    .then(() => 'none', (problem) => problem.status),
};
process.stdout.write(JSON.stringify(answer));
