// SPDX-License-Identifier: Apache-2.0
// Draws marks with the mouse, names them and saves the report, as a person does.
// Arguments: address of the service, folder for screenshots, study, marks as JSON:
// {"frame": UID, "lines": {"label": [[column, row], [column, row]]}, "arrows": {..the same, the head first..}}
import { session } from './session.mjs';

const [service, pictures, study, given] = process.argv.slice(2);
const marks = JSON.parse(given);
await session(service, pictures, async (viewer) => {
  await viewer.study(study);
  await viewer.shows(marks.frame);
  await viewer.measurements();
  for (const [label, ends] of Object.entries(marks.lines)) await viewer.line(label, ...ends);
  for (const [label, ends] of Object.entries(marks.arrows)) await viewer.arrow(label, ...ends);
  const listed = await viewer.listed();
  await viewer.picture('drawn');
  const status = await viewer.save('Needle marks');
  await viewer.picture('saved');
  return { listed, status };
});
