import { formatLength, type LengthUnit, parseMeasure } from '@pourproof/plane';

/** A cutter at hand. Diameters and lengths in mm; angles in degrees. */
export type Bit = BitShape & {
  /** Length of the cutting edge above the tip; `null` where it was not given. */
  readonly cuttingLengthMm: number | null;
};

/** A bit whose flanks meet at its tip. */
export type VeeBit = Extract<Bit, { readonly kind: 'vee' }>;

type BitShape =
  | { readonly kind: 'flat'; readonly diameterMm: number }
  | { readonly kind: 'ball'; readonly diameterMm: number }
  | {
      readonly kind: 'bull';
      readonly diameterMm: number;
      /** Radius between floor and side. */
      readonly cornerMm: number;
    }
  | {
      readonly kind: 'vee';
      /** Included angle. */
      readonly angleDeg: number;
      readonly diameterMm: number;
      /** Width of the flat at the tip; 0 for a true point or a round one. */
      readonly tipMm: number;
      /** Radius of the round at the tip; 0 for a true point or a flat one. */
      readonly tipRadiusMm: number;
    }
  | {
      readonly kind: 'taper';
      /** Diameter of the ball at the tip. */
      readonly tipDiameterMm: number;
      /** Angle of one side against the axis. */
      readonly sideDeg: number;
      readonly diameterMm: number;
    }
  | {
      readonly kind: 'profile';
      /** From the tip up, straight between. */
      readonly points: readonly { readonly heightMm: number; readonly diameterMm: number }[];
    };

/** A bit in words, with its sizes in the unit asked for: `1/8 in flat bit`, `60° vee bit, tip 0.1 mm`. */
export function bitText(bit: Bit, unit: LengthUnit): string {
  return `${bitKind(bit, unit)} bit${bitEnd(bit, unit)}`;
}

/** The same without the word, for a row that has it already: `1/8 in flat`. */
export function bitName(bit: Bit, unit: LengthUnit): string {
  return `${bitKind(bit, unit)}${bitEnd(bit, unit)}`;
}

function bitKind(bit: Bit, unit: LengthUnit): string {
  switch (bit.kind) {
    case 'flat':
    case 'ball':
    case 'profile':
      return `${bitSize(widestMm(bit), unit)} ${bit.kind}`;
    case 'bull':
      return `${bitSize(bit.diameterMm, unit)} bull-nose`;
    case 'vee':
      return `${bit.angleDeg}° vee`;
    case 'taper':
      return `${bitSize(bit.tipDiameterMm, unit)} tapered`;
  }
}

/** What a bit's tip or corner adds to its name. */
function bitEnd(bit: Bit, unit: LengthUnit): string {
  if (bit.kind === 'bull') {
    return `, corner ${bitSize(bit.cornerMm, unit)}`;
  }
  if (bit.kind !== 'vee' || (bit.tipMm === 0 && bit.tipRadiusMm === 0)) {
    return '';
  }
  return bit.tipMm > 0
    ? `, tip ${bitSize(bit.tipMm, unit)}`
    : `, tip radius ${bitSize(bit.tipRadiusMm, unit)}`;
}

/** Largest diameter of a bit in mm. */
export function widestMm(bit: Bit): number {
  return bit.kind === 'profile' ? (bit.points.at(-1)?.diameterMm ?? 0) : bit.diameterMm;
}

/** Rounding of a diameter that is a fraction of an inch, in 64ths of an inch. */
const FRACTION_TOL = 1e-6;

/** A bit's diameter as shops name it: inches as a fraction of 64 where it is one, millimetres otherwise. */
export function bitSize(mm: number, unit: LengthUnit): string {
  if (unit === 'mm') {
    return `${Number(mm.toFixed(3))} mm`;
  }
  const sixtyFourths = (mm * 64) / parseMeasure('1in', 'length').value;
  const whole = Math.round(sixtyFourths);
  if (Math.abs(sixtyFourths - whole) > FRACTION_TOL || whole === 0) {
    return formatLength(mm, 'in');
  }
  let over = whole;
  let under = 64;
  while (over % 2 === 0 && under > 1) {
    over /= 2;
    under /= 2;
  }
  return under === 1 ? `${over} in` : `${over}/${under} in`;
}
