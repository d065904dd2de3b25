import { type JobInput, settleJob } from '@pourproof/job';
import { judgeDrawing, type Report } from '@pourproof/proof';
import { describe, expect, test } from 'vitest';
import { rectangle } from '../support/drawing-of.ts';
import { type Painted, painted } from '../support/painted.ts';
import { regular } from '../support/shapes/clean-from.ts';

const WALNUT: JobInput = { bit: ['flat:2mm'], depth: '3mm', wood: 'walnut', seal: 'none', units: 'mm' };
const RED = '#e30613';
const BLUE = '#0000ff';

const vetted = (shapes: readonly Painted[], job: JobInput = {}): Report =>
  judgeDrawing(painted(shapes), 'test', settleJob({ ...WALNUT, ...job })).report;

/** Two squares with 20 mm of wood between. */
const apart: readonly Painted[] = [
  [RED, rectangle(0, 0, 20, 20)],
  [BLUE, rectangle(40, 0, 20, 20)],
];
const resins = ({ pour }: Report) => pour.colours.map(({ name, resin }) => [name, resin]);

test('colours share what the walls may be off by as they share the walls', () => {
  const { pour } = vetted([
    [RED, rectangle(0, 0, 40, 40)],
    [BLUE, rectangle(60, 0, 10, 10)],
  ]);
  const off = pour.colours.map(
    ({ uncertainty }) => uncertainty.find(({ cause }) => cause === 'geometry')?.moreMl ?? 0,
  );
  // 160 and 40 mm of wall; figures of nanolitres have two digits
  expect((off[0] ?? 0) / (off[1] ?? 0)).toBeCloseTo(4, 0);
});

describe('the resin of each colour', () => {
  test('is as the job pairs them, else its one colour, else the paint; one paint says nothing', () => {
    expect(resins(vetted(apart))).toEqual([
      [RED, RED],
      [BLUE, BLUE],
    ]);
    expect(resins(vetted(apart, { colour: 'black' }))).toEqual([
      [RED, 'black'],
      [BLUE, 'black'],
    ]);
    expect(resins(vetted(apart, { colour: 'black', colourOf: 'blue=white' }))).toEqual([
      [RED, 'black'],
      [BLUE, 'white'],
    ]);
    expect(resins(vetted(apart.slice(0, 1)))).toEqual([['all', undefined]]);
  });

  test.each(['red=black', 'RED=black', '#E30613=black', '#e30613 = #000'])(
    '%s finds the red one by word, value or name',
    (colourOf) => {
      const [[, resin] = []] = resins(vetted(apart, { colourOf }));
      expect(['black', '#000000']).toContain(resin);
    },
  );

  test('goes by layer, too, where layers have one paint', () => {
    const layered: readonly Painted[] = [
      [{ colour: RED, layer: 'Letters' }, rectangle(0, 0, 20, 20)],
      [{ colour: RED, layer: 'Frame' }, rectangle(40, 0, 20, 20)],
    ];
    expect(resins(vetted(layered))).toEqual([['all', undefined]]);
    expect(resins(vetted(layered, { colourOf: { letters: 'blue', Frame: 'white' } }))).toEqual([
      ['Letters', 'blue'],
      ['Frame', 'white'],
    ]);
  });

  test('of what is not drawn is refused, with what is', () => {
    expect(() => vetted(apart, { colourOf: 'gren=black' })).toThrow(
      /no colour or layer "gren".*blue \(#0000ff\)/u,
    );
    expect(() => vetted(apart, { colourOf: 'bleu=black' })).toThrow('Did you mean blue?');
    const layered: readonly Painted[] = [
      [{ colour: RED, layer: 'Letters' }, rectangle(0, 0, 20, 20)],
      [BLUE, rectangle(40, 0, 20, 20)],
    ];
    const known = (): unknown => {
      try {
        vetted(layered, { colourOf: 'green=black' });
      } catch (error) {
        return String(error);
      }
    };
    expect(known()).toContain('layer "Letters"');
    expect(known()).not.toContain('layer ""');
    // two reds: the word alone does not say which
    expect(() =>
      vetted([...apart, ['#ff2020', rectangle(0, 40, 20, 20)]], { colourOf: 'red=black' }),
    ).toThrow('no colour or layer "red"');
  });
});

test('visibility is judged colour by colour: dark resin hides in walnut, white beside it shows', () => {
  const job: JobInput = { seal: 'sanding-sealer', sealHours: '24h', grain: '0deg' };
  const [block] = vetted(apart, { ...job, colourOf: 'red=black, blue=white' }).bleed.blocks;
  const [black, white] = block?.streaks ?? [];
  expect(black?.deltaE00).toBeLessThan(white?.deltaE00 ?? 0);
  expect(block?.streak?.deltaE00).toBe(white?.deltaE00);
  const note = (colourOf: string) =>
    vetted(apart, { ...job, seal: 'none', colourOf }).findings.find(
      ({ code }) => code === 'colour-hides-or-shows',
    )?.measured.value;
  // the colour that shows most is told, whichever shape has it
  expect(note('red=black, blue=white')).toBe(note('red=white, blue=black'));
});

test('what is seen of a colour follows the order of painting, also where colours alternate', () => {
  const area = (shapes: readonly Painted[]): Readonly<Record<string, number>> =>
    Object.fromEntries(
      vetted(shapes, { overpour: '0mm', wastePct: 0 }).pour.colours.map((each) => [each.name, each.volumeMl]),
    );
  const [red, blue] = [rectangle(0, 0, 40, 40), rectangle(10, 10, 20, 20)];
  const under = area([
    [RED, red],
    [BLUE, blue],
  ]);
  expect((under[BLUE] ?? 0) / (under[RED] ?? 1)).toBeCloseTo(400 / 1200, 2);
  const patched = area([
    [RED, red],
    [BLUE, blue],
    [RED, rectangle(20, 10, 10, 20)],
  ]);
  expect((patched[BLUE] ?? 0) / (patched[RED] ?? 1)).toBeCloseTo(200 / 1400, 2);
});

test('a joint leads into a paler block only where the wood behind it is lighter', () => {
  const job = (woods: string): JobInput => ({
    wood: undefined,
    colour: 'black',
    board: `checkerboard 80x80x20mm ${woods} square:40mm`,
    place: '29.9mm,20mm',
  });
  const codes = (woods: string): readonly string[] =>
    vetted([['#000000', rectangle(0, 0, 20, 20)]], job(woods)).findings.map(({ code }) => code);
  expect(codes('walnut maple')).toContain('bleed-reaches-block');
  expect(codes('walnut walnut')).not.toContain('bleed-reaches-block');
  expect(codes('poplar poplar')).not.toContain('bleed-reaches-block');
  expect(codes('maple walnut')).not.toContain('bleed-reaches-block');
});

test('a bleeding wall is shown by a point of its own in its block', () => {
  const { findings } = vetted([['#000000', rectangle(0, 0, 20, 20)]], {
    wood: undefined,
    board: 'checkerboard 80x80x20mm poplar poplar square:40mm',
  });
  const { where = [] } = findings.find(({ code }) => code === 'high-bleed-wall') ?? {};
  expect(where.length).toBeGreaterThan(0);
  for (const { atMm, outline } of where) {
    const [xs, ys] = [outline.flat().map(([x]) => x), outline.flat().map(([, y]) => y)];
    expect(atMm[0]).toBeGreaterThanOrEqual(Math.min(...xs) - 1e-9);
    expect(atMm[0]).toBeLessThanOrEqual(Math.max(...xs) + 1e-9);
    expect(atMm[1]).toBeGreaterThanOrEqual(Math.min(...ys) - 1e-9);
    expect(atMm[1]).toBeLessThanOrEqual(Math.max(...ys) + 1e-9);
  }
});

test('colours that no round names are told by their names', () => {
  const three: readonly Painted[] = [...apart, ['#00a000', rectangle(0, 40, 20, 20)]];
  const { notices } = vetted(three, { rounds: 'red' }).artwork;
  expect(notices.find(({ code }) => code === 'colour-without-round')?.text).toMatch(
    /do not name #\w{6}, #\w{6}: they come in a last round/u,
  );
});

test('how far the volume of a colour may be off grows with the tolerance that curves are flattened to', () => {
  const [radiusMm, depthMm] = [10, 3];
  // straight sides are as drawn, so only a curve can tell: chords as readers make them, no farther from the circle than the tolerance
  const cornersAt = (toleranceMm: number): number =>
    Math.ceil(Math.PI / Math.acos(1 - toleranceMm / radiusMm));
  const off = (toleranceMm: number): readonly number[] => {
    const corners = cornersAt(toleranceMm);
    const discs: readonly Painted[] = [
      [RED, regular(corners, radiusMm)],
      [BLUE, regular(corners, radiusMm, 40)],
    ];
    const job = settleJob({ ...WALNUT, tolerance: `${toleranceMm}mm` });
    const { pour } = judgeDrawing({ ...painted(discs), toleranceMm }, 'test', job).report;
    return pour.colours.flatMap(({ uncertainty }) =>
      uncertainty.filter(({ cause }) => cause === 'geometry').map(({ moreMl }) => moreMl),
    );
  };
  /** What the chords cut off a disc, ml. */
  const lostAt = (toleranceMm: number): number => {
    const corners = cornersAt(toleranceMm);
    const polygonMm2 = (corners / 2) * radiusMm ** 2 * Math.sin((2 * Math.PI) / corners);
    return ((Math.PI * radiusMm ** 2 - polygonMm2) * depthMm) / 1000;
  };
  const [fine, coarse] = [off(0.005), off(0.05)];
  expect([fine.length, coarse.length]).toEqual([2, 2]);
  for (const k of [0, 1]) {
    expect(fine[k]).toBeGreaterThan(lostAt(0.005));
    expect(coarse[k]).toBeGreaterThan(lostAt(0.05));
    expect(coarse[k]).toBeGreaterThan(5 * fine[k]!);
  }
});
