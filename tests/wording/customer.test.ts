import { readArtwork } from '@pourproof/artwork';
import { type JobInput, settleJob } from '@pourproof/job';
import { packRings, signedArea } from '@pourproof/plane';
import { judgeDrawing } from '@pourproof/proof';
import { customerHtml, type Vetted } from '@pourproof/wording';
import { chromium } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { ensureChromium } from '../support/find-chromium.mjs';
import { pagesOf } from '../support/pdf-pages.ts';

const OPTIONS = { version: '0.1.0', date: '2026-12-01', text: null } as const;

/** A bar of 60 by 8 mm in one paint, and what else is drawn. */
function vettedBars(job: JobInput, more = ''): Vetted {
  const bytes = Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="28mm" viewBox="0 0 60 28"><rect width="60" height="8" fill="#203040"/>${more}</svg>`,
  );
  const settled = settleJob(job, { source: 'drawing' });
  return { ...judgeDrawing(readArtwork(bytes, 'bars.svg'), 'bars.svg', settled), job: settled };
}

/** The words of a page, without its head. */
function wordsOf(html: string): string {
  const [, body = ''] = html.split('<body>');
  return body
    .replaceAll(/<svg[\s\S]*?<\/svg>/gu, '')
    .replaceAll(/<[^>]+>/gu, ' ')
    .replaceAll('&amp;', '&')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll(/\s+/gu, ' ');
}

describe('the text to read back', () => {
  const vetted = vettedBars({});

  test('stands there letter for letter, with its spaces and marks, and runs nothing', () => {
    const words = wordsOf(customerHtml(vetted, { ...OPTIONS, text: 'Zoë  & <b>Ash</b>\\n1987' }));
    expect(words).toContain('Zoë & <b>Ash</b>');
    // two spaces are seen as two; a letter with its mark is one
    expect(words).toContain('Z o ë ␣ ␣ & ␣ < b > A s h < / b >');
    expect(words).toContain('1 9 8 7');
  });

  test('has pages of its own when it is long: every line once, in order, and pages counted', () => {
    const lines = Array.from({ length: 70 }, (_, k) => `Line number ${k + 1} of a poem`);
    const html = customerHtml(vetted, { ...OPTIONS, text: lines.join('\n') });
    const read = [...html.matchAll(/<p class="read"><bdi>([^<]*)<\/bdi>/gu)].map(([, line]) => line);
    expect(read).toEqual(lines);
    const pages = [...html.matchAll(/page (\d+) of (\d+)/gu)].map(([, page, count]) => [+page!, +count!]);
    expect(pages).toEqual(pages.map((_, k) => [k + 1, pages.length]));
    expect(pages.length).toBe([...html.matchAll(/<section/gu)].length);
    // no page holds more than it has room for
    for (const section of html.split('<section').slice(1)) {
      expect([...section.matchAll(/class="read"/gu)].length).toBeLessThanOrEqual(24);
    }
  });

  test('of a drawing is read from the drawing, which is said', () => {
    expect(wordsOf(customerHtml(vetted, OPTIONS))).toContain('read its words on the next sheets');
  });
});

test('what has open stops is not for a customer, which stands on top', () => {
  const narrow = vettedBars({ bit: ['flat:10mm'] });
  expect(narrow.report.verdict).toBe('stop');
  expect(wordsOf(customerHtml(narrow, OPTIONS))).toContain('Not ready for a customer');
  const sound = vettedBars({ bit: ['flat:3mm'], seal: 'epoxy' });
  const stops = sound.report.findings.filter(({ severity }) => severity === 'stop');
  expect(stops).toEqual([]);
  expect(wordsOf(customerHtml(sound, OPTIONS))).not.toContain('Not ready');
});

test('each colour has a fill of its own, and together they are all that is cut', () => {
  const vetted = vettedBars({ bit: ['flat:3mm'] }, '<rect y="20" width="30" height="8" fill="#a02020"/>');
  const html = customerHtml(vetted, OPTIONS);
  const drawing = /<g id="drawing">([\s\S]*?)<\/g>/u.exec(html)![1]!;
  const filled = [...drawing.matchAll(/d="([^"]+)" fill-rule="evenodd" fill="url\(#(fill-\d)\)"/gu)];
  expect(filled.map(([, , fill]) => fill)).toEqual(['fill-1', 'fill-2']);
  const areas = filled.map(([, path]) => {
    const rings = path!
      .split('Z')
      .filter((ring) => ring !== '')
      .map((ring) => ring.match(/-?[\d.]+/gu)!.map(Number));
    return Math.abs(signedArea(packRings(rings)));
  });
  // a bar less what a round bit leaves in four corners: (4 − π) r²
  const corners = (4 - Math.PI) * 1.5 ** 2;
  expect(areas[0]).toBeCloseTo(60 * 8 - corners, 0);
  expect(areas[1]).toBeCloseTo(30 * 8 - corners, 0);
  expect(areas[0]! + areas[1]!).toBeCloseTo(vetted.report.cut.areaMm2, 1);
  for (const fill of ['fill-1', 'fill-2']) {
    expect(html).toContain(`<pattern id="${fill}"`);
  }
  // in words that a customer knows
  const key = wordsOf(html);
  expect(key).toContain('1. blue');
  expect(key).toContain('2. brown');
  expect(key).not.toContain('#');
});

test('the first page has room for all that may stand on it, above the lines to sign', async () => {
  const paints = ['#a02020', '#20a020', '#2020a0', '#a0a020', '#a020a0'];
  const more = paints.map((paint, k) => `<rect x="${10 * k}" y="20" width="6" height="6" fill="${paint}"/>`);
  const vetted = vettedBars(
    { bit: ['flat:10mm'], board: 'plain 300x120x20mm maple', boards: 12 },
    more.join(''),
  );
  expect(vetted.picture.colours.length).toBe(6);
  // the widest letters; twice as many rows have a page of their own
  const row = 'W'.repeat(24);
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage();
    for (const paper of ['a4', 'letter'] as const) {
      await page.setContent(customerHtml(vetted, { ...OPTIONS, paper, text: `${row}\n${row}` }));
      const [end, lines] = await page.evaluate(() =>
        ['.ticks', '.signing'].map((name) => document.querySelector(name)!.getBoundingClientRect()),
      );
      expect(await page.locator('.spelled').count()).toBe(2);
      expect(end!.y + end!.height, paper).toBeLessThan(lines!.y);
      const long = Array.from({ length: 30 }, () => row).join('\n');
      await page.setContent(customerHtml(vetted, { ...OPTIONS, paper, text: long }));
      const room = await page.evaluate(() =>
        [...document.querySelectorAll('section')]
          .filter((section) => section.querySelector('.read') !== null)
          .map((section) => {
            const last = [...section.querySelectorAll('.read')].at(-1)!.getBoundingClientRect();
            return section.querySelector('.foot')!.getBoundingClientRect().top - last.bottom;
          }),
      );
      expect(room.length, paper).toBe(2);
      expect(Math.min(...room), paper).toBeGreaterThan(0);
    }
  } finally {
    await browser.close();
  }
});

test('on paper a file has no folders, and lettering keeps its strokes', () => {
  const vetted = vettedBars({});
  const named = (file: string, format: 'svg' | 'lettering'): string =>
    customerHtml(
      { ...vetted, report: { ...vetted.report, artwork: { ...vetted.report.artwork, file, format } } },
      OPTIONS,
    );
  expect(named('/home/shop/orders/sign.svg', 'svg')).not.toContain('orders');
  expect(named('C:\\\\orders\\\\sign.svg', 'svg')).toContain('sign.svg, job');
  expect(named('Rowan / Ash', 'lettering')).toContain('Rowan / Ash, job');
});

test('on paper the cut has its size, and every sheet a bar of 100 mm', async () => {
  const vetted = vettedBars({ bit: ['flat:3mm'], board: 'plain 300x120x20mm maple' });
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: ['--no-sandbox'] });
  try {
    const page = await browser.newPage();
    for (const [paper, width] of [
      ['a4', 210],
      ['letter', 215.9],
    ] as const) {
      await page.setContent(customerHtml(vetted, { ...OPTIONS, paper, text: 'Bar' }));
      const [first, ...sheets] = pagesOf(await page.pdf({ preferCSSPageSize: true }));
      expect(sheets.length).toBe(2);
      expect(Math.abs(first!.widthMm - width)).toBeLessThan(0.4);
      for (const { levelLinesMm } of sheets) {
        expect(levelLinesMm.some((length) => Math.abs(length - 100) < 0.02)).toBe(true);
        // the straight part of the bar's long sides, between its round corners, on whichever sheet it is drawn
        expect(levelLinesMm.some((length) => Math.abs(length - 57) < 0.05)).toBe(true);
      }
    }
  } finally {
    await browser.close();
  }
});
