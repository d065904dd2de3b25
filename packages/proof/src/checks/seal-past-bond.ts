import { limits } from '@pourproof/materials';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfStretch } from './places.ts';
import { sealSpeed } from './seal-not-cured.ts';

/** Hours are told to a tenth, rounded down, so that they are soon enough. */
const STEPS_PER_HOUR = 10;

/** The pages say “about a day”: a few hours more are the same (our choice). */
const ABOUT = 1.25;

/**
 * A seal left so long that it has to be washed and abraded before the pour: a caution where a pocket is too narrow for that, else a note.
 */
export const sealPastBond: Check = {
  code: 'seal-past-bond',
  run: (measured) => {
    const { job, cutArea, narrowerThan } = measured;
    const { abradeAfterHours } = job.rows.seal;
    const limit = (abradeAfterHours?.value ?? Number.POSITIVE_INFINITY) / sealSpeed(job);
    if (cutArea === 0 || job.coats === 0 || abradeAfterHours === null || job.sealHours <= ABOUT * limit) {
      return null;
    }
    const { abradedPocket } = limits;
    const narrow = narrowerThan(abradedPocket.value).filter(({ kind }) => kind === 'stroke');
    return {
      code: 'seal-past-bond',
      severity: narrow.length > 0 ? 'caution' : 'note',
      where: narrow.map(placeOfStretch),
      measured: { value: job.sealHours, quantity: 'time', unit: 'h' },
      limit: { value: limit, quantity: 'time', unit: 'h' },
      because: [...abradeAfterHours.because, ...abradedPocket.because],
      fix: { options: fixes(limit, narrow.length === 0) },
    };
  },
};

function fixes(limitHours: number, isWide: boolean): Fix[] {
  const sooner: Fix = {
    do: 'pour-sooner',
    hours: Math.floor(limitHours * STEPS_PER_HOUR) / STEPS_PER_HOUR,
    clears: true,
  };
  const { value: widthMm } = limits.abradedPocket;
  return isWide ? [sooner, { do: 'abrade', widthMm, clears: false }] : [sooner];
}
