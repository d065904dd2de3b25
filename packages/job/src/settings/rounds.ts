import * as z from 'zod/mini';
import type { Bit } from '../bits/bit.ts';
import { type BitInput, bitSchema } from '../bits/bit-input.ts';
import { readBit } from '../bits/parse-bit.ts';
import { typedBit } from '../bits/typed-bit.ts';
import { JobError } from '../refusals/job-error.ts';
import {
  type LengthInput,
  measureSchema,
  readMeasure,
  shownInput,
  typedMeasure,
} from '../values/measure-input.ts';
import { refuseOutside } from '../values/range.ts';
import { DEPTH_RANGE } from './cut.ts';
import { written } from './holds.ts';
import type { Rows } from './setting.ts';

/** Colours or layers of the drawing that are carved and poured together. */
export interface RoundSetting {
  /** Names as the maker wrote them, at least one. */
  readonly drawn: readonly string[];
  /** Depth of this round; `null` where it is that of the job. */
  readonly depthMm: number | null;
  /** Bits of this round in the order of use, at least one; `null` where they are those of the job. */
  readonly bits: readonly Bit[] | null;
}

/** The order of the work. */
export interface RoundSettings {
  /** In the order of the work; empty where all is carved and poured at once. */
  readonly rounds: readonly RoundSetting[];
}

/** A round as a structure. */
export interface RoundInput {
  readonly colours: readonly string[];
  readonly depth?: LengthInput | undefined;
  readonly bit?: readonly BitInput[] | undefined;
}

/** `red, blue+white:2mm with flat:1mm`, or the same as a list. */
type RoundsInput = string | readonly RoundInput[];

/** Settings of rounds. */
export const ROUND_SETTINGS = {
  rounds: {
    holds: written<RoundsInput, readonly RoundSetting[]>(
      z.union([
        z.string(),
        z
          .array(
            z.strictObject({
              colours: z.array(z.string()).check(z.minLength(1)),
              depth: z.optional(measureSchema('length')),
              bit: z.optional(z.array(bitSchema).check(z.minLength(1))),
            }),
          )
          .check(z.minLength(1)),
      ]),
      `colours or layers of the drawing in the order of the work, such as "red, blue+white:2mm with flat:1mm" or [{"colours": ["red"]}, {"colours": ["blue", "white"], "depth": "2mm", "bit": ["flat:1mm"]}]`,
      readRounds,
      typedRounds,
      { hasWorkLengths: true },
    ),
    field: 'rounds',
    absent: [],
    otherwise: 'all colours are carved and poured at once',
    group: 'resin',
    takes: '"DRAWN, DRAWN"',
    help: 'Carve, pour, cure and level colour by colour, as "red, blue+white:2mm with flat:1mm+vee:60deg:1/2in"; depth and bits are those of the job where a round has none',
    label: 'Rounds of carving and pouring',
    hint: 'Colours or layers of the drawing in the order of the work, as in “red, blue+white:2mm”, with bits of their own as in “red, blue with flat:1mm”; empty to pour all at once',
    only: { formats: ['svg', 'dxf'], about: 'rounds of colours' },
  },
} as const satisfies Rows<RoundSettings>;

function readRounds(input: RoundsInput): readonly RoundSetting[] {
  const rounds = typeof input === 'string' ? roundTexts(input).map(parsedRound) : input.map(structuredRound);
  const names = rounds.flatMap(({ drawn }) => drawn.map((name) => name.toLowerCase()));
  const again = names.find((name, k) => names.indexOf(name) < k);
  if (names.includes('')) {
    throw new JobError('not-rounds', 'rounds', { shown: shownInput(input) });
  }
  if (again !== undefined) {
    throw new JobError('round-twice', 'rounds', { name: again });
  }
  return rounds;
}

/** A further point of the profile of a bit, `3mm@2mm`: its comma parts no rounds. */
const PROFILE_POINT = /^\s*(?:\d|\.\d)[^@,+]*@/u;

function roundTexts(text: string): readonly string[] {
  const rounds: string[] = [];
  for (const piece of text.split(',')) {
    const last = rounds.at(-1);
    if (last !== undefined && PROFILE_POINT.test(piece)) {
      rounds[rounds.length - 1] = `${last},${piece}`;
    } else {
      rounds.push(piece);
    }
  }
  return rounds;
}

/** Bits at the end of a round; a layer may have the word in its name. */
const BITS = /^(.*?)\s+with\s+((?:flat|ball|bull|vee|taper|profile)\s*:.*)$/su;
/** A length with its unit at the end of a round; a layer may have a colon in its name. */
const DEPTH = /^(.*):\s*((?:\d|\.\d)[^:]*)$/su;

function parsedRound(text: string): RoundSetting {
  const [, head = text, bits] = BITS.exec(text) ?? [];
  const [, names = head, depth] = DEPTH.exec(head) ?? [];
  return {
    drawn: names.split('+').map((name) => name.trim()),
    depthMm: depth === undefined ? null : readDepth(depth.trim()),
    bits: bits === undefined ? null : bits.split('+').map((bit) => readBit(bit.trim())),
  };
}

function structuredRound({ colours, depth, bit }: RoundInput): RoundSetting {
  return {
    drawn: colours.map((name) => name.trim()),
    depthMm: depth === undefined ? null : readDepth(depth),
    bits: bit === undefined ? null : bit.map(readBit),
  };
}

function readDepth(depth: LengthInput): number {
  const mm = readMeasure('rounds', depth, 'length');
  refuseOutside('rounds', mm, 'mm', DEPTH_RANGE);
  return mm;
}

function typedRounds(input: RoundsInput): string {
  return typeof input === 'string' ? input : input.map(typedRound).join(', ');
}

function typedRound({ colours, depth, bit }: RoundInput): string {
  const deep = depth === undefined ? '' : `:${typedMeasure(depth, 'length')}`;
  const bits = bit === undefined ? '' : ` with ${bit.map(typedBit).join('+')}`;
  return `${colours.join('+')}${deep}${bits}`;
}
