import { readArtwork } from '@pourproof/artwork';
import { type JobInput, settleJob } from '@pourproof/job';
import { MM_PER_INCH } from '@pourproof/plane';
import { judgeDrawing } from '@pourproof/proof';
import { jobChecksum, placementHtml, type Vetted } from '@pourproof/wording';
import { chromium } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { ensureChromium } from '../support/find-chromium.mjs';
import { pagesOf } from '../support/pdf-pages.ts';

const BOARD = 'plain 400x260x20mm maple';
const OPTIONS = { version: '0.1.0', date: '2026-12-01' } as const;

/** A bar of 60 by 8 mm, vetted without ways out. */
function vettedBar(job: JobInput): Vetted {
  const bytes = Buffer.from(
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="8mm" viewBox="0 0 60 8"><rect width="60" height="8"/></svg>',
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
  const browser = await chromium.launch({ executablePath: ensureChromium(), args: ['--no-sandbox'] });
  try {
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
  } finally {
    await browser.close();
  }
});
