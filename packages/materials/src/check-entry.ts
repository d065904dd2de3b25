import { MaterialsError } from './materials-error.ts';

/** Refuses an entry that is not a finite number above `bound`. */
export function checkAbove(place: string, value: number, bound: number): void {
  if (!(value > bound && Number.isFinite(value))) {
    throw new MaterialsError('out-of-range', place, `is ${value}.`, `It must be a number above ${bound}.`);
  }
}

/** Refuses an entry that is not a finite number from `bound` on. */
export function checkAtLeast(place: string, value: number, bound: number): void {
  if (!(value >= bound && Number.isFinite(value))) {
    throw new MaterialsError('out-of-range', place, `is ${value}.`, `It must be a number from ${bound} on.`);
  }
}

/** Refuses an entry whose share of its range is not above 0 and at most 1. */
export function checkShare(place: string, share: number, rule: string): void {
  if (!(share > 0 && share <= 1)) {
    throw new MaterialsError('out-of-range', place, 'is out of range:', rule);
  }
}
