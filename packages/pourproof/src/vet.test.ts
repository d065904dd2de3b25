import { defaultMaterials } from '@pourproof/materials';
import { describe, expect, test, vi } from 'vitest';
import { InternalError, ProofStopped, type Source, type StageName, vet, vetter } from './index.ts';

const readSvg = vi.hoisted(() => vi.fn());
vi.mock('@pourproof/artwork/svg', async (actual) => {
  const all = await actual<typeof import('@pourproof/artwork/svg')>();
  readSvg.mockImplementation(all.readSvg);
  return { ...all, readSvg };
});

const bar = (widthMm: number): Source => ({
  kind: 'file',
  name: 'bar.svg',
  bytes: new TextEncoder().encode(
    `<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="20mm" viewBox="0 0 60 20"><path d="M5 5h${widthMm}v8h-${widthMm}z"/></svg>`,
  ),
});

describe('a vetter keeps the drawing that it read last', () => {
  test.each([
    ['depth', {}, { depth: '2mm' }, 1],
    ['wood and seal', { wood: 'maple' }, { wood: 'walnut', seal: 'epoxy' }, 1],
    ['width', {}, { width: '30mm' }, 2],
    ['flattening', {}, { tolerance: '0.01mm' }, 2],
    ['what of the paint is carved', {}, { carve: 'visible' }, 2],
  ] as const)('a change of %s', async (_, before, after, reads) => {
    readSvg.mockClear();
    const ask = vetter();
    await ask(bar(40), before);
    const { report } = await ask(bar(40), after);
    expect(readSvg).toHaveBeenCalledTimes(reads);
    expect(report).toEqual((await vet(bar(40), after)).report);
  });

  test('coupons count though the materials come as a copy with every question, as a worker gets them', async () => {
    const ask = vetter();
    const basis = async (job: Parameters<typeof ask>[1]): Promise<string | undefined> =>
      (await ask(bar(40), job, { materials: structuredClone(defaultMaterials) })).report.bleed.blocks[0]
        ?.basis;
    const coupons = [{ slots: ['none below 0.45mm'] }];
    expect(await basis({})).toBe('prior');
    expect(await basis({ coupons })).toBe('calibrated');
    expect(await basis({})).toBe('prior');
  });

  test('other artwork is read, and a refusal leaves nothing behind', async () => {
    const ask = vetter();
    expect((await ask(bar(40), {})).report.artwork.areaMm2).toBeCloseTo(320, 9);
    expect((await ask(bar(30), {})).report.artwork.areaMm2).toBeCloseTo(240, 9);
    await expect(ask({ kind: 'file', name: 'bar.svg', bytes: new Uint8Array() }, {})).rejects.toThrow(
      'empty',
    );
    expect((await ask(bar(30), {})).report.artwork.areaMm2).toBeCloseTo(240, 9);
  });

  test('notices of settings without effect are those of the job at hand', async () => {
    const ask = vetter();
    const codes = async (job: Parameters<typeof ask>[1]): Promise<readonly string[]> =>
      (await ask(bar(40), job)).report.artwork.notices.map(({ code }) => code);
    expect(await codes({ coats: 2 })).toEqual(['setting-without-effect']);
    expect(await codes({ coats: 2, seal: 'epoxy' })).toEqual([]);
    expect(await codes({ coats: 2 })).toEqual(['setting-without-effect']);
  });
});

test('a fault below is an InternalError that keeps what was thrown', async () => {
  const fault = new TypeError('x is not a function');
  readSvg.mockImplementationOnce(() => {
    throw fault;
  });
  const error: unknown = await vet(bar(40), {}).catch((thrown: unknown) => thrown);
  expect(error).toBeInstanceOf(InternalError);
  expect(error).toMatchObject({
    cause: fault,
    message: expect.stringContaining('TypeError: x is not a function'),
  });
});

test('what is given back can be posted to another thread', async () => {
  const vetted = await vet(bar(40), { board: 'stripes 300x180x20mm maple:60mm walnut:20mm' });
  expect(structuredClone(vetted)).toEqual(vetted);
});

test('a vetter that was stopped is no fault, and its next proof is right', async () => {
  const ask = vetter();
  const told: StageName[] = [];
  const watch = { onStage: (stage: StageName) => told.push(stage), isStopped: () => told.length > 5 };
  await expect(ask(bar(40), {}, { watch })).rejects.toThrow(ProofStopped);
  expect(told).toHaveLength(6);
  expect((await ask(bar(40), {})).report).toEqual((await vet(bar(40), {})).report);
});

test('what a job calls seen to holds before ways out are tried, and in vain it is refused as without an early answer', async () => {
  const crossed = {
    kind: 'file',
    name: 'x.svg',
    bytes: new TextEncoder().encode(
      '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="60mm" viewBox="0 0 60 60"><path d="M5 5h40v8h-40z"/></svg>',
    ),
  } as const;
  const early: string[] = [];
  const onJudged: NonNullable<Parameters<typeof vet>[2]>['onJudged'] = ({ report }) => {
    early.push(...report.findings.filter(({ seenTo }) => seenTo === true).map(({ code }) => code));
  };
  await vet(crossed, { wood: 'maple', oiled: true, seenTo: ['oil-in-wood'] }, { onJudged });
  expect(early).toEqual(['oil-in-wood']);
  const lost = { bit: ['flat:10mm'], depth: '2mm', seenTo: ['bit-cannot-enter'] };
  const refusal = await vet(crossed, lost).catch(String);
  expect(refusal).toContain('bit-cannot-enter');
  expect(await vet(crossed, lost, { onJudged }).catch(String)).toBe(refusal);
});
