// SPDX-License-Identifier: Apache-2.0
// An out-of-plane case from upload to signed record, on a telephone in a dark room, by touch.
// Arguments: address of the service, folder for screenshots, file of the planned frame, file of the observed frame.
import { Hands } from './hands.mjs';

const [service, pictures, planned, observed] = process.argv.slice(2);
const telephone = { viewport: { width: 360, height: 740 }, colorScheme: 'dark', hasTouch: true };
await Hands.use(service, pictures, telephone, async (hands) => {
  const { page } = hands;
  const touch = async (point) => {
    const { x, y } = await hands.place(point);
    await page.touchscreen.tap(x, y);
    await hands.settled();
  };
  await hands.go('mark');
  await hands.upload(planned);
  await touch([352, 346]);
  await hands.click('keep');
  await hands.says('kept', 'Kept at');
  await hands.field('approach', 'outOfPlane'); // of a case that is kept already
  await hands.tool('skin');
  await touch([150, 26]);
  await touch([650, 26]);
  await hands.field('needle', 'shortBevel-22g-80-echogenic');
  await hands.field('laterality', 'left');
  await hands.field('block', 'femoralNerve');
  await hands.field('operator', 'Doe^Jo');
  await hands.says('plan-standing', 'Proposed, not chosen');
  await hands.field('chosen-puncture', '20');
  await hands.says('plan-standing', 'Chosen');
  await hands.look('telephone-plan', { fullPage: true });
  await hands.click('keep');
  await hands.says('kept', 'Kept at');
  const plan = { numbers: await hands.table('plan-numbers'), words: await hands.text('plan-words') };
  const side = await page.getAttribute('#side-view', 'aria-label');
  const tooWide = [await hands.tooWide()];
  await hands.click('step-observation');
  await hands.click('other-frame');
  await hands.upload(observed);
  await touch([340.75, 357.25]);
  await page.check('#tip-is-tip');
  await hands.field('phase', 'finalTip');
  await hands.field('puncture', '20');
  await hands.says('comparison-numbers', 'depth of target and crossing');
  const comparison = await hands.table('comparison-numbers');
  await hands.look('telephone-observation', { fullPage: true });
  await hands.click('keep-observation');
  await hands.says('observations-kept', 'One observation is kept');
  await hands.click('draft');
  await hands.says('record-standing', 'Drafted');
  await hands.field('signer', 'Doe^Jo');
  await hands.click('sign');
  await hands.says('record-problem', 'different sides');
  const sides = await hands.text('patient-side');
  await hands.field('missing-0', 'left is right, Doe^Jo');
  await hands.look('telephone-sides', { fullPage: true });
  await hands.click('sign');
  await hands.says('record-standing', 'Signed and in the archive');
  const record = await page.getAttribute('#record-links a', 'data-record');
  for (const [width, height] of [[320, 640], [3840, 2160]]) {
    await page.setViewportSize({ width, height });
    await page.waitForTimeout(300);
    await hands.look(`mark-${width}`);
    tooWide.push(await hands.tooWide());
  }
  await page.setViewportSize({ width: 320, height: 640 });
  await hands.go('list');
  await hands.look('list-320', { fullPage: true });
  tooWide.push(await hands.tooWide());
  return { plan, comparison, record, side, sides, tooWide };
});
