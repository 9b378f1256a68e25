// SPDX-License-Identifier: Apache-2.0
// Two people at one case: an assistant logs while the marks move, then somebody else sets the marks.
// Arguments: address of the service, folder for screenshots, file of the planned frame.
import { Hands } from './hands.mjs';

const [service, pictures, planned] = process.argv.slice(2);
await Hands.use(service, pictures, {}, async (hands) => {
  const { page } = hands;
  await hands.go('mark');
  await hands.upload(planned);
  await hands.tap([400, 400]);
  await hands.field('needle-side', 'right');
  await hands.click('keep');
  await hands.says('kept', 'Kept at');
  await page.waitForURL(/case=/);
  const caseId = new URL(page.url()).searchParams.get('case');
  const address = `${service}v1/cases/${caseId}`;
  const send = async (part, body, etag) => {
    const headers = { 'Content-Type': 'application/json', ...(etag ? { 'If-Match': etag } : {}) };
    const answer = await fetch(`${address}/${part}`, { method: 'POST', headers, body: JSON.stringify(body) });
    return answer.status;
  };
  const held = async () => {
    const answer = await fetch(address);
    return { etag: answer.headers.get('ETag'), document: await answer.json() };
  };
  const keptAt = async (row) => {
    for (let i = 0; i < 100; i++) {
      if ((await held()).document.marks.target.row === row) return true;
      await page.waitForTimeout(100);
    }
    return false;
  };
  const now = new Date().toISOString();
  const event = { id: 'e1', kind: 'puncture', happenedAt: now, enteredAt: now, enteredBy: 'Roe^Al' };
  const logged = await send('events', event);
  await hands.keys('target', 0, 3);
  const went = await keptAt(403);
  const { etag, document } = await held();
  const others = await send('marks', { ...document.marks, target: { column: 380, row: 380 } }, etag);
  await hands.keys('target', 0, 4);
  await hands.says('keep-problem', 'Somebody else changed');
  await hands.look('somebody-else');
  const stands = (await held()).document;
  await hands.click('reload');
  await page.waitForFunction(() => document.querySelector('[data-key="target"]')?.getAttribute('aria-label').includes('row 380.0'));
  await hands.keys('target', 0, 1);
  const goesOn = await keptAt(381);
  return { logged, went, others, stands, goesOn, events: (await held()).document.events.length };
});
