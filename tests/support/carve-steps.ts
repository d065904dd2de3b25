import { type CarveStep, veeCutter } from '@pourproof/cutting';
import { radians } from '@pourproof/plane';

/** Steps in which a V of some angle and diameter follows the artwork; `tip` may blunt it. */
export const veeOf =
  (diameterMm: number) =>
  (angleDeg: number, tip: object = {}): CarveStep => ({
    cutter: veeCutter({ includedRad: radians(angleDeg), diameterMm, ...tip }),
    way: 'follow',
  });

/** A step in which a cutter clears, down to the job's depth or its own. */
export const clear = (cutter: CarveStep['cutter'], depthMm?: number): CarveStep =>
  depthMm === undefined ? { cutter, way: 'clear' } : { cutter, way: 'clear', depthMm };
