import { createHash } from 'node:crypto';
import { type Source, type Vetted, type Vetter, vet } from 'pourproof';

/** Answers that are kept, the latest ones: a proof of the demo holds about a megabyte. */
const MOST = 40;
const kept = new Map<string, Promise<Vetted>>();

/**
 * `vet`, but what was vetted before in this test process is answered from memory: the same bytes and the same job, key by key in the same
 * order. (That a proof does not depend on what was proved before is a matter of `tests/proof/stages.test.ts`.)
 */
export const rememberedVet: Vetter = (source, job, options = {}) => {
  const key = keyOf(source, job, options);
  const answer = kept.get(key) ?? vet(source, job, options);
  kept.delete(key);
  kept.set(key, answer);
  for (const [oldest] of [...kept].slice(0, kept.size - MOST)) {
    kept.delete(oldest);
  }
  return answer;
};

function keyOf(source: Source, ...rest: readonly unknown[]): string {
  const { font = null, ...named } = source;
  const { bytes, ...words } = { bytes: null, ...named };
  const hash = createHash('sha256').update(JSON.stringify([words, rest]));
  for (const part of [bytes, font]) {
    hash.update(part === null ? 'none' : `${part.length} bytes`).update(part ?? '');
  }
  return hash.digest('hex');
}
