import type { Quantity } from '@pourproof/plane';
import type { JobFile } from './job-file.ts';

/** Speeds and acceleration of a machine that the maker gave. */
export interface MachineSettings {
  readonly feedMmPerMin?: number;
  readonly plungeMmPerMin?: number;
  readonly rapidMmPerMin?: number;
  readonly accelerationMmPerS2?: number;
}

/** How the bits are driven; what the maker did not give is `null` or absent and has a default of common practice where it is used. */
export interface Driving {
  /** Values of the machine that were given. */
  readonly machine: MachineSettings;
  /** Most depth in one pass, mm. */
  readonly passDepthMm: number | null;
  /** Distance between rounds of a clearing path, percent of the tip's diameter. */
  readonly stepoverPct: number | null;
}

/** Keys of a job file that say how the bits are driven. */
type DrivingKey = 'feed' | 'plunge' | 'rapid' | 'passDepth';

/** Settles the keys of a job that say how the bits are driven. */
export function settleDriving(
  given: Partial<JobFile>,
  measured: (key: DrivingKey, quantity: Quantity) => number,
): Driving {
  const speed = (key: 'feed' | 'plunge' | 'rapid'): number => measured(key, 'speed');
  return {
    machine: {
      ...(given.feed === undefined ? {} : { feedMmPerMin: speed('feed') }),
      ...(given.plunge === undefined ? {} : { plungeMmPerMin: speed('plunge') }),
      ...(given.rapid === undefined ? {} : { rapidMmPerMin: speed('rapid') }),
      ...(given.accelerationMmPerS2 === undefined ? {} : { accelerationMmPerS2: given.accelerationMmPerS2 }),
    },
    passDepthMm: given.passDepth === undefined ? null : measured('passDepth', 'length'),
    stepoverPct: given.stepoverPct ?? null,
  };
}
