import { type FaultBundle, ProofFault, vet } from 'pourproof';
import { expect, test } from 'vitest';
import { replayed } from '../replay.mjs';
import { whileSkewed } from '../support/while-skewed.ts';

const bytes = new TextEncoder().encode(
  '<svg xmlns="http://www.w3.org/2000/svg" width="60mm" height="20mm" viewBox="0 0 60 20"><path d="M5 5h12v12h-12z"/></svg>',
);

async function fault(): Promise<FaultBundle> {
  const job = { bit: ['flat:2mm'], depth: '3mm' };
  const thrown = await whileSkewed(() => vet({ kind: 'file', name: 'square.svg', bytes }, job)).catch(
    (error: unknown) => error,
  );
  if (!(thrown instanceof ProofFault)) {
    throw new Error('the skewed axis is no fault');
  }
  return thrown.bundle;
}

test('a fault that is still there is told with its figures, one that is gone with the verdict', async () => {
  const text = JSON.stringify(await fault());
  const there = await whileSkewed(() => replayed(text, 'square.fault.json'));
  expect(there.code).toBe(70);
  expect(there.text).toMatch(
    /the fault is still there\.\n.*\n {2}width-is-distance-to-outline: [\d.]+ mm, must lie between [\d.]+ and [\d.]+; off by [\d.]+/u,
  );
  expect(there.text).toContain('seed of the places');
  const gone = await replayed(text, 'square.fault.json');
  expect(gone).toMatchObject({ code: 0 });
  expect(gone.text).toContain('the fault is gone; the verdict is ');
});

test('what is no bundle, and a bundle that is refused, are told as that', async () => {
  for (const text of ['', '{', '{"schema": "pourproof/job@1"}', 'null']) {
    expect(await replayed(text, 'x')).toMatchObject({ code: 2 });
  }
  const refused = await replayed(JSON.stringify({ ...(await fault()), job: { bit: ['spoon'] } }), 'x.json');
  expect(refused.code).toBe(2);
  expect(refused.text).toContain('refused. ');
});
