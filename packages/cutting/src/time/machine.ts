/** What a machine can do. */
export interface Machine {
  /** Feed: speed along the path in the wood, mm per minute. */
  readonly feedMmPerMin: number;
  /** Plunge: greatest downward speed, mm per minute. */
  readonly plungeMmPerMin: number;
  /** Rapid: speed above the wood, mm per minute. */
  readonly rapidMmPerMin: number;
  /** Acceleration, the same in all directions, mm per second². */
  readonly accelerationMmPerS2: number;
  /** Junction deviation: by how much the speed model rounds corners, which sets the speed in them, mm. */
  readonly junctionDeviationMm: number;
  /** Retract height above the face, for moves between runs, mm. */
  readonly retractMm: number;
}

/** A value that a time is based on. */
export interface Assumption {
  readonly name: keyof Machine;
  readonly value: number;
  readonly unit: 'mm/min' | 'mm/s²' | 'mm';
  /** `given` by the caller, or that of a small router table, for which we have no source. */
  readonly origin: 'given' | 'common practice';
}

/**
 * A small hobby router table in hardwood (common practice, no source). Machines and woods differ: measure
 * yours.
 */
export const SMALL_ROUTER: Machine = {
  feedMmPerMin: 1000,
  plungeMmPerMin: 300,
  rapidMmPerMin: 2500,
  accelerationMmPerS2: 200,
  junctionDeviationMm: 0.02,
  retractMm: 5,
};

/**
 * Stepover as a share of the width of the tip, and depth of a pass as a share of the diameter (common
 * practice, no source).
 */
export const COMMON_SHARES: { readonly stepover: number; readonly pass: number } = {
  stepover: 0.4,
  pass: 0.5,
};

const UNITS: Readonly<Record<keyof Machine, Assumption['unit']>> = {
  feedMmPerMin: 'mm/min',
  plungeMmPerMin: 'mm/min',
  rapidMmPerMin: 'mm/min',
  accelerationMmPerS2: 'mm/s²',
  junctionDeviationMm: 'mm',
  retractMm: 'mm',
};

/**
 * A machine, with the values of {@link SMALL_ROUTER} where none is given, and all values with their origin.
 *
 * @throws {RangeError} when a value is not above 0; `junctionDeviationMm` and `retractMm` may be 0
 */
export function assumedMachine(given: Partial<Machine>): {
  machine: Machine;
  assumptions: readonly Assumption[];
} {
  const machine = { ...SMALL_ROUTER, ...given };
  const names = Object.keys(UNITS) as (keyof Machine)[];
  for (const name of names) {
    const mayBeZero = name === 'junctionDeviationMm' || name === 'retractMm';
    const value = machine[name];
    if (!(Number.isFinite(value) && (mayBeZero ? value >= 0 : value > 0))) {
      throw new RangeError(`${name} is ${value}; give a number ${mayBeZero ? 'of 0 or more' : 'above 0'}`);
    }
  }
  const assumptions = names.map(
    (name): Assumption => ({
      name,
      value: machine[name],
      unit: UNITS[name],
      origin: given[name] === undefined ? 'common practice' : 'given',
    }),
  );
  return { machine, assumptions };
}
