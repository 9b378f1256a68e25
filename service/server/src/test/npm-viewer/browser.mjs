// SPDX-License-Identifier: Apache-2.0
// A headless browser with one page, which notes what the page asks of other addresses and what nobody catches in it.
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { chromium } from 'playwright-core';

export const LIMIT_MS = 60_000; // a browser on a busy machine
const ARGUMENTS = [
  '--headless=new',
  '--no-sandbox',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-default-browser-check',
];

export class Browser {
  /**
   * @param {string} address that the page may ask, @param {string} pictures folder for screenshots
   * @param {object} how of playwright's context, such as viewport
   */
  static async open(address, pictures, how) {
    const profile = fs.mkdtempSync(path.join(os.tmpdir(), 'viewer-profile-'));
    fs.mkdirSync(pictures, { recursive: true });
    const context = await chromium.launchPersistentContext(profile, {
      executablePath: '/usr/bin/chromium',
      headless: false,
      ignoreDefaultArgs: ['--headless'],
      args: ARGUMENTS,
      ...how,
    });
    return new Browser(context, await context.newPage(), { address, pictures, profile });
  }

  constructor(context, page, { address, pictures, profile }) {
    Object.assign(this, { context, page, pictures, profile });
    this.elsewhere = []; // requests to other addresses
    this.exceptions = []; // those that nobody caught
    page.setDefaultTimeout(LIMIT_MS);
    page.on('request', (request) => {
      const url = request.url();
      if (/^(http|ws)/.test(url) && !url.startsWith(address)) this.elsewhere.push(url);
    });
    page.on('pageerror', (problem) => this.exceptions.push(String(problem)));
  }

  async picture(name, how = {}) {
    await this.page.screenshot({ path: path.join(this.pictures, `${name}.png`), ...how });
  }

  async close() {
    await this.context.close();
    fs.rmSync(this.profile, { recursive: true, force: true });
  }
}
