// SPDX-License-Identifier: Apache-2.0
// A run of frames: scrubbed, planned on one, observed on a later one. Arguments: as in in-plane.mjs, one file.
import { Hands } from './hands.mjs';

const [service, pictures, run] = process.argv.slice(2);
await Hands.use(service, pictures, { colorScheme: 'dark' }, async (hands) => {
  const { page } = hands;
  const turned = (number) => page.waitForFunction(
    (wanted) => document.querySelector('#frame image').getAttribute('href').includes(`/${wanted}/rendered`), number);
  await hands.go('mark');
  await hands.upload(run);
  await hands.tap([400, 300]);
  await hands.click('cine-next');
  await turned(2);
  const away = await page.locator('.handle').count();
  await page.fill('#cine-number', '20');
  await turned(20);
  await hands.look('cine');
  const text = await hands.text('cine-text');
  await hands.click('cine-marks');
  await turned(1);
  const back = await page.locator('.handle').count();
  await hands.field('approach', 'inPlane');
  await hands.field('needle-side', 'right');
  await hands.click('step-observation');
  await page.fill('#cine-number', '20');
  await turned(20);
  await hands.tap([500, 200]);
  await hands.tap([420, 260]);
  await hands.says('comparison-numbers', 'angle to skin');
  await hands.click('dim');
  await hands.look('cine-observation-light');
  const room = await page.evaluate(() => document.documentElement.dataset.room);
  await page.reload();
  const kept = await page.evaluate(() => document.documentElement.dataset.room);
  return { away, back, text, room, kept };
});
