// SPDX-License-Identifier: Apache-2.0
// The service's own pages in a headless browser, used as a person uses them; and what a person cannot see: whether axe-core
// finds a barrier, and how long it was from the hand to the drawing.
import fs from 'node:fs';
import { createRequire } from 'node:module';
import { Browser } from '../browser.mjs';

const AXE = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

export class Hands {
  /**
   * Uses the pages, then prints what was found as one JSON document.
   *
   * @param {string} service its address
   * @param {string} pictures folder for screenshots
   * @param {object} how of the browser, such as viewport and colorScheme
   * @param {(hands: Hands) => Promise<object>} work
   */
  static async use(service, pictures, how, work) {
    const browser = await Browser.open(service, pictures, { viewport: { width: 1280, height: 900 }, ...how });
    const hands = new Hands(browser, service);
    try {
      const found = await work(hands).catch(async (problem) => {
        await browser.picture('failed', { fullPage: true });
        throw problem;
      });
      const { barriers, policy } = hands;
      const { elsewhere, exceptions } = browser;
      process.stdout.write(JSON.stringify({ ...found, barriers, policy, elsewhere, exceptions }));
    } finally {
      await browser.close();
    }
  }

  constructor(browser, service) {
    this.browser = browser;
    this.page = browser.page;
    this.service = service;
    this.barriers = []; // what axe-core finds
    this.policy = []; // what the Content-Security-Policy stopped
    this.page.on('dialog', (dialog) => dialog.accept()); // yes, leave the page
    this.page.on('console', (message) => {
      if (/Content Security Policy/i.test(message.text())) this.policy.push(message.text());
    });
  }

  async go(address) {
    await this.page.goto(`${this.service}pages/${address}`);
  }

  /** Sends a file from this device and waits until its frame is shown. */
  async upload(file) {
    const before = await this.page.getAttribute('#frame image', 'href');
    await this.page.setInputFiles('#file', file);
    await this.page.waitForFunction((other) => {
      const now = document.querySelector('#frame image').getAttribute('href');
      return now && now !== other && !document.querySelector('#work').hidden;
    }, before);
  }

  /** Where a place of the frame is on the screen; brought into view first. */
  async place([column, row]) {
    await this.page.locator('#frame').scrollIntoViewIfNeeded();
    return this.page.evaluate(
      async ([column, row]) => {
        const image = document.querySelector('#frame image');
        const picture = new Image();
        picture.src = image.getAttribute('href');
        await picture.decode();
        const of = (name) => Number(image.getAttribute(name));
        const box = document.querySelector('#frame').getBoundingClientRect();
        return {
          x: box.left + of('x') + (column * of('width')) / picture.naturalWidth,
          y: box.top + of('y') + (row * of('height')) / picture.naturalHeight,
        };
      },
      [column, row],
    );
  }

  async tool(name) {
    await this.page.click(`[data-tool="${name}"]`);
  }

  async tap(point) {
    const { x, y } = await this.place(point);
    await this.page.mouse.click(x, y);
    await this.settled();
  }

  /** Takes a mark by the mouse and moves it in many small steps. */
  async drag(from, to, steps = 40) {
    const [a, b] = [await this.place(from), await this.place(to)];
    await this.page.mouse.move(a.x, a.y);
    await this.page.mouse.down();
    await this.page.mouse.move(b.x, b.y, { steps });
    await this.page.mouse.up();
    await this.settled();
  }

  /** Moves a mark by the keys until it lies on a whole pixel: shift for tens. */
  async keys(key, column, row) {
    await this.page.locator(`[data-key="${key}"]`).focus();
    for (const [steps, more, less] of [
      [column, 'ArrowRight', 'ArrowLeft'],
      [row, 'ArrowDown', 'ArrowUp'],
    ]) {
      const arrow = steps > 0 ? more : less;
      for (let i = 0; i < Math.floor(Math.abs(steps) / 10); i++) await this.page.keyboard.press(`Shift+${arrow}`);
      for (let i = 0; i < Math.abs(steps) % 10; i++) await this.page.keyboard.press(arrow);
    }
    await this.settled();
  }

  async field(name, value) {
    const input = this.page.locator(`#${name}`);
    if ((await input.evaluate((element) => element.tagName)) === 'SELECT') await input.selectOption(value);
    else {
      await input.fill(value);
      await input.press('Tab');
    }
    await this.settled();
  }

  async click(name) {
    await this.page.click(`#${name}`);
  }

  async says(name, words) {
    await this.page.locator(`#${name}`).filter({ hasText: words }).waitFor();
  }

  /** Until the service has answered what was asked last, and the answer is shown. */
  async settled() {
    await this.page.waitForFunction(() => document.getElementById('plan').getAttribute('aria-busy') === 'false');
    await this.page.evaluate(() => new Promise((painted) => requestAnimationFrame(() => requestAnimationFrame(painted))));
  }

  /** Rows of a table as the page shows them, by the field they show. */
  async table(name) {
    return this.page.$$eval(`#${name} tbody tr`, (rows) =>
      Object.fromEntries(rows.map((row) => [row.dataset.field, [...row.cells].map((cell) => cell.innerText.trim())])),
    );
  }

  async text(name) {
    return (await this.page.textContent(`#${name}`)).trim();
  }

  /** A picture for people, and what axe-core says of the page as it stands. */
  async look(name, how = {}) {
    await this.page.evaluate(() => {
      document.activeElement?.blur();
      scrollTo(0, 0);
    });
    await this.browser.picture(name, how);
    await this.page.evaluate(AXE);
    const found = await this.page.evaluate((rules) => axe.run(document, { runOnly: rules }), RULES);
    for (const { id, nodes } of found.violations) {
      this.barriers.push(`${name}: ${id}: ${nodes.map((node) => node.target.join(' ')).join(', ')}`);
    }
  }

  /** Milliseconds from the hand to the drawing, of every drawing that followed a hand. */
  async delays() {
    const all = await this.page.evaluate(() =>
      performance.getEntriesByName('hand-to-drawing').map((entry) => entry.duration),
    );
    all.sort((one, other) => one - other);
    return { count: all.length, median: all[all.length >> 1], p95: all[Math.floor(all.length * 0.95)] };
  }

  /** Whether the page needs to be scrolled sideways. */
  async tooWide() {
    return this.page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
  }
}
