import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import {
  chooseFiles,
  keepPicture,
  openGroup,
  verdict,
  viewerForTests,
} from '../support/viewer/served-viewer.ts';

const viewer = viewerForTests();

/** Long names, long notices and a board of many woods: what widens a page. */
const WIDE_SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="80mm" viewBox="0 0 200 80">
  <g id="averylongnameofalayerwithoutanyspaceinit_averylongnameofalayerwithoutanyspaceinit"><rect x="5" y="5" width="140" height="6"/></g>
  <rect x="5" y="20" width="20" height="1.2"/><image href="averylongaddress/averylongaddress/averylongaddress.png" width="9" height="9"/></svg>`;
const WIDE_NAME =
  'a-very-long-name-of-a-drawing-without-any-space-in-it-as-exports-often-have-them-2026-12-01.svg';
const WIDE_JOB = {
  schema: 'pourproof/job@1',
  artwork: WIDE_NAME,
  board: 'stripes 300x180x20mm maple:40mm walnut:20mm cherry:20mm padauk:30mm',
  start: '2026-12-01 09:00',
} as const;

/** Text of a reader who asks the browser for larger letters. */
async function enlarge(page: Page, percent: number): Promise<void> {
  await page.evaluate((share) => {
    document.documentElement.style.fontSize = `${share}%`;
  }, percent);
}

/** What sticks out of the page to the side, or is cut off by what it lies in. */
async function cutOff(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    const found: string[] = [];
    const look = (root: ParentNode): void => {
      for (const element of root.querySelectorAll<HTMLElement>('*')) {
        const box = element.getBoundingClientRect();
        const style = getComputedStyle(element);
        const isSeen =
          box.width > 1 &&
          box.height > 1 &&
          style.visibility === 'visible' &&
          // the lines of the artwork are painted a little beyond the sheet, which hides what lies outside; steps run on to the side
          element.closest('svg, .sheet > .art-canvas, ol.runs > *') === null;
        const name = `${element.localName}.${element.className} ${(element.textContent ?? '').trim().slice(0, 30)}`;
        if (isSeen && (box.right > width + 1 || box.left < -1)) {
          found.push(`sticks out: ${name}`);
        }
        const holds = element.matches(
          'button, label, summary, h1, h2, h3, p, li, td, th, dd, dt, span, legend, a',
        );
        if (
          isSeen &&
          holds &&
          style.display !== 'inline' &&
          (element.scrollWidth > element.clientWidth + 1 ||
            (style.overflowY === 'hidden' && element.scrollHeight > element.clientHeight + 1))
        ) {
          found.push(`cut off: ${name}`);
        }
        if (element.shadowRoot !== null) {
          look(element.shadowRoot);
        }
      }
    };
    look(document);
    // controls on the picture must leave each other in reach
    const sheet = document.querySelector('proof-app')?.shadowRoot?.querySelector('proof-sheet');
    const boxes = [...(sheet?.shadowRoot?.querySelectorAll('button') ?? [])].map((each) =>
      each.getBoundingClientRect(),
    );
    for (const [k, a] of boxes.entries()) {
      const isUnder = boxes
        .slice(0, k)
        .some(
          (b) =>
            a.width > 0 &&
            Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2 &&
            Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 2,
        );
      if (isUnder) {
        found.push(`control ${k} of the picture lies over another`);
      }
    }
    if (document.documentElement.scrollWidth > width) {
      found.push(`the page scrolls to the side: ${document.documentElement.scrollWidth} of ${width} px`);
    }
    return found;
  });
}

describe.each([
  [360, 100],
  [360, 200],
  [768, 100],
  [768, 200],
  [1280, 100],
  [1280, 200],
])('at %i px and text of %i %%', (width, percent) => {
  test('nothing sticks out, nothing is cut off, on the blank page, with a proof, with all open, with a failure', async () => {
    const { page } = await viewer.open({ viewport: { width, height: 800 } });
    await enlarge(page, (percent * 15) / 16);
    expect(await cutOff(page)).toEqual([]);
    await keepPicture(page, `blank-${width}-${percent}`);
    await chooseFiles(page, { [WIDE_NAME]: WIDE_SVG, 'job.json': JSON.stringify(WIDE_JOB) });
    await verdict(page);
    expect(await cutOff(page)).toEqual([]);
    await keepPicture(page, `proof-${width}-${percent}`);
    if (!(await page.locator('bit-list').isVisible())) {
      await page.locator('.job > summary').click();
    }
    await page.getByText('Lettering: lines, spacing').click();
    for (const title of ['Board', 'Resin and colour', 'Levelling', 'Shop and dates', 'Size and reading']) {
      await openGroup(page, title);
    }
    await page.getByLabel('Depth of the pocket').fill('3');
    await page.getByLabel('Depth of the pocket').press('Tab');
    await page.locator('.head').first().click();
    expect(await cutOff(page)).toEqual([]);
    await page.screenshot({ path: `proof-out/viewer-open-${width}-${percent}.png`, fullPage: true });
    await chooseFiles(page, { 'broken.svg': '<svg xmlns="http://www.w3.org/2000/svg"><g></svg>' });
    await page.locator('failure-note dl').waitFor();
    expect(await cutOff(page)).toEqual([]);
  });
});
