// SPDX-License-Identifier: Apache-2.0
// The log of a case kept on a tablet, with the network gone in the middle, answers lost, the page loaded anew, entries taken
// back and entered later.
// Arguments: address of the service, folder for screenshots, identifier of the case.
import { Hands } from './hands.mjs';

const [service, pictures, caseId] = process.argv.slice(2);
const tablet = { viewport: { width: 1280, height: 900 }, hasTouch: true };
await Hands.use(service, pictures, tablet, async (hands) => {
  const { page } = hands;
  const tap = (selector) => page.locator(selector).tap();
  const kept = () => hands.says('waiting', 'Every entry is kept by the service.');
  const shown = async (count) => {
    await page.waitForFunction((n) => document.querySelectorAll('#entries li').length === n, count);
    await kept();
  };
  const fill = (name, value) => page.locator(`#${name}`).fill(value);
  const choose = (name, value) => page.locator(`#${name}`).selectOption(value);
  const radio = (name, value) => page.locator(`label:has(input[name="${name}"][value="${value}"])`).tap();
  const aliquot = async (volume) => {
    await tap(`[data-volume="${volume}"]`);
    await tap('#aliquot button[type="submit"]');
  };
  const waiting = () => hands.text('waiting');

  await hands.go(`log?case=${caseId}`);
  await page.locator('#bedside').waitFor();
  await page.waitForFunction(() => document.getElementById('card-action').textContent !== '');
  const side = { text: await hands.text('patient-side'), height: await page.$eval('#patient-side', (e) => e.getBoundingClientRect().height) };
  await hands.look('before');

  // Nobody has said who enters: nothing is entered.
  await tap('[data-kind="puncture"]');
  const refusedWithoutName = await hands.text('problem');
  await fill('entered-by', 'Roe^Al');

  await fill('stop-name-1', 'Doe^Jo');
  await fill('stop-name-2', 'Roe^Al');
  await choose('stop-block', 'axillaryBrachialPlexus');
  await radio('stop-side', 'right');
  await page.check('#mark-seen');
  await page.check('#consent-seen');
  await tap('#stop-moment button[type="submit"]');
  await shown(1);

  await choose('agent-drug', 'bupivacaine');
  await fill('agent-strength', '0.5');
  await choose('agent-basis', 'salt');
  await choose('agent-route', 'perineural');
  await fill('agent-drawnUp', '20');
  await tap('#agent button[type="submit"]');
  await kept();
  await page.locator('#aliquot-agent option').filter({ hasText: 'bupivacaine' }).waitFor({ state: 'attached' });
  await tap('[data-check="inLine"] [data-answer="done"]');
  await tap('[data-check="air"] [data-answer="notDone"]');
  await fill('check-air-why', 'tubing changed');
  await tap('[data-check="air"] [data-because]');
  await fill('member-name', 'Roe^Al');
  await fill('member-role', 'assistant');
  await tap('#member button[type="submit"]');
  await kept();

  // By the keyboard: the same buttons.
  await page.locator('[data-kind="puncture"]').focus();
  await page.keyboard.press('Enter');
  await shown(2);
  await tap('[data-state="nearPart"]');
  await shown(3);
  await page.locator('#card[data-kind="step"]').waitFor();
  const card = { action: await hands.text('card-action'), caution: await hands.text('card-caution') };
  await tap('#tried-same');
  await shown(4);
  await page.waitForFunction((before) => document.getElementById('card-action').textContent !== before, card.action);
  const second = await hands.text('card-action');
  await tap('#tried-other');
  await tap('[data-state="shaftAndTip"]');
  await shown(5);
  await tap('[data-kind="aspiration"][data-blood="no"]');
  await page.locator('#aliquot-agent').selectOption({ index: 1 });
  await radio('spread', 'target');
  await radio('resistance', 'easy');
  await radio('pain', 'none');
  await aliquot(5);
  await shown(7);
  await hands.look('in-the-middle', { fullPage: true });

  // The network goes; entries are made; the network comes back.
  await hands.browser.context.setOffline(true);
  await tap('[data-kind="redirection"]');
  await tap('[data-sign="tipLost"]');
  await tap('[data-state="farPart"]');
  await aliquot(3);
  await hands.says('waiting', '4 entries wait');
  await hands.says('card-action', 'Stop: tip lost');
  await hands.says('connection', 'does not answer');
  const meanwhile = { waiting: await waiting(), card: await hands.text('card-action'), notCounted: await hands.text('not-counted') };
  await hands.look('without-network', { fullPage: true });
  await hands.browser.context.setOffline(false);
  await shown(11);

  // The service gets an entry, and its answer is lost; then a proxy answers in the service's place; then nothing gets
  // through while the page is loaded anew.
  let lost = 0;
  await page.route('**/events', async (route) => {
    lost++;
    if (lost === 2) return route.fulfill({ status: 200, contentType: 'text/html', body: '<p>Log in to the network.</p>' });
    if (lost === 1) await route.fetch();
    return route.abort();
  });
  await tap('[data-kind="aspiration"][data-blood="no"]');
  await hands.says('waiting', '1 entry waits');
  await tap('[data-kind="pass"]');
  await hands.says('waiting', '2 entries wait');
  await page.reload();
  await hands.says('waiting', 'wait for the service');
  const afterReload = await waiting();
  const by = await page.inputValue('#entered-by');
  await page.unroute('**/events');
  await shown(13);

  // Undo the last; take back an earlier one, and put it back.
  await hands.says('undo', 'New pass');
  await tap('#undo');
  await page.locator('#entries li[data-stands="false"]').filter({ hasText: 'New pass' }).waitFor();
  await kept();
  const redirection = page.locator('#entries li').filter({ hasText: 'Redirection' });
  await redirection.getByRole('button', { name: /Take back/ }).tap();
  await redirection.getByRole('button', { name: /Put back/ }).waitFor();
  await kept();
  await redirection.getByRole('button', { name: /Put back/ }).tap();
  await redirection.getByRole('button', { name: /Take back/ }).waitFor();
  await kept();

  // Entered later, with the time at which it happened.
  const earlier = await page.evaluate(() => {
    const time = new Date(Date.now() - 90_000);
    const two = (number) => String(number).padStart(2, '0');
    return `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}T${two(time.getHours())}:${two(time.getMinutes())}:${two(time.getSeconds())}`;
  });
  await tap('#later');
  await fill('later-time', earlier);
  await choose('rare-kind', 'doppler');
  await fill('rare-text', 'vein beside the nerve');
  await tap('#rare button[type="submit"]');
  await shown(14);
  await tap('#later');
  await tap('[data-kind="complicationsLookedFor"]');
  await shown(15);
  await page.waitForFunction(() => !document.querySelector('#volumes').innerText.includes('NaN'));
  await hands.look('after', { fullPage: true });

  const small = await page.$$eval('.touch button, .big', (all) =>
    all.filter((e) => e.offsetParent && e.getBoundingClientRect().height < 44).map((e) => e.textContent));
  const entries = await page.$$eval('#entries li', (rows) =>
    rows.map((row) => ({ id: row.dataset.id, stands: row.dataset.stands === 'true', text: row.querySelector('.what').textContent, notes: row.querySelector('small').textContent })));
  const doses = { volumes: await page.locator('#volumes').innerText(), table: await page.locator('#session-dose').innerText(), words: await page.locator('#dose-words').innerText() };
  const left = await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('plumbline-entry/')));
  const tooWide = [];
  for (const [width, height, scheme] of [[320, 640, 'light'], [360, 740, 'light'], [1024, 768, 'dark'], [360, 740, 'dark']]) {
    await page.emulateMedia({ colorScheme: scheme });
    await page.setViewportSize({ width, height });
    await page.waitForTimeout(300);
    await hands.look(`log-${width}-${scheme}`, { fullPage: true });
    tooWide.push(await hands.tooWide());
  }
  return { side, refusedWithoutName, card, second, meanwhile, afterReload, by, lost, entries, doses, left, small, earlier, tooWide };
});
