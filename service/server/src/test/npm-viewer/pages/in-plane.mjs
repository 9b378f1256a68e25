// SPDX-License-Identifier: Apache-2.0
// An in-plane case from upload to signed record, with the network gone in the middle.
// Arguments: address of the service, folder for screenshots, file of the planned frame, file of the observed frame.
import { Hands } from './hands.mjs';

const [service, pictures, planned, observed] = process.argv.slice(2);
await Hands.use(service, pictures, {}, async (hands) => {
  const { page } = hands;
  await hands.go('mark');
  await hands.look('choose');
  await hands.upload(planned);
  await hands.tap([390, 390]);
  await hands.keys('target', 10, 11);
  await hands.tool('skin');
  await hands.tap([200, 26]);
  await hands.tap([600, 26]);
  await hands.tool('hazard');
  await hands.tap([277, 531]);
  await hands.tool('nerve');
  await hands.tap([330, 428]);
  await hands.says('plan-standing', 'Choose the approach'); // nothing is taken for granted
  await hands.field('approach', 'inPlane');
  await hands.field('needle-side', 'right');
  await hands.field('needle', 'shortBevel-22g-80-echogenic');
  await hands.field('band-low', '30');
  await hands.field('band-high', '50');
  await hands.field('laterality', 'right');
  await hands.field('block', 'sciaticPopliteal');
  await hands.field('operator', 'Doe^Jo');
  await hands.says('plan-standing', 'Proposed, not chosen');
  await hands.look('plan-proposed');
  await hands.field('entry', '45');
  await hands.says('plan-standing', 'Chosen');
  await hands.drag([600, 26], [590, 26], 30);
  const delays = await hands.delays();
  await hands.click('undo');
  await hands.settled();
  const skin = await page.getAttribute('[data-key="skin-1"]', 'aria-label');
  await hands.click('keep');
  await hands.says('kept', 'Kept at');
  const plan = { numbers: await hands.table('plan-numbers'), words: await hands.text('plan-words') };
  await hands.look('plan');

  // The network goes; the hand goes on; the network comes back.
  await hands.browser.context.setOffline(true);
  await hands.keys('target', 0, 5);
  await hands.says('connection', 'does not answer');
  await hands.says('kept', 'Not kept');
  const shownMeanwhile = await page.getAttribute('[data-key="target"]', 'aria-label');
  await hands.look('without-network');
  await hands.browser.context.setOffline(false);
  await hands.says('kept', 'Kept at');
  await hands.keys('target', 0, -5);
  await page.waitForTimeout(1500);
  await hands.says('kept', 'Kept at');

  await hands.click('step-observation');
  await hands.click('other-frame');
  await hands.upload(observed);
  await hands.tap([623.25, 242.125]);
  await hands.tap([425.375, 397.75]);
  await hands.tool('tip');
  await hands.tap([407, 412.25]);
  await page.check('#tip-is-tip');
  await hands.field('phase', 'finalTip');
  await hands.says('comparison-numbers', 'tip along the plan');
  const comparison = await hands.table('comparison-numbers');
  await hands.look('observation');
  // The service hears it, but its answer is lost: it is sent again, and is there once.
  let lost = 0;
  await page.route('**/observations', async (route) => {
    if (lost > 0) return route.continue();
    lost = (await route.fetch()).status();
    return route.abort();
  });
  await hands.click('keep-observation');
  await hands.says('observations-kept', 'One observation is kept');
  await hands.click('draft');
  await hands.says('record-standing', 'Drafted');
  await hands.field('signer', 'Doe^Jo');
  await hands.field('signer-role', 'performer');
  await hands.look('to-sign', { fullPage: true });
  await hands.click('sign');
  await hands.says('record-standing', 'Signed and in the archive');
  await hands.look('signed');
  const record = await page.getAttribute('#record-links a', 'data-record');
  const caseId = new URL(page.url()).searchParams.get('case');
  await hands.go('list');
  await hands.look('list', { fullPage: true });
  const listed = await page.locator('main').innerText();
  return { lost, plan, comparison, record, caseId, delays, skin, shownMeanwhile, listed };
});
