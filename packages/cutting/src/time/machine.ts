/** What a machine can do. */
export interface Machine {
  /** Speed along the way in the wood, mm per minute. */
  readonly feedMmPerMin: number;
  /** Speed straight down, and the most of any downward slope, mm per minute. */
  readonly plungeMmPerMin: number;
  /** Speed above the wood, mm per minute. */
  readonly rapidMmPerMin: number;
  /** How fast it speeds up and slows down, the same in all directions, mm per second². */
  readonly accelerationMmPerS2: number;
  /** How far a corner may be thought to be rounded, which sets the speed in it, mm. */
  readonly junctionDeviationMm: number;
  /** Height above the face at which it travels between runs, mm. */
  readonly retractMm: number;
}

/** A number that a time rests on. */
export interface Assumption {
  readonly name: keyof Machine;
  readonly value: number;
  readonly unit: 'mm/min' | 'mm/s²' | 'mm';
  /** `given` by the asker, or what is common for a small router table, for which we have no source. */
  readonly origin: 'given' | 'common practice';
}

/**
 * A small hobby-size router table in hardwood; common practice, no source. Every machine and every wood
 * differs: measure yours.
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
 * Distance between rounds as a share of the tip's width, and depth of a pass as a share of the bit's; common
 * practice, no source.
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
 * A machine with {@link SMALL_ROUTER}'s values where none is given, and the list of all values with their
 * origin.
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
