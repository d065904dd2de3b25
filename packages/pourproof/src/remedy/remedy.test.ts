import { readFileSync } from 'node:fs';
import { type JobInput, readShopFile, settleJob } from '@pourproof/job';
import { ringsBounds } from '@pourproof/plane';
import { findingsIn, Stages } from '@pourproof/proof';
import { expect, test } from 'vitest';
import { readDrawing } from '../read-drawing.ts';
import type { Source } from '../source.ts';
import { vet } from '../vet.ts';
import { leastSteps } from './least-steps.ts';
import { type RemedyOptions, remedy } from './remedy.ts';

const bar = (length: number, width: number, more = ''): Source => ({
  kind: 'file',
  name: 'bar.svg',
  bytes: new TextEncoder().encode(
    `<svg xmlns="http://www.w3.org/2000/svg" width="90mm" height="90mm" viewBox="0 0 90 90"><path ${more} d="M10 10h${length}v${width}h-${length}z"/></svg>`,
  ),
});
const SOUND: JobInput = {
  bit: ['flat:2mm'],
  depth: '3mm',
  wood: 'maple',
  seal: 'epoxy',
  sealHours: '24h',
  level: '0.5mm',
  weigh: 'fine',
  boards: 6,
};
const verdictOf = async (source: Source, job: JobInput, options: RemedyOptions = {}) =>
  (await vet(source, job, { shop: options.shop, waysOut: 'none' } as never)).report.verdict;

test('a slot 0.1 mm too narrow for the bit: the least factor, and each smaller bit of the shop', async () => {
  const slot = bar(44, 1.9);
  const shop = readShopFile(
    { schema: 'pourproof/shop@1', bits: ['flat:2mm', 'flat:1.9mm', 'flat:3mm'] },
    'shop.json',
  );
  const { remedies, before, nearest } = await remedy(slot, SOUND, { shop, may: ['bit', 'size'] });
  expect([before.verdict, nearest]).toEqual(['stop', null]);
  const [first, second] = remedies;
  // a bit changes no drawing and comes first
  expect(first?.job.bit).toContain('flat:1.9mm');
  expect(first?.look).toMatchObject({ areaMm2: 0, shiftMm: 0 });
  // 1.9 mm times the factor has to be 2 mm, in steps of half a percent
  expect(second?.job.scale).toBe(Math.ceil(2 / 1.9 / 0.005 - 1e-9) * 0.005);
  expect(await verdictOf(slot, { ...SOUND, scale: 1.05 })).toBe('stop');
  // both lie on one middle: the larger covers the smaller
  expect(second?.look.areaMm2).toBeCloseTo(44 * 1.9 * (1.055 ** 2 - 1), 6);
  expect(second?.look.shiftMm).toBeCloseTo(0.0275 * Math.hypot(44, 1.9), 6);
  expect(remedies.length).toBeLessThanOrEqual(4);
});

test.each<readonly [string, Source, JobInput, RemedyOptions]>([
  ['the depth that levelling leaves enough of', bar(60, 6), { ...SOUND, level: '2.7mm' }, { may: ['depth'] }],
  ['the levelling that a depth stands', bar(60, 6), { ...SOUND, level: '2.7mm' }, { may: ['levelling'] }],
  [
    'the turn by which colour runs along the walls',
    bar(60, 6),
    { ...SOUND, seal: 'none', grain: '90deg', wood: 'cherry', colour: 'black' },
    { may: ['turn', 'seal'] },
  ],
])('%s is the least, holds, and has no remedy of its own', async (_, source, job, options) => {
  const { before, remedies } = await remedy(source, job, options);
  expect(before.verdict).toBe('stop');
  expect(remedies.length).toBeGreaterThan(0);
  for (const each of remedies) {
    expect(each.verdict).not.toBe('stop');
    expect(await verdictOf(source, each.job)).toBe(each.verdict);
    const again = await remedy(source, each.job, options);
    expect([again.remedies, again.nearest]).toEqual([[], null]);
  }
  const mm = (key: 'depth' | 'level'): number => Number.parseFloat(String(remedies[0]?.job[key]));
  if (options.may?.includes('depth')) {
    expect(await verdictOf(source, { ...job, depth: `${mm('depth') - 0.05}mm` })).toBe('stop');
  }
  if (options.may?.includes('levelling') && remedies[0]?.job.level !== undefined) {
    expect(await verdictOf(source, { ...job, level: `${mm('level') + 0.05}mm` })).toBe('stop');
  }
});

test('on a grid over depth and levelling no lesser change than those that are offered clears the stop', async () => {
  const source = bar(60, 6);
  const job: JobInput = { ...SOUND, level: '2.7mm' };
  const remedies = [
    ...(await remedy(source, job, { may: ['depth'] })).remedies,
    ...(await remedy(source, job, { may: ['levelling'] })).remedies,
  ];
  const at = ({ job: { depth, level } }: { readonly job: JobInput }) =>
    [Number.parseFloat(String(depth)) - 3, 2.7 - Number.parseFloat(String(level))] as const;
  const offered = remedies.map(at);
  expect(offered.length).toBeGreaterThanOrEqual(2);
  const stages = new Stages();
  const drawing = await readDrawing(source, settleJob(job, { source: 'file' }));
  let cleared = 0;
  for (let deeper = 0; deeper <= 7; deeper++) {
    for (let less = 0; less <= 7; less++) {
      const changed = { ...job, depth: `${3 + deeper / 10}mm`, level: `${2.7 - less / 10}mm` };
      const findings = findingsIn(drawing, settleJob(changed, { source: 'file' }), stages);
      if (findings.every(({ severity }) => severity !== 'stop')) {
        cleared++;
        const isLess = offered.some(
          ([depth, level]) =>
            deeper / 10 <= depth + 1e-9 &&
            less / 10 <= level + 1e-9 &&
            deeper / 10 + less / 10 < depth + level - 1e-9,
        );
        expect(isLess, `${deeper / 10} deeper and ${less / 10} less levelling`).toBe(false);
      }
    }
  }
  expect(cleared).toBeGreaterThan(5);
});

test('strokes are widened by exactly what the bit needs', async () => {
  const slot = bar(44, 1.9);
  const { remedies } = await remedy(slot, SOUND, { may: ['stroke'] });
  expect(remedies.map(({ job }) => job.widen)).toEqual(['0.1mm']);
  expect(remedies[0]?.look.shiftMm).toBeCloseTo(0.05 * Math.SQRT2, 3);
});

test('the weight of a variable font is raised by as little as does', async () => {
  const font = new Uint8Array(readFileSync('fixtures/fonts/josefin-sans-latin-variable.woff2'));
  const source: Source = { kind: 'lettering', text: 'I', font };
  const job: JobInput = { ...SOUND, capHeight: '30mm', bit: ['flat:2mm'] };
  const { remedies } = await remedy(source, job, { may: ['weight'] });
  const weight = Number(String(remedies[0]?.job.axis).split('=')[1]);
  // the stem grows with the weight, and has to be as wide as the bit
  const stemAt = async (wght: number): Promise<number> => {
    const settled = settleJob({ ...job, axis: [`wght=${wght}`] }, { source: 'lettering', hasFont: true });
    const { shapes } = await readDrawing(source, settled);
    const [left, , right] = ringsBounds((shapes[0] as (typeof shapes)[number]).region);
    return right - left;
  };
  expect(await stemAt(weight - 10)).toBeLessThan(2);
  expect(await stemAt(weight)).toBeGreaterThanOrEqual(2);
  expect(await verdictOf(source, { ...job, axis: [`wght=${weight - 10}`] })).toBe('stop');
  expect(remedies[0]?.look.areaMm2).toBeGreaterThan(0);
});

test('where nothing that may be changed clears it, what binds is told', async () => {
  const { remedies, nearest } = await remedy(
    bar(60, 6),
    { ...SOUND, oiled: true },
    { may: ['depth', 'size'] },
  );
  expect(remedies).toEqual([]);
  expect(nearest?.binds).toEqual(['oil-in-wood']);
});

test('cautions are cleared where that is asked', async () => {
  const source = bar(44, 2);
  expect((await remedy(source, SOUND)).remedies).toEqual([]);
  const { remedies } = await remedy(source, SOUND, { clear: 'cautions', may: ['bit', 'size'] });
  expect(remedies.map(({ verdict }) => verdict)).toContain('clear');
});

test('who follows the search stops it, and has what was found till then', async () => {
  const shop = readShopFile(
    { schema: 'pourproof/shop@1', bits: ['flat:2mm', 'flat:1.9mm', 'flat:1mm'] },
    'shop.json',
  );
  const slot = bar(44, 1.9);
  const all = await remedy(slot, SOUND, { shop });
  expect(all.ended).toBe('all-tried');
  let stages = 0;
  const count = await remedy(slot, SOUND, { shop, watch: { onStage: () => void stages++ } }).then(
    () => stages,
  );
  const seen = new Set<number>();
  for (const share of [0.3, 0.6, 0.95]) {
    let left = Math.round(share * count);
    const watch = { onStage: () => void left--, isStopped: () => left <= 0 };
    const stopped = await remedy(slot, SOUND, { shop, watch });
    expect(stopped.ended).toBe('stopped');
    expect(stopped.tried).toBeLessThanOrEqual(all.tried);
    expect(stopped.remedies.every(({ verdict }) => verdict !== 'stop')).toBe(true);
    seen.add(stopped.remedies.length);
  }
  expect(Math.max(...seen)).toBeGreaterThan(0);
  // before the job itself is proved nothing is known
  const ended = remedy(slot, SOUND, { watch: { isStopped: () => true } });
  expect(await ended.catch((error: { code: string }) => error.code)).toBe('stopped');
});

test('the least number of steps is found wherever the guess lies, none asked about twice', async () => {
  for (const least of [1, 2, 7, 30, 59, 60]) {
    for (const guess of [1, 5, 30, 60]) {
      const asked: number[] = [];
      const found = await leastSteps(guess, 60, async (steps) => {
        asked.push(steps);
        return steps >= least;
      });
      expect(found).toBe(least);
      expect(new Set(asked).size).toBe(asked.length);
    }
  }
  expect(await leastSteps(5, 60, async () => false)).toBeNull();
});

test('every bit of a shop is tried, however long its list', async () => {
  // the last alone enters a slot of 1.9 mm, and no finding proposes it
  const wide = Array.from({ length: 14 }, (_, k) => `flat:${k + 3}mm`);
  const shop = readShopFile(
    { schema: 'pourproof/shop@1', bits: ['flat:2mm', ...wide, 'vee:60deg:12mm'] },
    'shop.json',
  );
  const { remedies } = await remedy(bar(44, 1.9), SOUND, { shop, may: ['bit'] });
  expect(remedies.map(({ job }) => job.bit)).toContainEqual(['vee:60deg:12mm']);
});
