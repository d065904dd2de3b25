import type { Bit } from '../bits/bit.ts';
import { bitSize } from '../bits/bit.ts';
import { type BitInput, bitSchema } from '../bits/bit-input.ts';
import { readBit } from '../bits/parse-bit.ts';
import { typedBit } from '../bits/typed-bit.ts';
import { listOf, measure, written } from './holds.ts';
import type { Rows } from './setting.ts';

/** The bits and how deep they go. */
export interface CutSettings {
  /** In the order of use; at least one. */
  readonly bits: readonly Bit[];
  readonly depthMm: number;
}

/** What a depth must lie between, mm. */
export const DEPTH_RANGE = {
  above: 0,
  max: 100,
  why: 'No board here is deeper: check the unit.',
  example: '1/8in or 3mm',
};

const inches = (mm: number): string => bitSize(mm, 'in').replace(' ', '');

/** Settings of the cut. */
export const CUT_SETTINGS = {
  bit: {
    isOfShop: true,
    holds: listOf(
      written<BitInput, Bit>(bitSchema, '', readBit, typedBit, { hasWorkLengths: true }),
      'a list of bits, such as ["flat:1/8in"] or [{"kind": "flat", "diameterMm": 3.175}]',
    ),
    field: 'bits',
    usual: { limit: 'usualBit', as: (mm: number): readonly BitInput[] => [`flat:${inches(mm)}`] },
    group: 'first',
    takes: 'KIND:SIZE',
    help: 'A bit at hand, such as flat:1/8in; repeat it in the order of use',
  },
  depth: {
    isOfShop: true,
    holds: measure('length', '1/8in', DEPTH_RANGE),
    field: 'depthMm',
    usual: { limit: 'usualDepth', as: inches },
    group: 'first',
    takes: 'LENGTH',
    help: 'Depth of the pocket, such as 1/8in or 3mm',
    label: 'Depth of the pocket',
  },
} as const satisfies Rows<CutSettings>;
