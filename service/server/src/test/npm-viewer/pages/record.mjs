// SPDX-License-Identifier: Apache-2.0
// Records on the page that people read, and on paper.
// Arguments: address of the service, folder for screenshots, UIDs of a signed record, of its amendment, of one withdrawn.
import path from 'node:path';
import { Hands } from './hands.mjs';

const [service, pictures, signed, amended, withdrawn] = process.argv.slice(2);
await Hands.use(service, pictures, {}, async (hands) => {
  const { page } = hands;
  const tables = () =>
    page.$$eval('table.compared', (all) =>
      all.map((table) => ({
        observation: table.dataset.observation,
        rows: Object.fromEntries([...table.tBodies[0].rows].map((row) => [row.dataset.field, [...row.cells].map((cell) => cell.innerText.trim())])),
      })),
    );
  const pictured = () => page.$$eval('.pictures img', (all) => all.map((image) => image.complete && image.naturalWidth > 100));
  const links = () => page.$$eval('.forms a, .life a', (all) => all.map((a) => a.href));
  const seen = {};
  await page.emulateMedia({ colorScheme: 'light' });
  for (const [name, uid] of Object.entries({ signed, amended, withdrawn })) {
    await hands.go(`record?uid=${uid}`);
    await page.waitForLoadState('networkidle');
    seen[name] = {
      standing: await hands.text('standing'),
      text: await page.locator('main').innerText(),
      tables: await tables(),
      pictured: await pictured(),
      links: await links(),
      side: await hands.text('side'),
    };
    await hands.look(name, { fullPage: true });
  }
  await hands.go(`record?uid=${signed}`);
  await page.click('[data-record="successor"]');
  await page.waitForURL(`**/record?uid=${amended}`);
  await page.click('[data-record="predecessor"]');
  await page.waitForURL(`**/record?uid=${signed}`);
  await page.emulateMedia({ media: 'print', colorScheme: 'dark' });
  await page.pdf({ path: path.join(pictures, 'record.pdf'), preferCSSPageSize: true });
  const inPrint = await page.evaluate(() => [getComputedStyle(document.body).backgroundColor, getComputedStyle(document.querySelector('.top')).display]);
  await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
  const tooWide = [];
  for (const [width, height, scheme] of [[320, 640, 'light'], [360, 740, 'dark'], [1280, 900, 'dark'], [3840, 2160, 'light']]) {
    await page.emulateMedia({ colorScheme: scheme });
    await page.setViewportSize({ width, height });
    await page.waitForTimeout(300);
    await hands.look(`record-${width}-${scheme}`, { fullPage: width < 2000 });
    tooWide.push(await hands.tooWide());
  }
  await hands.go('record?uid=1.2.3');
  const unknown = await page.locator('main').innerText();
  await hands.look('unknown');
  return { ...seen, inPrint, tooWide, unknown };
});
