import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, test } from 'vitest';
import { fieldName } from '../../apps/viewer/src/model/field-name.ts';
import type { PackedAnswer, Question } from '../../apps/viewer/src/model/question.ts';
import { ANSWERED_JOBS, FIXTURE_JOBS } from '../support/front-door/answered-jobs.ts';
import { REFUSED_JOBS } from '../support/front-door/refused-jobs.ts';
import type { Trial } from '../support/front-door/trial.ts';
import { answered, byLibrary, questionOf, type Refused } from '../support/front-door/ways-in.ts';
import { viewerForTests } from '../support/viewer/served-viewer.ts';

const viewer = viewerForTests();
let page: Page;
let workerUrl: string;
beforeAll(async () => {
  // the test starts workers of its own, which the page's policy does not take
  ({ page } = await viewer.open({ bypassCSP: true }));
  // on a busy machine the page stands before its worker does
  workerUrl = (page.workers()[0] ?? (await page.waitForEvent('worker'))).url();
}, 60_000);

/**
 * Asks a worker of the page, started once more and kept for all that follows, as the page keeps its own; bytes go there and back as lists of
 * numbers.
 */
async function byWorkerInChromium(trial: Trial): Promise<Refused> {
  const packed = JSON.stringify(questionOf(trial), (_, value: unknown) =>
    value instanceof Uint8Array ? { bytes: [...value] } : value,
  );
  const answer = await page.evaluate(
    ([url, text]) =>
      new Promise<string>((resolve, reject) => {
        const question = JSON.parse(text, (_, value) =>
          Array.isArray(value?.bytes) ? new Uint8Array(value.bytes) : value,
        ) as Question;
        const kept = globalThis as { asked?: Worker };
        kept.asked ??= new Worker(url, { type: 'module' });
        kept.asked.onerror = ({ message = '', filename = '' }) => {
          delete kept.asked;
          reject(new Error(message === '' ? `${url} did not load` : `${message} (${filename})`));
        };
        kept.asked.onmessage = ({ data }: MessageEvent<PackedAnswer>) => {
          // only the last answer is compared
          if (data.kind !== 'working' && data.kind !== 'judged') {
            const text = JSON.stringify(data, (_, value: unknown) =>
              ArrayBuffer.isView(value)
                ? { packed: value.constructor.name, values: [...(value as Float64Array)] }
                : value,
            );
            resolve(text);
          }
        };
        kept.asked.postMessage({ kind: 'ask', question });
      }),
    [workerUrl, packed] as const,
  );
  return answered(JSON.parse(answer, unpackedArrays) as PackedAnswer);
}

/** Typed arrays as they were posted; JSON has `null` for what is no number. */
function unpackedArrays(_: string, value: unknown): unknown {
  const { packed, values } = (value ?? {}) as { packed?: string; values?: (number | null)[] };
  if (values === undefined || packed === undefined) {
    return value;
  }
  return packed === 'Float64Array'
    ? Float64Array.from(values, (each) => each ?? Number.NaN)
    : Uint32Array.from(values, (each) => each ?? 0);
}

const REFUSED = [
  'an unknown key',
  'a bare number for a depth',
  'lettering without a size',
  'an SVG that breaks off',
];

describe('the worker in a real browser gives the same report, byte for byte', () => {
  test.each([...FIXTURE_JOBS, ...ANSWERED_JOBS].map((trial) => [trial.name, trial] as const))(
    '%s',
    async (_, trial) => {
      const here = (await byLibrary(trial)).outcome;
      const there = (await byWorkerInChromium(trial)).outcome;
      expect([here.kind, there.kind]).toEqual(['report', 'report']);
      expect(there.text).toBe(here.text);
    },
  );
});

describe('the worker in a real browser refuses in the same words, byte for byte', () => {
  test.each(
    REFUSED_JOBS.filter(([{ name }]) => REFUSED.includes(name)).map(
      ([trial]) => [trial.name, trial] as const,
    ),
  )('%s', async (_, trial) => {
    const here = await byLibrary(trial, fieldName);
    expect(here.refusal).not.toBeNull();
    expect(await byWorkerInChromium(trial)).toEqual(here);
  });
});
