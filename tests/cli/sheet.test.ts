import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { CSS_PX_PER_INCH, mmFromInches } from '@pourproof/plane';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { captured, fixture } from '../support/cli/captured-run.ts';
import { findChromium } from '../support/find-chromium.mjs';

let folder: string;
let sheet: string;
let widthMm: number;
let browser: Browser;

beforeAll(async () => {
  const executablePath = findChromium();
  if (executablePath === undefined) {
    throw new Error('No Chromium found: install the package "chromium", or set CHROMIUM to its path.');
  }
  folder = mkdtempSync(join(tmpdir(), 'pourproof-sheet-'));
  sheet = join(folder, 'sheet.html');
  const { code, out, err } = await captured([
    'vet',
    '--job',
    fixture('demo/job.json'),
    '--full',
    '--report',
    sheet,
  ]);
  widthMm = Number(/^ {2}Size +([\d.]+) mm/mu.exec(out)?.[1]);
  expect({ code, err }).toEqual({ code: 1, err: '' });
  browser = await chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-sync',
    ],
  });
}, 60_000);

afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the sheet', () => {
  test('needs nothing but itself: no script, no address, no file', () => {
    const html = readFileSync(sheet, 'utf8');
    expect(html).not.toMatch(/<script|<link|<img|<iframe|@import|\son[a-z]+=|javascript:/iu);
    const addresses = [...html.matchAll(/(?:href|src|url)\s*[=(]\s*["']?([^"')\s>]+)/giu)].map(
      (match) => match[1],
    );
    expect(addresses.filter((address) => !address?.startsWith('#'))).toEqual([]);
  });

  test.each([
    ['a phone', 360],
    ['a desk', 1280],
  ])('fits %s without scrolling sideways, and says the verdict first', async (_, width) => {
    const page = await browser.newPage({ viewport: { width, height: 800 } });
    const requests: string[] = [];
    const complaints: string[] = [];
    page.on('request', (request) => requests.push(request.url()));
    page.on('console', (message) => complaints.push(message.text()));
    page.on('pageerror', (error) => complaints.push(error.message));
    await page.goto(pathToFileURL(sheet).href);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    expect(((await page.locator('.stamp').textContent()) ?? '').toLowerCase()).toMatch(/^stop/u);
    expect(requests).toEqual([pathToFileURL(sheet).href]);
    expect(complaints).toEqual([]);
    await page.close();
  });

  test('draws the artwork in the size that its caption states', async () => {
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    await page.goto(pathToFileURL(sheet).href);
    const widthOnScreen = await page
      .locator('svg.picture [id$="-shapes"] .outline')
      .evaluate((path: SVGPathElement) => path.getBBox().width * (path.getScreenCTM()?.a ?? 0));
    const caption = await page.locator('figcaption').first().textContent();
    expect(caption).toMatch(/^Printed at 100\s% this picture is in real size\./u);
    // the width is printed to 0.01 mm; a ruler of 100 mm is laid out in 1/64 px: 0.02 % together
    const mmOnScreen = await page.evaluate(() => {
      const ruler = document.createElement('div');
      ruler.style.width = '100mm';
      document.body.append(ruler);
      const width = ruler.getBoundingClientRect().width / 100;
      ruler.remove();
      return width;
    });
    expect(widthOnScreen / mmOnScreen / widthMm).toBeCloseTo(1, 3);
    await page.close();
  });

  test('has a mark in the picture and an enlargement for every finding', async () => {
    const page = await browser.newPage();
    await page.goto(pathToFileURL(sheet).href);
    const findings = await page.locator('section.finding').count();
    expect(findings).toBeGreaterThanOrEqual(3);
    for (let k = 0; k < findings; k++) {
      expect(await page.locator('section.finding').nth(k).locator('.loupe').count()).toBeGreaterThan(0);
      const labels = await page.locator('.mark text').allTextContents();
      expect(labels.filter((label) => Number.parseInt(label, 10) === k + 1).length).toBeGreaterThan(0);
    }
    await page.close();
  });

  test.each(['A4', 'Letter'])(
    'prints on %s in at most seven pages, the facts for the bench on one of them',
    async (format) => {
      const page = await browser.newPage();
      await page.goto(pathToFileURL(sheet).href);
      const pdf = (await page.pdf({ format, printBackground: false, preferCSSPageSize: false })).toString(
        'latin1',
      );
      const pages = (pdf.match(/\/Type\s*\/Page\b(?!s)/gu) ?? []).length;
      expect(pages).toBeGreaterThan(0);
      expect(pages).toBeLessThanOrEqual(7);
      // the room of a page within the margins of 13 mm and 12 mm
      const [widthOfPage, heightOfPage] = format === 'A4' ? [210 - 26, 297 - 24] : [215.9 - 26, 279.4 - 24];
      const px = CSS_PX_PER_INCH / mmFromInches(1);
      await page.emulateMedia({ media: 'print' });
      await page.setViewportSize({ width: Math.floor(widthOfPage * px), height: 1000 });
      const bench = page.locator('.bench');
      const height = await bench.evaluate((section) => section.getBoundingClientRect().height);
      expect(height / px).toBeLessThan(heightOfPage);
      const text = (await bench.textContent()) ?? '';
      for (const part of [
        '1.5 mm flat',
        'hard maple',
        '5.98',
        'Pour',
        'Places to watch',
        'Wood dust',
        'Checked by',
      ]) {
        expect(text.replaceAll('\u00a0', ' ')).toContain(part);
      }
      await page.close();
    },
  );
});
