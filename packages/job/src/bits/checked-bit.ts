import { radians } from '@pourproof/plane';
import { JobError } from '../refusals/job-error.ts';
import type { Bit } from './bit.ts';
import type { BitStructure } from './bit-input.ts';

/**
 * A bit whose sizes can belong to a real one, with what was left out filled in.
 *
 * @param shown the bit as it was given, for messages
 * @throws {JobError} for the first size that no bit has
 */
export function checkedBit(shown: string, bit: BitStructure): Bit {
  const shape = checkedShape(shown, bit);
  const cuttingLengthMm = bit.cuttingLengthMm ?? null;
  if (cuttingLengthMm !== null && !isAboveZero(cuttingLengthMm)) {
    throw new JobError('bit-length', 'bit', { shown, value: cuttingLengthMm });
  }
  return { ...shape, cuttingLengthMm };
}

type Shape = Bit extends infer B ? (B extends Bit ? Omit<B, 'cuttingLengthMm'> : never) : never;

function checkedShape(shown: string, bit: BitStructure): Shape {
  switch (bit.kind) {
    case 'flat':
    case 'ball':
      return { kind: bit.kind, diameterMm: size(shown, bit.diameterMm) };
    case 'bull':
      return bull(shown, bit);
    case 'vee':
      return vee(shown, bit);
    case 'taper':
      return taper(shown, bit);
    case 'profile':
      refuseProfile(shown, bit.points);
      return { kind: 'profile', points: bit.points };
  }
}

function bull(shown: string, { diameterMm, cornerMm }: BitStructure & { readonly kind: 'bull' }): Shape {
  size(shown, diameterMm);
  notBelowZero(shown, cornerMm, 'corner');
  if (!(cornerMm > 0 && cornerMm <= diameterMm / 2)) {
    throw new JobError('bit-corner', 'bit', { shown, value: cornerMm, limit: diameterMm / 2 });
  }
  return { kind: 'bull', diameterMm, cornerMm };
}

function vee(shown: string, bit: BitStructure & { readonly kind: 'vee' }): Shape {
  const { angleDeg, diameterMm, tipMm = 0, tipRadiusMm = 0 } = bit;
  angle(shown, angleDeg, 180);
  size(shown, diameterMm);
  notBelowZero(shown, tipMm, 'tip');
  notBelowZero(shown, tipRadiusMm, 'tip radius');
  if (tipMm > 0 && tipRadiusMm > 0) {
    throw new JobError('bit-two-tips', 'bit', { shown });
  }
  if (tipMm >= diameterMm) {
    throw new JobError('bit-tip', 'bit', { shown, value: tipMm, limit: diameterMm });
  }
  // the round tip meets the flanks where its tangent has their angle
  if (2 * tipRadiusMm * Math.cos(radians(angleDeg) / 2) >= diameterMm) {
    throw new JobError('bit-tip-radius', 'bit', { shown, value: tipRadiusMm, limit: diameterMm });
  }
  return { kind: 'vee', angleDeg, diameterMm, tipMm, tipRadiusMm };
}

function taper(shown: string, bit: BitStructure & { readonly kind: 'taper' }): Shape {
  const { tipDiameterMm, sideDeg, diameterMm } = bit;
  size(shown, tipDiameterMm);
  angle(shown, sideDeg, 90);
  size(shown, diameterMm);
  if (tipDiameterMm > diameterMm) {
    throw new JobError('bit-taper', 'bit', { shown, value: tipDiameterMm, limit: diameterMm });
  }
  return { kind: 'taper', tipDiameterMm, sideDeg, diameterMm };
}

/** Heights rise and diameters do not fall from point to point, and something cuts at every height. */
function refuseProfile(
  shown: string,
  points: readonly { readonly heightMm: number; readonly diameterMm: number }[],
): void {
  const [first, ...rest] = points;
  const last = points.at(-1);
  if (first === undefined || last === undefined || first.heightMm !== 0 || rest.length === 0) {
    throw new JobError('profile-points', 'bit', { shown });
  }
  rest.forEach((point, k) => {
    const below = points[k] ?? first;
    if (!(point.heightMm >= below.heightMm && point.diameterMm >= below.diameterMm)) {
      throw new JobError('profile-falls', 'bit', { shown, ...point });
    }
  });
  if (!(first.diameterMm >= 0 && isAboveZero(last.diameterMm) && isAboveZero(last.heightMm))) {
    throw new JobError('profile-empty', 'bit', { shown });
  }
  size(shown, last.diameterMm);
  const needle = rest.find((point) => point.heightMm > 0 && point.diameterMm === 0);
  if (needle !== undefined) {
    throw new JobError('profile-needle', 'bit', { shown, heightMm: needle.heightMm });
  }
}

function isAboveZero(value: number): boolean {
  return value > 0 && Number.isFinite(value);
}

/** The finest and the widest bit, mm, from memory: finer ones are not sold, and wider ones are no router's. */
const SIZES_MM = { least: 0.05, most: 300 } as const;

function size(shown: string, value: number): number {
  if (!(value >= SIZES_MM.least && value <= SIZES_MM.most)) {
    throw new JobError('bit-size', 'bit', { shown, value, ...SIZES_MM });
  }
  return value;
}

function angle(shown: string, value: number, below: number): void {
  if (!(value > 0 && value < below)) {
    throw new JobError('bit-angle', 'bit', { shown, value, limit: below });
  }
}

function notBelowZero(shown: string, value: number, word: string): void {
  if (!(value >= 0)) {
    throw new JobError('bit-below-zero', 'bit', { shown, value, word });
  }
}
