import { AxisEdge } from '@pourproof/geometry';
import { ProofFault, replay, type Source, VERSION, vet } from 'pourproof';
import { expect, test, vi } from 'vitest';
import { askWorker } from '../support/front-door/ways-in.ts';

const source: Source = {
  kind: 'file',
  name: 'square.svg',
  bytes: new TextEncoder().encode(
    '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="20mm" viewBox="0 0 60 20"><path d="M5 5h12v12h-12z"/></svg>',
  ),
};
const job = { bit: ['flat:2mm'], depth: '3mm' };

/** Moves every place that is asked for on the axis by 0.02 mm, until it is restored. */
function skew() {
  const atShare = AxisEdge.prototype.atShare;
  return vi.spyOn(AxisEdge.prototype, 'atShare').mockImplementation(function (this: AxisEdge, share: number) {
    atShare.call(this, share);
    this.x += 0.02;
  });
}

async function faultOf(answer: Promise<unknown>): Promise<ProofFault> {
  const thrown: unknown = await answer.catch((error: unknown) => error);
  if (thrown instanceof ProofFault) {
    return thrown;
  }
  throw new Error(`no fault was thrown but ${String(thrown)}`);
}

test('figures that do not balance are a fault with a bundle that replays it', async () => {
  const skewed = skew();
  const { bundle, message } = await faultOf(vet(source, job));
  expect(message).toContain('the width of a stroke is twice its distance from the outline');
  expect(bundle).toMatchObject({
    schema: 'pourproof/fault@1',
    versions: { pourproof: VERSION },
    source: { kind: 'file', name: 'square.svg', font: null },
    job,
  });
  expect(bundle.misses.map(({ id }) => id)).toContain('width-is-distance-to-outline');
  // along a branch from a corner both distances change, and the least of them by no more than the skew
  for (const { by } of bundle.misses) {
    expect(by).toBeGreaterThan(0);
    expect(by).toBeLessThan(2 * 0.02 + 1e-9);
  }
  expect(bundle.seed).toEqual(expect.any(Number));

  const read = JSON.parse(JSON.stringify(bundle)) as typeof bundle;
  expect((await faultOf(replay(read))).bundle).toEqual(bundle);
  skewed.mockRestore();
  expect((await replay(read)).report).toEqual((await vet(source, job)).report);
});

test('any other fault has a bundle too, with the words that were given', async () => {
  const broken = vi.spyOn(AxisEdge.prototype, 'atShare').mockImplementation(() => {
    throw new TypeError('x is not a function');
  });
  const { bundle, cause } = await faultOf(
    vet({ kind: 'lettering', text: 'Hi', font: null }, { ...job, singleLine: true, capHeight: '20mm' }),
  );
  broken.mockRestore();
  expect(cause).toBeInstanceOf(TypeError);
  expect(bundle).toMatchObject({ what: 'TypeError: x is not a function', misses: [], seed: null });
  expect(bundle.source).toEqual({ kind: 'lettering', text: 'Hi', font: null });
});

test('the worker of the page answers with the bundle, which the page offers', async () => {
  const ask = await askWorker();
  const skewed = skew();
  const answer = await ask({ id: 7, source, job, options: {} });
  skewed.mockRestore();
  expect(answer).toMatchObject({ id: 7, kind: 'fault', bundle: { schema: 'pourproof/fault@1', job } });
});
