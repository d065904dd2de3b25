import { readdirSync, readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { resolveRegions } from '@pourproof/arrangement';
import { readSvg, type SvgOptions } from '@pourproof/artwork';
import { type Drawing, isEmptyBounds, perimeter, ringsBounds, signedArea } from '@pourproof/plane';
import { Resvg } from '@resvg/resvg-js';
import { describe, expect, test } from 'vitest';

/** What a fixture must give; all of it computed by hand from the words in `how`. */
interface Expected {
  readonly how: string;
  readonly source?: string;
  readonly options?: SvgOptions;
  readonly areaMm2: number;
  readonly boundsMm: readonly [number, number, number, number] | null;
  readonly notices: readonly string[];
  /** Parts of the shapes in painter's order. */
  readonly shapes?: readonly {
    readonly layer?: string;
    readonly colour?: string;
    readonly areaMm2?: number;
  }[];
  /** Why the renderer cannot be compared. */
  readonly raster?: string;
}

const FOLDER = new URL('../../../fixtures/svg/', import.meta.url);
const NAMES = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.svg'))
  .map((file) => file.slice(0, -'.svg'.length));

describe.each(NAMES)('%s', (name) => {
  const bytes = readFileSync(new URL(`${name}.svg`, FOLDER));
  const expected = JSON.parse(readFileSync(new URL(`${name}.expected.json`, FOLDER), 'utf8')) as Expected;
  const drawing = readSvg(bytes, expected.options);
  const { region } = resolveRegions(drawing.shapes.map((shape) => shape.region));

  test('has the area and the bounds of its closed form', () => {
    // clips and crossings are computed on grids of nanometres; 1e-5 mm² is far above that and far below any use
    expect(Math.abs(signedArea(region) - expected.areaMm2)).toBeLessThan(
      1e-5 * Math.max(1, expected.areaMm2 / 100),
    );
    const box = ringsBounds(region);
    if (expected.boundsMm === null) {
      expect(isEmptyBounds(box)).toBe(true);
    } else {
      expected.boundsMm.forEach((value, i) => {
        expect(Math.abs(box[i] - value), `bound ${i}`).toBeLessThanOrEqual(drawing.toleranceMm + 1e-6);
      });
    }
  });

  test('says what it should and nothing else', () => {
    expect(drawing.notices.map((notice) => notice.code).sort()).toEqual([...expected.notices].sort());
    for (const notice of drawing.notices) {
      expect(`${notice.text.mm}${notice.text.in}`).not.toMatch(/undefined|NaN|Infinity/);
    }
    expected.shapes?.forEach(({ areaMm2, ...parts }, i) => {
      expect(drawing.shapes[i]).toMatchObject(parts);
      if (areaMm2 !== undefined) {
        expect(signedArea(resolveRegions([drawing.shapes[i].region]).region)).toBeCloseTo(areaMm2, 6);
      }
    });
  });

  // a fixture that the renderer is known to draw otherwise says why in `raster`; its area rests on the closed form alone
  if (expected.raster === undefined && expected.areaMm2 > 0) {
    test('covers what a renderer paints', () => {
      for (const widthPx of [300, 900]) {
        const pixelMm = (drawing.pageMm?.widthMm ?? 0) / widthPx;
        // the renderer rounds coverage to steps of a pixel's quarter lines; along an edge that averages out to well below an eighth
        const bound = (perimeter(region) * pixelMm) / 8;
        expect(Math.abs(coveredMm2(bytes, drawing, widthPx) - expected.areaMm2)).toBeLessThan(bound);
      }
    });
  }
});

/** Area that an independent renderer paints, by the sum of coverage over all pixels. */
function coveredMm2(bytes: Uint8Array, drawing: Drawing, widthPx: number): number {
  const plain = bytes[0] === 0x1f ? gunzipSync(bytes) : Buffer.from(bytes);
  const image = new Resvg(plain.toString('utf8'), { fitTo: { mode: 'width', value: widthPx } }).render();
  const page = drawing.pageMm ?? { widthMm: 0, heightMm: 0 };
  // every read of `pixels` copies the whole picture
  const { pixels } = image;
  let sum = 0;
  for (let i = 3; i < pixels.length; i += 4) {
    sum += pixels[i];
  }
  return (sum / 255) * (page.widthMm / image.width) * (page.heightMm / image.height);
}
