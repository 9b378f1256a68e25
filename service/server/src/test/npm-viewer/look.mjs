// SPDX-License-Identifier: Apache-2.0
// Looks at a record as a person does: the report's lines on each frame, the annotated picture, the document.
// Arguments: address of the service, folder for screenshots, study, frames of the report in the order of their series.
import { session } from './session.mjs';

const [service, pictures, study, ...frames] = process.argv.slice(2);
await session(service, pictures, async (viewer) => {
  await viewer.study(study);
  const report = await viewer.report('Needle path record');
  const overlays = {};
  await viewer.shows(frames[0]);
  // The picture may stand before the report's lines are there; turning the page and back draws it anew.
  await viewer.turnTo(frames[1], 1);
  await viewer.turnTo(frames[0], -1);
  for (const [i, frame] of frames.entries()) {
    if (i > 0) await viewer.turnTo(frame, 1);
    await viewer.painted();
    overlays[frame] = await viewer.overlay();
    await viewer.picture(`report-${i + 1}`);
  }
  await viewer.series('US', 'Needle path on frames');
  const annotated = await viewer.imageOf('Needle path on frames');
  await viewer.picture('annotated');
  await viewer.series('DOC', 'Needle path record, readable');
  const document = await viewer.document();
  await viewer.picture('document');
  return { report, overlays, annotated, document };
});
