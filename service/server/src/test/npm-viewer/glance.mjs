// SPDX-License-Identifier: Apache-2.0
// Looks whether a report that may be damaged is drawn; nothing drawn is an answer, not a failure.
// Arguments: address of the service, folder for screenshots, study, frames in the order of their series.
import { session } from './session.mjs';

const NOTHING_MORE_MS = 10_000; // a sound report was drawn within two seconds on a busy machine
const LOADING_MS = 30_000;

const [service, pictures, study, ...frames] = process.argv.slice(2);
await session(service, pictures, async (viewer) => {
  await viewer.study(study);
  const report = await viewer.report('Needle path record', LOADING_MS);
  // The picture may stand before the report's lines are there; turning the page and back draws it anew.
  await viewer.turned(frames.at(-1), NOTHING_MORE_MS);
  const overlays = {};
  for (const frame of frames) {
    if (!(await viewer.turned(frame, NOTHING_MORE_MS))) continue;
    await viewer.isPainted(NOTHING_MORE_MS);
    overlays[frame] = await viewer.overlay();
    await viewer.picture(`frame-${frames.indexOf(frame) + 1}`);
  }
  return { report, overlays };
});
