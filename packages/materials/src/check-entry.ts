import { MaterialsError } from './materials-error.ts';
import type { PartRange } from './materials-faults.ts';

/** Refuses an entry that is not a finite number above `bound`. */
export function checkAbove(place: string, value: number, bound: number): void {
  if (!(value > bound && Number.isFinite(value))) {
    throw new MaterialsError('out-of-range', place, { value, range: 'above', bound });
  }
}

/** Refuses an entry that is not a finite number from `bound` on. */
export function checkAtLeast(place: string, value: number, bound: number): void {
  if (!(value >= bound && Number.isFinite(value))) {
    throw new MaterialsError('out-of-range', place, { value, range: 'from', bound });
  }
}

/** Refuses an entry that is not above 0 and at most `bound`. */
export function checkPart(place: string, value: number, bound: number, range: PartRange): void {
  if (!(value > 0 && value <= bound)) {
    throw new MaterialsError('out-of-range', place, { value, range, bound });
  }
}
