import { formatLength, type LengthUnit, MeasureError, parseMeasure } from '@pourproof/plane';

/** A cutter at hand. Diameters and lengths in mm; angles in degrees. */
export type Bit =
  | { readonly kind: 'flat'; readonly diameterMm: number }
  | { readonly kind: 'ball'; readonly diameterMm: number }
  | {
      readonly kind: 'vee';
      /** Included angle. */
      readonly angleDeg: number;
      readonly diameterMm: number;
      /** Width of the flat at the tip; 0 for a true point. */
      readonly tipMm: number;
    }
  | {
      readonly kind: 'taper';
      /** Diameter of the ball at the tip. */
      readonly tipDiameterMm: number;
      /** Angle of one side against the axis. */
      readonly sideDeg: number;
      readonly diameterMm: number;
    };

/** How each kind of bit is written, for help texts and error messages. */
export const BIT_FORMS: readonly string[] = [
  'flat:1/8in',
  'ball:1/16in',
  'vee:60deg:1/2in',
  'vee:60deg:1/2in:tip 0.1mm',
  'taper:0.5mm:5deg:1/4in',
];

/**
 * Reads a bit as typed: `flat:1/8in`, `ball:1/16in`, `vee:60deg:1/2in[:tip 0.1mm]`, `taper:0.5mm:5deg:1/4in`
 * (tip diameter, angle of one side, diameter).
 *
 * @throws {MeasureError} when it cannot be read; the message says which part and how a bit is written
 */
export function parseBit(text: string): Bit {
  const [kind = '', ...parts] = text.split(':').map((part) => part.trim());
  const part = (index: number): string => {
    const value = parts[index];
    if (value === undefined || value === '') {
      throw new MeasureError(`bit "${text}" is not complete. Write it like ${BIT_FORMS.join(', ')}.`);
    }
    return value;
  };
  const size = (index: number): number => positive(text, parseMeasure(part(index), 'length').value);
  switch (kind) {
    case 'flat':
    case 'ball':
      refuseRest(text, parts, 1);
      return { kind, diameterMm: size(0) };
    case 'vee':
      refuseRest(text, parts, 3);
      return { kind, angleDeg: angle(text, part(0), 180), diameterMm: size(1), tipMm: tip(text, parts[2]) };
    case 'taper':
      refuseRest(text, parts, 3);
      return { kind, tipDiameterMm: size(0), sideDeg: angle(text, part(1), 90), diameterMm: size(2) };
    default:
      throw new MeasureError(unknownKind(text, kind));
  }
}

function unknownKind(text: string, kind: string): string {
  if (/^[\d.]/u.test(text)) {
    const sizes = /[a-z"″]/iu.test(text) ? [text] : [`${text}mm`, `${text}in`];
    return `bit "${text}" does not say its kind. Did you mean ${sizes.map((size) => `flat:${size}`).join(' or ')}?`;
  }
  return `bit "${text}" is of no known kind: "${kind}". Write it like flat:1/8in; kinds: flat, ball, vee, taper (only flat bits can be vetted yet).`;
}

/** A bit in words, with its sizes in the unit asked for: `1/8 in flat bit` stays exact as typed elsewhere; here `3.18 mm flat bit`. */
export function bitText(bit: Bit, unit: LengthUnit): string {
  switch (bit.kind) {
    case 'flat':
    case 'ball':
      return `${bitSize(bit.diameterMm, unit)} ${bit.kind} bit`;
    case 'vee':
      return `${bit.angleDeg}° vee bit`;
    case 'taper':
      return `${bitSize(bit.tipDiameterMm, unit)} tapered bit`;
  }
}

/** A bit's diameter as shops name it: inches as a fraction of 64 where it is one, millimetres otherwise. */
export function bitSize(mm: number, unit: LengthUnit): string {
  if (unit === 'mm') {
    return `${Number(mm.toFixed(3))} mm`;
  }
  const sixtyFourths = (mm * 64) / parseMeasure('1in', 'length').value;
  const whole = Math.round(sixtyFourths);
  if (Math.abs(sixtyFourths - whole) > 1e-6 || whole === 0) {
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

function positive(text: string, mm: number): number {
  if (!(mm > 0)) {
    throw new MeasureError(`bit "${text}" has a size of ${mm} mm; sizes must be above 0.`);
  }
  return mm;
}

function angle(text: string, part: string, below: number): number {
  const { value } = parseMeasure(part, 'angle');
  if (!(value > 0 && value < below)) {
    throw new MeasureError(`bit "${text}" has an angle of ${value}°; it must lie between 0 and ${below}°.`);
  }
  return value;
}

function tip(text: string, part: string | undefined): number {
  if (part === undefined) {
    return 0;
  }
  if (!part.startsWith('tip ')) {
    throw new MeasureError(`bit "${text}": "${part}" is not a tip. Write it like :tip 0.1mm.`);
  }
  const { value } = parseMeasure(part.slice(4), 'length');
  if (value < 0) {
    throw new MeasureError(`bit "${text}" has a tip of ${value} mm; it can't be below 0.`);
  }
  return value;
}

function refuseRest(text: string, parts: readonly string[], most: number): void {
  if (parts.length > most) {
    throw new MeasureError(
      `bit "${text}" has more parts than a bit of its kind. Write it like ${BIT_FORMS.join(', ')}.`,
    );
  }
}
