import { expect, test } from 'vitest';
import { MaterialsError } from './materials-error.ts';
import type { MaterialsErrorCode, MaterialsFaults } from './materials-faults.ts';

const RANGES = ['above', 'from', 'lightness', 'solids', 'angle'] as const;

/** Faults of every kind: the types ask for what is missing. */
const FAULTS: { readonly [Code in MaterialsErrorCode]: readonly MaterialsFaults[Code][] } = {
  'unknown-like': [{ like: 'mapel', known: ['maple'] }],
  'new-needs-like': [{ known: ['maple'] }],
  'out-of-range': RANGES.map((range) => ({ value: -1, range, bound: 1 })),
  'curve-order': [{ point: { hours: 1, factor: 0.5 }, before: { hours: 2, factor: 0.4 } }],
  conflict: [{ gelMin: 5, potLifeMin: 30 }],
};

const errors = Object.entries(FAULTS).flatMap(([code, faults]) =>
  faults.map(
    (parameters) => new MaterialsError(code as MaterialsErrorCode, 'woods.mine.like', parameters as never),
  ),
);

test.each(errors.map((error) => [error.code, error] as const))(
  '%s says what is wrong, where, and what to do',
  (_, error) => {
    expect(error.message).toMatch(/^woods\.mine\.like: \S.*[.:] \S.*\.$/su);
    expect(error.message).not.toMatch(/undefined|NaN|\[object/u);
  },
);
