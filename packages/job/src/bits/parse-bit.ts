import { MeasureError, parseMeasure } from '@pourproof/plane';
import { JobError } from '../refusals/job-error.ts';
import type { Bit } from './bit.ts';
import type { BitInput, BitStructure } from './bit-input.ts';
import { checkedBit } from './checked-bit.ts';

/**
 * A bit, from a text such as `vee:60deg:1/2in` or from a structure of the same.
 *
 * @throws {JobError} when it cannot be read or no such bit can be made
 */
export function readBit(input: BitInput): Bit {
  return typeof input === 'string' ? parseBit(input) : checkedBit(JSON.stringify(input), input);
}

/**
 * Reads a bit as typed: `flat:1/8in`, `ball:1/16in`, `bull:1/4in:corner 1mm`, `vee:60deg:1/2in[:tip
 * 0.1mm|:tip radius 0.2mm]`, `taper:0.5mm:5deg:1/4in` (tip diameter, angle of one side, diameter),
 * `profile:1mm@0mm,3mm@2mm` (diameter at height above the tip, straight between); `:length 12mm` at the end
 * of any gives the length of its cutting edge.
 *
 * @throws {JobError} when it cannot be read; the message says which part and how a bit is written
 */
export function parseBit(text: string): Bit {
  const [kind = '', ...all] = text.split(':').map((part) => part.trim());
  const { parts, cuttingLengthMm } = withoutLength(text, all);
  // not what every object has, such as toString
  const reader = Object.hasOwn(READERS, kind) ? READERS[kind] : undefined;
  if (reader === undefined) {
    throw unknownKind(text, kind);
  }
  if (parts.length > reader.most) {
    throw new JobError('bit-parts', 'bit', { shown: text });
  }
  const part = (index: number): string => {
    const value = parts[index];
    if (value === undefined || value === '') {
      throw new JobError('bit-incomplete', 'bit', { shown: text });
    }
    return value;
  };
  return checkedBit(text, { ...reader.read(text, part, parts.length), cuttingLengthMm });
}

type PartAt = (index: number) => string;

const READERS: Readonly<
  Record<
    string,
    { readonly most: number; readonly read: (text: string, part: PartAt, count: number) => BitStructure }
  >
> = {
  flat: { most: 1, read: (_, part) => ({ kind: 'flat', diameterMm: length(part(0)) }) },
  ball: { most: 1, read: (_, part) => ({ kind: 'ball', diameterMm: length(part(0)) }) },
  bull: {
    most: 2,
    read: (text, part) => ({
      kind: 'bull',
      diameterMm: length(part(0)),
      cornerMm: worded(text, part(1), 'corner', ':corner 1mm'),
    }),
  },
  vee: { most: 3, read: readVee },
  taper: {
    most: 3,
    read: (_, part) => ({
      kind: 'taper',
      tipDiameterMm: length(part(0)),
      sideDeg: measure(part(1), 'angle'),
      diameterMm: length(part(2)),
    }),
  },
  profile: { most: 1, read: (text, part) => ({ kind: 'profile', points: profilePoints(text, part(0)) }) },
};

function readVee(text: string, part: PartAt, count: number): BitStructure {
  const vee = { kind: 'vee' as const, angleDeg: measure(part(0), 'angle'), diameterMm: length(part(1)) };
  const example = ':tip 0.1mm or :tip radius 0.2mm';
  if (count <= 2) {
    return vee;
  }
  return /^tip\s+radius\s/u.test(part(2))
    ? { ...vee, tipRadiusMm: worded(text, part(2), 'tip radius', example) }
    : { ...vee, tipMm: worded(text, part(2), 'tip', example) };
}

/** Diameters at heights above the tip. */
function profilePoints(text: string, list: string): readonly { heightMm: number; diameterMm: number }[] {
  return list.split(',').map((pair) => {
    const [diameter, height, ...rest] = pair.split('@');
    if (diameter === undefined || height === undefined || rest.length > 0) {
      throw new JobError('profile-pair', 'bit', { shown: text, pair: pair.trim() });
    }
    return { heightMm: length(height.trim()), diameterMm: length(diameter.trim()) };
  });
}

function withoutLength(
  text: string,
  parts: readonly string[],
): { readonly parts: readonly string[]; readonly cuttingLengthMm: number | null } {
  const last = parts.at(-1);
  return last === undefined || !last.startsWith('length')
    ? { parts, cuttingLengthMm: null }
    : { parts: parts.slice(0, -1), cuttingLengthMm: worded(text, last, 'length', ':length 12mm') };
}

function unknownKind(text: string, kind: string): JobError {
  if (/^[\d.]/u.test(text)) {
    const sizes = /[a-z"″]/iu.test(text) ? [text] : [`${text}mm`, `${text}in`];
    return new JobError('bit-without-kind', 'bit', {
      shown: text,
      meant: sizes.map((each) => `flat:${each}`),
    });
  }
  return new JobError('bit-kind', 'bit', { shown: text, kind, kinds: Object.keys(READERS) });
}

/** A length after a word, `tip 0.1mm`; 0 or more. */
function worded(text: string, part: string, word: string, example: string): number {
  if (!part.startsWith(`${word} `)) {
    throw new JobError('bit-word', 'bit', { shown: text, part, word, example });
  }
  return length(part.slice(word.length + 1).trim());
}

function length(text: string): number {
  return measure(text, 'length');
}

function measure(text: string, quantity: 'length' | 'angle'): number {
  try {
    return parseMeasure(text, quantity).value;
  } catch (error) {
    throw error instanceof MeasureError
      ? new JobError('not-a-measure', 'bit', { quantity, reason: error.message })
      : error;
  }
}
