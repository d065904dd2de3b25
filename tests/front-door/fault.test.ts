import { ProofFault, replay, type Source, VERSION, vet } from 'pourproof';
import { expect, test, vi } from 'vitest';

const carve = vi.hoisted(() => vi.fn());
vi.mock('@pourproof/cutting', async (actual) => {
  const all = await actual<typeof import('@pourproof/cutting')>();
  carve.mockImplementation(all.carve);
  return { ...all, carve };
});

const source: Source = {
  kind: 'file',
  name: 'square.svg',
  bytes: new TextEncoder().encode(
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="20mm" viewBox="0 0 60 20"><path d="M5 5h12v12h-12z"/></svg>',
  ),
};
const job = { bit: ['flat:2mm'], depth: '3mm' };

/** Makes every cut a tenth more voluminous than it is. */
async function swell(): Promise<void> {
  const all = await vi.importActual<typeof import('@pourproof/cutting')>('@pourproof/cutting');
  carve.mockImplementation((...given: Parameters<typeof all.carve>) => {
    const carving = all.carve(...given);
    return { ...carving, volumeMm3: 1.1 * carving.volumeMm3 };
  });
}

async function heal(): Promise<void> {
  const all = await vi.importActual<typeof import('@pourproof/cutting')>('@pourproof/cutting');
  carve.mockImplementation(all.carve);
}

async function faultOf(answer: Promise<unknown>): Promise<ProofFault> {
  const thrown: unknown = await answer.catch((error: unknown) => error);
  if (thrown instanceof ProofFault) {
    return thrown;
  }
  throw new Error(`no fault was thrown but ${String(thrown)}`);
}

test('figures that do not balance are a fault with a bundle that replays it', async () => {
  await swell();
  const { bundle, message } = await faultOf(vet(source, job));
  expect(message).toContain('the volume lies between the prisms under and on its slices');
  expect(bundle).toMatchObject({
    schema: 'pourproof/fault@1',
    versions: { pourproof: VERSION },
    source: { kind: 'file', name: 'square.svg', font: null },
    job,
  });
  expect(bundle.misses.map(({ id }) => id)).toContain('volume-lies-between-slices');
  // a tenth of (144 − (4 − π)·1²) mm² × 3 mm
  const volume = 3 * (144 - (4 - Math.PI));
  expect(bundle.misses.find(({ id }) => id === 'volume-lies-between-slices')?.by).toBeCloseTo(
    0.1 * volume,
    2,
  );
  expect(bundle.seed).toEqual(expect.any(Number));

  const read = JSON.parse(JSON.stringify(bundle)) as typeof bundle;
  expect((await faultOf(replay(read))).bundle).toEqual(bundle);
  await heal();
  expect((await replay(read)).report).toEqual((await vet(source, job)).report);
});

test('any other fault has a bundle too, with the words and the font that were given', async () => {
  carve.mockImplementation(() => {
    throw new TypeError('x is not a function');
  });
  const { bundle, cause } = await faultOf(
    vet({ kind: 'lettering', text: 'Hi', font: null }, { ...job, singleLine: true, capHeight: '20mm' }),
  );
  expect(cause).toBeInstanceOf(TypeError);
  expect(bundle).toMatchObject({ what: 'TypeError: x is not a function', misses: [], seed: null });
  expect(bundle.source).toEqual({ kind: 'lettering', text: 'Hi', font: null });
  await heal();
});
