// SPDX-License-Identifier: Apache-2.0
// The viewer in a headless browser, used as a person uses it: mouse and keyboard. What is asked of it without the mouse
// is only what it holds, so that a test can judge more than a picture.
import { Browser, LIMIT_MS } from './browser.mjs';

const MOST_PAGES = 4; // of the series that the tests turn

/** Whether what is waited for came before its limit; what else goes wrong stays an error. */
async function inTime(waiting) {
  try {
    await waiting;
    return true;
  } catch (problem) {
    if (problem.name === 'TimeoutError') return false;
    throw problem;
  }
}

export class Viewer {
  /** @param {string} address of the viewer, @param {string} pictures folder for screenshots */
  static async open(address, pictures) {
    const browser = await Browser.open(address, pictures, { viewport: { width: 1400, height: 900 } });
    // as somebody who has seen the viewer's tour before: it comes at a moment of its own, and covers everything
    await browser.context.addInitScript(() => {
      if (window.top === window) localStorage.setItem('shownTours', JSON.stringify(['basicViewerTour']));
    });
    return new Viewer(browser, address);
  }

  constructor(browser, address) {
    this.browser = browser;
    this.address = address;
    this.page = browser.page;
    this.elsewhere = browser.elsewhere;
    this.exceptions = browser.exceptions;
  }

  /** Opens a study and waits until its first picture is drawn. */
  async study(uid) {
    await this.page.goto(`${this.address}viewer?StudyInstanceUIDs=${uid}`);
    await this.drawn();
  }

  async drawn() {
    await this.page.waitForFunction(() => {
      const { viewportGridService, cornerstoneViewportService } = window.services ?? {};
      const ready = viewportGridService?.serviceImplementation?._getState;
      const id = ready && viewportGridService.getActiveViewportId();
      const viewport = id && cornerstoneViewportService.getCornerstoneViewport(id);
      return viewport?.getCurrentImageId?.() && viewport.viewportStatus === 'rendered';
    });
  }

  /** Opens a series from the list on the left as a double click does. */
  async series(modality, description) {
    const row = this.page
      .locator('[data-cy^="study-browser-thumbnail"]')
      .filter({ hasText: modality })
      .filter({ hasText: description });
    await row.last().dblclick();
  }

  /**
   * Opens a report and tells how its load ended: a viewer that fails leaves the lines of the one before on its screen.
   *
   * @returns {Promise<{ended: string, measurements: object[]}>} as the viewer read them
   */
  async report(description, limit = LIMIT_MS) {
    const watch = (wanted) => {
      const sets = window.services.displaySetService.getActiveDisplaySets();
      const report = sets.filter((set) => set.Modality === 'SR' && set.SeriesDescription === wanted).at(-1);
      const load = report.load;
      report.load = (...given) => {
        const loading = Promise.resolve(load.apply(report, given));
        loading.then(
          () => (window.reportEnded = 'resolved'),
          (problem) => (window.reportEnded = String(problem)),
        );
        return loading;
      };
      window.report = report;
      window.reportEnded = undefined;
    };
    await this.page.evaluate(watch, description);
    await this.series('SR', description);
    await inTime(this.page.waitForFunction(() => window.reportEnded, null, { timeout: limit }));
    return this.page.evaluate(() => ({
      ended: window.reportEnded ?? 'never',
      measurements: (window.report.measurements ?? []).map((read) => ({
        trackingUid: read.TrackingUniqueIdentifier,
        loaded: read.loaded,
        labels: read.labels.map(({ label, value }) => `${label} ${value}`.trim()),
        graphics: read.coords.map((coordinate) => ({
          type: coordinate.GraphicType,
          data: coordinate.GraphicData,
          image: coordinate.ReferencedSOPSequence?.ReferencedSOPInstanceUID,
        })),
      })),
    }));
  }

  /** Waits until the active viewport shows an image of the given instance. */
  async shows(sopInstanceUid, limit = LIMIT_MS) {
    await this.page.waitForFunction((uid) => {
      const { viewportGridService, cornerstoneViewportService } = window.services;
      const viewport = cornerstoneViewportService.getCornerstoneViewport(viewportGridService.getActiveViewportId());
      return viewport?.getCurrentImageId?.()?.includes(uid) && viewport.viewportStatus === 'rendered';
    }, sopInstanceUid, { timeout: limit });
  }

  /** Turns to the next image of the series as the wheel does. */
  async turnTo(sopInstanceUid, steps) {
    await this.page.locator('.cornerstone-viewport-element').first().hover();
    await this.page.mouse.wheel(0, steps * 100);
    await this.shows(sopInstanceUid);
  }

  /**
   * Turns the pages of a series to an image, wherever it stands.
   *
   * @returns {Promise<boolean>} false where the series on the screen does not hold it
   */
  async turned(sopInstanceUid, limit) {
    const viewport = this.page.locator('.cornerstone-viewport-element').first();
    if (!(await inTime(viewport.hover({ timeout: limit })))) return false;
    await this.page.mouse.wheel(0, -1000);
    for (let page = 0; page < MOST_PAGES; page++) {
      if (await inTime(this.shows(sopInstanceUid, limit / MOST_PAGES))) return true;
      await this.page.mouse.wheel(0, 100);
    }
    return false;
  }

  /** Waits until something is drawn over the picture and no longer changes. */
  async painted() {
    if (!(await this.isPainted(LIMIT_MS))) throw new Error('Nothing is drawn over the picture.');
  }

  /** @returns {Promise<boolean>} whether something is drawn over the picture, after the limit at the latest */
  async isPainted(limit) {
    const drawn = this.page.waitForFunction(() => {
      const now = document.querySelector('svg.svg-layer').innerHTML;
      const same = now.includes('data-annotation-uid') && now === window.paintedBefore;
      window.paintedBefore = now;
      return same;
    }, null, { polling: 200, timeout: limit });
    return inTime(drawn);
  }

  /** Waits for an image of the series and tells its instance and its size. */
  async imageOf(description) {
    const shown = await this.page.waitForFunction((wanted) => {
      const { viewportGridService, cornerstoneViewportService, displaySetService } = window.services;
      const viewport = cornerstoneViewportService.getCornerstoneViewport(viewportGridService.getActiveViewportId());
      const image = viewport?.viewportStatus === 'rendered' ? (viewport.getCurrentImageId?.() ?? '') : '';
      const sets = displaySetService.getActiveDisplaySets().filter((set) => set.SeriesDescription === wanted);
      const instance = sets.flatMap((set) => set.instances ?? []).find((each) => image.includes(each.SOPInstanceUID));
      const pixels = instance && viewport.getImageData();
      if (!pixels) return null;
      const [columns, rows] = pixels.dimensions;
      return { sopInstanceUid: instance.SOPInstanceUID, columns, rows };
    }, description);
    return shown.jsonValue();
  }

  /**
   * What is drawn over the picture, in its pixels.
   *
   * @returns {Promise<{image: string, texts: Object<string, {text: string, inside: boolean}>, lines: number[][][]}>} texts by tracking UID
   */
  async overlay() {
    return this.page.evaluate(() => {
      const { viewportGridService, cornerstoneViewportService } = window.services;
      const viewport = cornerstoneViewportService.getCornerstoneViewport(viewportGridService.getActiveViewportId());
      const image = viewport.getCurrentImageId();
      const pixel = (x, y) => window.cornerstone.utilities.worldToImageCoords(image, viewport.canvasToWorld([x, y]));
      const layer = viewport.element.querySelector('svg.svg-layer');
      const frame = viewport.element.getBoundingClientRect();
      const texts = {};
      layer.querySelectorAll('g[data-annotation-uid]').forEach((group) => {
        const box = group.getBoundingClientRect();
        const spans = [...group.querySelectorAll('tspan')].map((span) => span.textContent.trim());
        const inside = box.left >= frame.left && box.right <= frame.right && box.bottom <= frame.bottom;
        texts[group.dataset.annotationUid] = { text: spans.join(' / '), inside };
      });
      const numbers = (text) => text.match(/-?\d+(\.\d+)?/g).map(Number);
      const lines = [...layer.querySelectorAll('line')].map((line) =>
        [['x1', 'y1'], ['x2', 'y2']].map((end) => pixel(...end.map((name) => Number(line.getAttribute(name))))),
      );
      layer.querySelectorAll('polyline').forEach((line) => {
        const all = numbers(line.getAttribute('points'));
        lines.push(all.flatMap((x, i) => (i % 2 === 0 ? [pixel(x, all[i + 1])] : [])));
      });
      return { image, texts, lines };
    });
  }

  /** Where a point of the picture lies in the window; both count from the outer corner of the first pixel. */
  async place([column, row]) {
    return this.page.evaluate(
      (point) => {
        const { viewportGridService, cornerstoneViewportService } = window.services;
        const viewport = cornerstoneViewportService.getCornerstoneViewport(viewportGridService.getActiveViewportId());
        const world = window.cornerstone.utilities.imageToWorldCoords(viewport.getCurrentImageId(), point);
        const [x, y] = viewport.worldToCanvas(world);
        const corner = viewport.element.getBoundingClientRect();
        return { x: corner.left + x, y: corner.top + y };
      },
      [column, row],
    );
  }

  /** Opens the panel of measurements; it changes the size of the picture, so before anything is drawn. */
  async measurements() {
    await this.page.locator('[data-cy="trackedMeasurements-btn"]').click();
    await this.page.locator('[data-cy="trackedMeasurements-panel"]').first().waitFor();
  }

  async tool(name) {
    await this.page.locator('[data-cy="MeasurementTools-split-button-secondary"]').click();
    await this.page.locator(`[data-cy="${name}"]`).last().click();
  }

  /** Draws with the tool in hand from one point of the picture to another. */
  async drag(from, to) {
    const start = await this.place(from);
    const end = await this.place(to);
    await this.page.mouse.move(start.x, start.y);
    await this.page.mouse.down();
    await this.page.mouse.move((start.x + end.x) / 2, (start.y + end.y) / 2, { steps: 4 });
    await this.page.mouse.move(end.x, end.y, { steps: 4 });
    await this.page.mouse.up();
  }

  /** A line that is named afterwards; the first one is asked whether the series is to be tracked. */
  async line(label, from, to) {
    const rows = this.page.locator('[data-cy="trackedMeasurements-panel"] [data-cy="data-row"]');
    const before = await rows.count();
    await this.tool('Length');
    await this.drag(from, to);
    if (before === 0) await this.page.locator('[data-cy="prompt-begin-tracking-yes-btn"]').click();
    await this.page.waitForFunction(
      (wanted) => window.services.measurementService.getMeasurements().length === wanted,
      before + 1,
    );
    const row = rows.filter({ hasText: '(empty)' }).last();
    await row.hover();
    await row.locator('[data-cy="actionsMenuTrigger"]').click();
    await this.page.getByRole('menuitem', { name: 'Rename' }).click();
    await this.answer(label);
    await rows.filter({ hasText: label }).last().waitFor();
  }

  /** An arrow with its text, the head first. */
  async arrow(label, head, tail) {
    await this.tool('ArrowAnnotate');
    await this.drag(head, tail);
    await this.answer(label);
    const rows = this.page.locator('[data-cy="trackedMeasurements-panel"] [data-cy="data-row"]');
    await rows.filter({ hasText: label }).last().waitFor();
  }

  async answer(text) {
    const dialog = this.page.getByRole('dialog');
    await dialog.locator('input').last().fill(text);
    await dialog.getByRole('button', { name: 'Save', exact: true }).click();
    await dialog.waitFor({ state: 'hidden' });
  }

  /** Saves what is drawn as a report in the archive. */
  async save(name) {
    const stored = this.page.waitForResponse((response) => response.request().method() === 'POST');
    await this.page.getByRole('button', { name: 'Create SR' }).click();
    await this.answer(name);
    return (await stored).status();
  }

  /** The text that stands in the panel of measurements. */
  async listed() {
    return this.page.locator('[data-cy="trackedMeasurements-panel"] [data-cy="data-row"]').allInnerTexts();
  }

  /** The bytes of the document on the screen. */
  async document() {
    const shown = this.page.locator('object[type="application/pdf"]');
    await shown.waitFor({ state: 'attached' });
    return this.page.evaluate(async (address) => {
      const bytes = new Uint8Array(await (await fetch(address)).arrayBuffer());
      const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
      return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
    }, await shown.getAttribute('data'));
  }

  async picture(name) {
    await this.browser.picture(name);
  }

  async close() {
    await this.browser.close();
  }
}
