import { readArtwork } from '@pourproof/artwork';
import { type JobInput, settleJob } from '@pourproof/job';
import { MM_PER_INCH } from '@pourproof/plane';
import { judgeDrawing } from '@pourproof/proof';
import { jobChecksum, placementHtml, type Vetted } from '@pourproof/wording';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ensureChromium } from '../support/find-chromium.mjs';
import { pagesOf } from '../support/pdf-pages.ts';

const BOARD = 'plain 400x260x20mm maple';
const OPTIONS = { version: '0.1.0', date: '2026-12-01' } as const;

let browser: Browser;

beforeAll(async () => {
  browser = await chromium.launch({ executablePath: ensureChromium(), args: ['--no-sandbox'] });
});

afterAll(async () => {
  await browser.close();
});

/** A bar of 60 by 8 mm, vetted without ways out. */
function vettedBar(job: JobInput): Vetted {
  return vettedPath('M0 0H60V8H0Z', [60, 8], job);
}

function vettedPath(path: string, [width, height]: readonly [number, number], job: JobInput): Vetted {
  const bytes = Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"><path d="${path}"/></svg>`,
  );
  const settled = settleJob(job, { source: 'drawing' });
  return { ...judgeDrawing(readArtwork(bytes, 'bar.svg'), 'bar.svg', settled), job: settled };
}

/** Numbers to type by the name of their row. */
function typedNumbers(html: string): Map<string, readonly number[]> {
  const rows = html.matchAll(/<tr><th scope="row">([^<]+)<\/th><td>([^<]+)<\/td><td>([^<]+)<\/td>/gu);
  return new Map([...rows].map(([, name, x, y]) => [name!, [Number(x), Number(y)]]));
}

describe('numbers to type', () => {
  test('are from the lower left corner of the board, with the artwork where the job says', () => {
    const html = placementHtml(vettedBar({ board: BOARD, place: '150mm,90mm' }), OPTIONS);
    const numbers = typedNumbers(html);
    expect(numbers.get('Middle of the artwork')).toEqual([150, 170]);
    expect(numbers.get('Lower left corner of the artwork')).toEqual([120, 166]);
    expect(numbers.get('Upper right corner of the artwork')).toEqual([180, 174]);
    const [r1, r2] = [numbers.get('Mark R1')!, numbers.get('Mark R2')!];
    expect([r1, r2]).toEqual([
      [8, 8],
      [392, 252],
    ]);
    expect(html).toContain(`${Math.hypot(384, 244).toFixed(2)} mm away`);
  });

  test('a turned artwork turns with the board, and inches are typed in inches', () => {
    const turned = typedNumbers(placementHtml(vettedBar({ board: BOARD, turn: '90deg' }), OPTIONS));
    expect(turned.get('Lower left corner of the artwork')).toEqual([196, 100]);
    expect(turned.get('Upper right corner of the artwork')).toEqual([204, 160]);
    const inches = typedNumbers(placementHtml(vettedBar({ board: BOARD, units: 'in' }), OPTIONS));
    expect(inches.get('Middle of the artwork')![0]).toBeCloseTo(200 / MM_PER_INCH, 4);
  });

  test('without a board are from the artwork, whose marks lie beside it; a full board has no room for marks', () => {
    const bare = typedNumbers(placementHtml(vettedBar({}), OPTIONS));
    expect(bare.get('Lower left corner of the artwork')).toEqual([0, 0]);
    expect(bare.get('Mark R1')).toEqual([-8, -8]);
    const full = placementHtml(vettedBar({ board: 'plain 70x18x20mm maple' }), OPTIONS);
    expect(typedNumbers(full).has('Mark R1')).toBe(false);
    expect(full).toContain('no room for marks');
  });
});

test('the checksum tells one job from another, and no more', () => {
  const sum = jobChecksum(vettedBar({ depth: '3mm', wood: 'maple' }));
  expect(jobChecksum(vettedBar({ wood: 'maple', depth: '3mm' }))).toBe(sum);
  expect(jobChecksum(vettedBar({ depth: '4mm', wood: 'maple' }))).not.toBe(sum);
  expect(sum).toMatch(/^[\da-f]{8}$/u);
});

test('on paper every sheet has a bar of 100 mm, and sheets in A4 and Letter have their sizes', async () => {
  const vetted = vettedBar({ board: BOARD });
  const page = await browser.newPage();
  for (const [paper, width, height] of [
    ['a4', 210, 297],
    ['letter', 215.9, 279.4],
  ] as const) {
    const html = placementHtml(vetted, { ...OPTIONS, paper });
    await page.setContent(html);
    const pages = pagesOf(await page.pdf({ preferCSSPageSize: true }));
    const tiles = [...html.matchAll(/<section><svg/gu)].length;
    expect(tiles).toBe(6);
    expect(pages.length).toBe(tiles + 1);
    for (const { widthMm, heightMm, levelLinesMm } of pages.slice(1)) {
      expect(Math.abs(widthMm - width)).toBeLessThan(0.4);
      expect(Math.abs(heightMm - height)).toBeLessThan(0.4);
      expect(levelLinesMm.some((length) => Math.abs(length - 100) < 0.02)).toBe(true);
    }
  }
});

/** A piece that no turn brings back to itself, y down, mm. */
const ELL = [
  [0, 0],
  [50, 0],
  [50, 8],
  [8, 8],
  [8, 20],
  [0, 20],
] as const;

test.each<readonly [string, JobInput, number, readonly [number, number]]>([
  [
    'a turned piece',
    { board: 'plain 180x150x20mm maple', place: '80mm,60mm', turn: '30deg' },
    30,
    [80, 150 - 60],
  ],
  [
    'an inch job',
    { board: 'plain 7x5x3/4in maple', place: '3in,2in', turn: '90deg', units: 'in' },
    90,
    [3 * MM_PER_INCH, 3 * MM_PER_INCH],
  ],
])(
  '%s lies on paper where the numbers to type say, measured from its zero',
  async (_name, job, turnDeg, [midX, midY]) => {
    const html = placementHtml(
      vettedPath(`M${ELL.map((point) => point.join(' ')).join('L')}Z`, [50, 20], job),
      OPTIONS,
    );
    const toType = job.units === 'in' ? MM_PER_INCH : 1;
    const [typedX = 0, typedY = 0] =
      typedNumbers(html).get('Middle of the artwork, about which it is turned') ?? [];
    expect(typedX * toType).toBeCloseTo(midX, 2);
    expect(typedY * toType).toBeCloseTo(midY, 2);
    const page = await browser.newPage();
    await page.setContent(html);
    const [, sheet, ...more] = pagesOf(await page.pdf({ preferCSSPageSize: true }));
    expect(more.length).toBe(0);
    // the X axis is drawn from 4 mm before zero to 14 mm beyond
    const axis = sheet!.levelLinesMm.findIndex((length) => Math.abs(length - 18) < 0.02);
    const [endX, zeroY] = sheet!.leftEndsMm[axis]!;
    const zeroX = endX + 4;
    const [c, s] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
    for (const [x, y] of ELL) {
      // y up on the board, counter-clockwise as seen
      const [dx, dy] = [x - 25, 10 - y];
      const [atX, atY] = [zeroX + midX + c * dx - s * dy, zeroY + midY + s * dx + c * dy];
      const nearest = Math.min(...sheet!.pointsMm.map(([px, py]) => Math.hypot(px - atX, py - atY)));
      expect(nearest).toBeLessThan(0.03);
    }
  },
);
