// SPDX-License-Identifier: Apache-2.0
// Draws marks with the mouse, names them and saves the report, as a person does.
// Arguments: address of the service, folder for screenshots, study, marks as JSON, frames in the order of their series:
// [{"frame": UID, "lines": {"label": [[column, row], [column, row]]}, "arrows": {..the same, the head first..}}]
import { session } from './session.mjs';

const [service, pictures, study, given] = process.argv.slice(2);
await session(service, pictures, async (viewer) => {
  await viewer.study(study);
  await viewer.picture('opened');
  await viewer.measurements();
  for (const [i, marks] of JSON.parse(given).entries()) {
    if (i === 0) await viewer.shows(marks.frame);
    else await viewer.turnTo(marks.frame, 1);
    for (const [label, ends] of Object.entries(marks.lines)) await viewer.line(label, ...ends);
    for (const [label, ends] of Object.entries(marks.arrows)) await viewer.arrow(label, ...ends);
    await viewer.picture(`drawn-${i + 1}`);
  }
  const listed = await viewer.listed();
  const status = await viewer.save('Needle marks');
  await viewer.picture('saved');
  return { listed, status };
});
