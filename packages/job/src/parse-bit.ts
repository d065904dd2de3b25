import { MeasureError, parseMeasure } from '@pourproof/plane';
import type { Bit } from './bit.ts';

/** How each kind of bit is written, for help texts and error messages. */
export const BIT_FORMS: readonly string[] = [
  'flat:1/8in',
  'ball:1/16in',
  'bull:1/4in:corner 1mm',
  'vee:60deg:1/2in',
  'vee:60deg:1/2in:tip 0.1mm',
  'vee:60deg:1/2in:tip radius 0.2mm',
  'taper:0.5mm:5deg:1/4in',
  'profile:1mm@0mm,3mm@2mm,3mm@10mm',
  'flat:1/8in:length 12mm',
];

/**
 * Reads a bit as typed: `flat:1/8in`, `ball:1/16in`, `bull:1/4in:corner 1mm`, `vee:60deg:1/2in[:tip 0.1mm|:tip radius 0.2mm]`,
 * `taper:0.5mm:5deg:1/4in` (tip diameter, angle of one side, diameter), `profile:1mm@0mm,3mm@2mm` (diameter at height above the
 * tip, straight between); `:length 12mm` at the end of any gives the length of its cutting edge.
 *
 * @throws {MeasureError} when it cannot be read; the message says which part and how a bit is written
 */
export function parseBit(text: string): Bit {
  const [kind = '', ...all] = text.split(':').map((part) => part.trim());
  const { parts, cuttingLengthMm } = withoutLength(text, all);
  // not what every object has, such as toString
  const reader = Object.hasOwn(READERS, kind) ? READERS[kind] : undefined;
  if (reader === undefined) {
    throw new MeasureError(unknownKind(text, kind));
  }
  if (parts.length > reader.most) {
    throw new MeasureError(
      `bit "${text}" has more parts than a bit of its kind. Write it like ${BIT_FORMS.join(', ')}.`,
    );
  }
  const part = (index: number): string => {
    const value = parts[index];
    if (value === undefined || value === '') {
      throw new MeasureError(`bit "${text}" is not complete. Write it like ${BIT_FORMS.join(', ')}.`);
    }
    return value;
  };
  return { ...reader.read(text, part, parts.length), cuttingLengthMm };
}

type Shape = Bit extends infer B ? (B extends Bit ? Omit<B, 'cuttingLengthMm'> : never) : never;
type PartAt = (index: number) => string;

const READERS: Readonly<
  Record<
    string,
    { readonly most: number; readonly read: (text: string, part: PartAt, count: number) => Shape }
  >
> = {
  flat: { most: 1, read: (text, part) => ({ kind: 'flat', diameterMm: size(text, part(0)) }) },
  ball: { most: 1, read: (text, part) => ({ kind: 'ball', diameterMm: size(text, part(0)) }) },
  bull: { most: 2, read: readBull },
  vee: { most: 3, read: readVee },
  taper: { most: 3, read: readTaper },
  profile: { most: 1, read: (text, part) => ({ kind: 'profile', points: profilePoints(text, part(0)) }) },
};

function readBull(text: string, part: PartAt): Shape {
  const diameterMm = size(text, part(0));
  const cornerMm = worded(text, part(1), 'corner', ':corner 1mm');
  if (!(cornerMm > 0 && cornerMm <= diameterMm / 2)) {
    throw new MeasureError(
      `bit "${text}" has a corner radius of ${cornerMm} mm; it lies above 0 and is at most half its diameter, ${diameterMm / 2} mm.`,
    );
  }
  return { kind: 'bull', diameterMm, cornerMm };
}

function readVee(text: string, part: PartAt, count: number): Shape {
  const vee = { kind: 'vee' as const, angleDeg: angle(text, part(0), 180), diameterMm: size(text, part(1)) };
  const isRound = count > 2 && /^tip\s+radius\s/u.test(part(2));
  const tipMm = count > 2 && !isRound ? worded(text, part(2), 'tip', ':tip 0.1mm or :tip radius 0.2mm') : 0;
  const tipRadiusMm = isRound ? worded(text, part(2), 'tip radius', ':tip 0.1mm or :tip radius 0.2mm') : 0;
  if (tipMm >= vee.diameterMm) {
    throw new MeasureError(
      `bit "${text}" has a tip of ${tipMm} mm, as wide as the bit or wider; a tip is narrower than the bit's ${vee.diameterMm} mm.`,
    );
  }
  // the round tip meets the flanks where its tangent has their angle
  const meetsAtMm = 2 * tipRadiusMm * Math.cos((vee.angleDeg * Math.PI) / 360);
  if (meetsAtMm >= vee.diameterMm) {
    throw new MeasureError(
      `bit "${text}" has a tip radius of ${tipRadiusMm} mm, too large for its diameter of ${vee.diameterMm} mm: no flank is left. Write a ball bit.`,
    );
  }
  return { ...vee, tipMm, tipRadiusMm };
}

function readTaper(text: string, part: PartAt): Shape {
  const taper = {
    kind: 'taper' as const,
    tipDiameterMm: size(text, part(0)),
    sideDeg: angle(text, part(1), 90),
    diameterMm: size(text, part(2)),
  };
  if (taper.tipDiameterMm > taper.diameterMm) {
    throw new MeasureError(
      `bit "${text}" has a tip of ${taper.tipDiameterMm} mm, wider than the bit itself, ${taper.diameterMm} mm. The order is tip, angle of one side, diameter.`,
    );
  }
  return taper;
}

/** Diameters at heights above the tip, heights rising and diameters not falling. */
function profilePoints(text: string, list: string): readonly { heightMm: number; diameterMm: number }[] {
  const points = list.split(',').map((pair) => {
    const [diameter, height, ...rest] = pair.split('@');
    if (diameter === undefined || height === undefined || rest.length > 0) {
      throw new MeasureError(
        `bit "${text}": "${pair.trim()}" is not a diameter at a height. Write it like 3mm@2mm: 3 mm across, 2 mm above the tip.`,
      );
    }
    return {
      heightMm: parseMeasure(height.trim(), 'length').value,
      diameterMm: parseMeasure(diameter.trim(), 'length').value,
    };
  });
  const [first, ...rest] = points;
  const last = points.at(-1);
  if (first === undefined || last === undefined || first.heightMm !== 0 || rest.length === 0) {
    throw new MeasureError(
      `bit "${text}" needs two points or more, the first at height 0mm, such as profile:1mm@0mm,3mm@2mm.`,
    );
  }
  rest.forEach((point, k) => {
    const below = points[k] ?? first;
    if (point.heightMm < below.heightMm || point.diameterMm < below.diameterMm) {
      throw new MeasureError(
        `bit "${text}" falls back at ${point.diameterMm} mm @ ${point.heightMm} mm; heights and diameters must rise or stay from point to point.`,
      );
    }
  });
  if (!(first.diameterMm >= 0 && last.diameterMm > 0 && last.heightMm > 0)) {
    throw new MeasureError(`bit "${text}" has no body: its widest diameter and its height must be above 0.`);
  }
  const needle = rest.find((point) => point.heightMm > 0 && point.diameterMm === 0);
  if (needle !== undefined) {
    throw new MeasureError(
      `bit "${text}" has no width up to ${needle.heightMm} mm above its tip, so nothing cuts there. Give it the diameter that it has there.`,
    );
  }
  return points;
}

function withoutLength(
  text: string,
  parts: readonly string[],
): { readonly parts: readonly string[]; readonly cuttingLengthMm: number | null } {
  const last = parts.at(-1);
  if (last === undefined || !last.startsWith('length')) {
    return { parts, cuttingLengthMm: null };
  }
  const cuttingLengthMm = worded(text, last, 'length', ':length 12mm');
  if (!(cuttingLengthMm > 0)) {
    throw new MeasureError(`bit "${text}" has a cutting edge of ${cuttingLengthMm} mm; it must be above 0.`);
  }
  return { parts: parts.slice(0, -1), cuttingLengthMm };
}

function unknownKind(text: string, kind: string): string {
  if (/^[\d.]/u.test(text)) {
    const sizes = /[a-z"″]/iu.test(text) ? [text] : [`${text}mm`, `${text}in`];
    return `bit "${text}" does not say its kind. Did you mean ${sizes.map((each) => `flat:${each}`).join(' or ')}?`;
  }
  return `bit "${text}" is of no known kind: "${kind}". Write it like flat:1/8in; kinds: ${Object.keys(READERS).join(', ')}.`;
}

function size(text: string, part: string): number {
  const { value } = parseMeasure(part, 'length');
  if (!(value > 0)) {
    throw new MeasureError(`bit "${text}" has a size of ${value} mm; sizes must be above 0.`);
  }
  return value;
}

function angle(text: string, part: string, below: number): number {
  const { value } = parseMeasure(part, 'angle');
  if (!(value > 0 && value < below)) {
    throw new MeasureError(`bit "${text}" has an angle of ${value}°; it must lie between 0 and ${below}°.`);
  }
  return value;
}

/** A length after a word, `tip 0.1mm`; 0 or more. */
function worded(text: string, part: string, word: string, example: string): number {
  if (!part.startsWith(`${word} `)) {
    throw new MeasureError(
      `bit "${text}": "${part}" is not a ${word}. Write it between quotes, with ${example} in it.`,
    );
  }
  const { value } = parseMeasure(part.slice(word.length + 1).trim(), 'length');
  if (value < 0) {
    throw new MeasureError(`bit "${text}" has a ${word} of ${value} mm; it can't be below 0.`);
  }
  return value;
}
