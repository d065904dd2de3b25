import { readFileSync } from 'node:fs';
import { setImmediate } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { resolveRegions } from '@pourproof/arrangement';
import { readArtwork } from '@pourproof/artwork';
import { type CleanRegion, packRings, signedArea } from '@pourproof/plane';
import { Resvg } from '@resvg/resvg-js';
import { artworkFile, type JobInput, readDrawing, type Source, settleJob } from 'pourproof';
import { afterEach, describe, expect, test } from 'vitest';
import { parsedOutlines } from '../support/oracles/dxf-area.ts';
import { offOutline } from '../support/oracles/off-outline.ts';

/** What is promised of a file: areas to 0.01 %, outlines to the default tolerance. */
const AREA_SHARE = 1e-4;
const TOLERANCE_MM = 0.005;
/** Files are read so finely here that only their own deviation shows. */
const FINE_MM = TOLERANCE_MM / 20;
/** Pixels across the picture: a renderer's edges then average out to some 5e-5 of the area; at half as many they do not always. */
const PIXELS_WIDE = 8000;
const STRIP_PIXELS = 500;

const FONTS = 'fixtures/fonts';
const letters = (text: string, face: string): Source => ({
  kind: 'lettering',
  text,
  font: readFileSync(`${FONTS}/${face}`),
});
const drawn = (body: string): Source => ({
  kind: 'file',
  name: 'drawn.svg',
  bytes: Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="40mm" viewBox="0 0 60 40">${body}</svg>`,
  ),
});
const SPRIG =
  '<path d="M5 30C20 10 40 35 55 8" fill="none" stroke="#000" stroke-width="2.4" stroke-linecap="round"/><ellipse cx="14" cy="10" rx="9" ry="4" transform="rotate(20 14 10)"/><circle cx="44" cy="30" r="6"/>';

const CASES: readonly (readonly [name: string, source: Source, job: JobInput])[] = [
  ['serif letters', letters('Rg', 'lora-400.ttf'), { capHeight: '15mm' }],
  ['a widened serif letter', letters('a', 'lora-400.ttf'), { capHeight: '15mm', widen: '0.5mm' }],
  [
    'narrowed letters',
    letters('go', 'josefin-sans-600.ttf'),
    { capHeight: '15mm', widen: '-0.3mm', joins: 'round' },
  ],
  [
    'rounded letters',
    letters('HE', 'josefin-sans-600.ttf'),
    { capHeight: '15mm', roundTips: '0.5mm', roundCorners: '0.4mm' },
  ],
  [
    'a variable font, heavier',
    letters('Ag', 'josefin-sans-latin-variable.woff2'),
    { capHeight: '15mm', axis: ['wght=650'] },
  ],
  ['strokes, an ellipse and a circle', drawn(SPRIG), { widen: '0.2mm' }],
];

const wholeOf = async (source: Source, job: JobInput): Promise<CleanRegion> => {
  const settled = settleJob({ ...job, tolerance: `${FINE_MM}mm` }, { source: source.kind, hasFont: true });
  const { shapes } = await readDrawing(source, settled);
  return resolveRegions(shapes.map(({ region }) => region)).region;
};
const readBack = (text: string, name: string): CleanRegion =>
  resolveRegions(
    readArtwork(Buffer.from(text), name, { toleranceMm: FINE_MM }).shapes.map(({ region }) => region),
  ).region;

setFlagsFromString('--expose-gc');
const collectGarbage = runInNewContext('gc') as () => void;

/** Area that a renderer covers, strip by strip. */
function coveredMm2(text: string): number {
  const [minX, minY, widthMm, heightMm] = /viewBox="([^"]+)"/u.exec(text)![1]!.split(' ').map(Number) as [
    number,
    number,
    number,
    number,
  ];
  const stripMm = (STRIP_PIXELS * widthMm) / PIXELS_WIDE;
  let covered = 0;
  for (let y = 0; y < heightMm; y += stripMm) {
    const strip = text.replace(
      /width="[^"]+" height="[^"]+" viewBox="[^"]+"/u,
      `width="${widthMm}mm" height="${stripMm}mm" viewBox="${minX} ${minY + y} ${widthMm} ${stripMm}"`,
    );
    const { width, height, pixels } = new Resvg(strip, {
      fitTo: { mode: 'width', value: PIXELS_WIDE },
    }).render();
    expect([width, height, pixels.length]).toEqual([
      PIXELS_WIDE,
      STRIP_PIXELS,
      4 * PIXELS_WIDE * STRIP_PIXELS,
    ]);
    for (let p = 3; p < pixels.length; p += 4) {
      covered += pixels[p]!;
    }
  }
  return (covered / 255) * (widthMm / PIXELS_WIDE) ** 2;
}

// the engine does not see the memory of pictures, and frees it between two turns of its loop: those of all cases together took 1.6 GB
afterEach(async () => {
  collectGarbage();
  await setImmediate();
});

describe.each(CASES)('%s', (_name, source, job) => {
  test('reads back as what was written, by our readers and by others', async () => {
    const [whole, svg, dxf] = await Promise.all([
      wholeOf(source, job),
      artworkFile(source, job, { format: 'svg' }),
      artworkFile(source, job, { format: 'dxf' }),
    ]);
    const area = signedArea(whole);
    expect(svg.offMm).toBeLessThanOrEqual(TOLERANCE_MM);
    expect(Math.abs(svg.areaMm2 / area - 1)).toBeLessThan(AREA_SHARE);
    // ours
    const own = readBack(svg.text, 'out.svg');
    expect(Math.abs(signedArea(own) / area - 1)).toBeLessThan(AREA_SHARE);
    const [minX, minY] = /viewBox="(\S+) (\S+)/u.exec(svg.text)!.slice(1).map(Number) as [number, number];
    const placed = packRings([own.coords.map((c, k) => c + (k % 2 === 0 ? minX : minY))]);
    expect(offOutline(placed.coords, whole)).toBeLessThan(TOLERANCE_MM);
    const back = { coords: placed.coords, ringEnds: own.ringEnds };
    expect(offOutline(whole.coords, back)).toBeLessThan(TOLERANCE_MM);
    expect(Math.abs(signedArea(readBack(dxf.text, 'out.dxf')) / area - 1)).toBeLessThan(AREA_SHARE);
    // a general reader of DXF: holes run the other way
    const parsed = parsedOutlines(dxf.text);
    expect(Math.abs(Math.abs(parsed.reduce((sum, { areaMm2 }) => sum + areaMm2, 0)) / area - 1)).toBeLessThan(
      AREA_SHARE,
    );
    const maxY = minY + Number(/height="([\d.]+)mm"/u.exec(svg.text)![1]);
    const placedBack = parsed.flatMap(({ points }) =>
      points.map((c, k) => (k % 2 === 0 ? c + minX : maxY - c)),
    );
    expect(offOutline(placedBack, whole)).toBeLessThan(TOLERANCE_MM);
    // a general renderer of SVG
    expect(Math.abs(coveredMm2(svg.text) / area - 1)).toBeLessThan(AREA_SHARE);
  });
});

test('nodes are told beside those of the source', async () => {
  const bar = drawn('<rect x="5" y="5" width="20" height="10"/><path d="M30 5H50A5 5 0 0 1 50 15H30"/>');
  expect(await artworkFile(bar, {}, { format: 'dxf' })).toMatchObject({ nodes: 4 + 4, sourceNodes: 4 + 4 });
});

test('a file holds a group and a layer for each colour and round, in the order of the work, and colours that meet keep their border', async () => {
  const twoColours = drawn(
    '<rect x="5" y="5" width="20" height="10" fill="#0000ff"/><rect x="25" y="5" width="20" height="10" fill="#cc0000"/>',
  );
  const job: JobInput = { rounds: 'red, blue', widen: '1mm' };
  const svg = await artworkFile(twoColours, job, { format: 'svg' });
  const groups = [...svg.text.matchAll(/<g id="([^"]+)" fill="([^"]+)"/gu)].map(([, id, fill]) => [id, fill]);
  expect(groups).toEqual([
    ['red-round-1', '#cc0000'],
    ['blue-round-2', '#0000ff'],
  ]);
  const layers = parsedOutlines((await artworkFile(twoColours, job, { format: 'dxf' })).text);
  expect(layers.map(({ layer, type, areaMm2 }) => [layer, type, Math.abs(areaMm2).toFixed(3)])).toEqual([
    ['red-round-1', 'LWPOLYLINE', '225.500'],
    ['blue-round-2', 'LWPOLYLINE', '225.500'],
  ]);
});

test('what is cut and what is left make up the artwork, and nodes are few', async () => {
  const source = letters('R', 'lora-400.ttf');
  const job: JobInput = { capHeight: '15mm', bit: ['flat:1mm'] };
  const [drawn, cut, left] = await Promise.all(
    (['drawn', 'cut', 'left'] as const).map((part) => artworkFile(source, job, { format: 'svg', part })),
  );
  expect(left!.areaMm2).toBeGreaterThan(0.5);
  expect(Math.abs((cut!.areaMm2 + left!.areaMm2) / drawn!.areaMm2 - 1)).toBeLessThan(AREA_SHARE);
  expect(drawn!.nodes).toBeLessThan(drawn!.pointsRead / 10);
  // quadratic curves of the font, joined where one cubic does for several
  expect(drawn!.nodes).toBeLessThan(drawn!.sourceNodes!);
});
