import { choice, measure } from './holds.ts';
import type { Rows } from './setting.ts';

/** What is changed of the outlines before anything else is looked at; what the job does not say is absent. */
export interface OutlineChange {
  /** By how much strokes become wider, half of it on either side; narrower where it is negative. */
  readonly widenMm?: number;
  readonly joins?: 'round' | 'mitre' | 'bevel';
  /** What would close or vanish by that is kept so wide. */
  readonly keepApartMm?: number;
  readonly roundTipsMm?: number;
  readonly roundCornersMm?: number;
  /** Strokes that are narrower become so wide. */
  readonly leastStrokeMm?: number;
  /** Wood that is left between two colours. */
  readonly colourWallMm?: number;
}

// no stroke of a board is as wide (our choice)
const RADIUS = { min: 0, max: 100, example: '0.5mm or 1/64in' };

/** Settings of changed outlines. */
export const OUTLINE_SETTINGS = {
  widen: {
    isOfArtwork: true,
    holds: measure('length', '0.4mm', { min: -100, max: 100, example: '0.4mm or -1/64in' }),
    field: 'widenMm',
    otherwise: 'as drawn',
    group: 'outlines',
    takes: 'LENGTH',
    help: 'Make every stroke wider by this, half of it on either side; narrower where it is negative',
    label: 'Strokes wider by',
    hint: 'Narrower with a minus',
  },
  leastStroke: {
    isOfArtwork: true,
    holds: measure('length', '2mm', { min: 0, max: 100, example: '2mm or 1/16in' }),
    field: 'leastStrokeMm',
    otherwise: 'as drawn',
    group: 'outlines',
    takes: 'LENGTH',
    help: 'Make strokes that are narrower than this so wide; all others stay as drawn',
    label: 'Strokes at least so wide',
  },
  joins: {
    isOfArtwork: true,
    holds: choice(['mitre', 'round', 'bevel'], {
      mitre: 'sharp, as drawn (mitre)',
      round: 'round',
      bevel: 'cut off (bevel)',
    }),
    field: 'joins',
    otherwise: 'mitre',
    group: 'outlines',
    takes: 'mitre|round|bevel',
    help: 'Corners of widened strokes: mitre (default; round where it would reach far), round or bevel',
    label: 'Corners of widened strokes',
  },
  keepApart: {
    isOfArtwork: true,
    holds: measure('length', '1mm', { min: 0, max: 100, example: '1mm or 1/32in' }),
    field: 'keepApartMm',
    otherwise: 'the least wall of wood along the fibres',
    group: 'outlines',
    takes: 'LENGTH',
    help: 'Wood that widening leaves between two strokes, and stroke that narrowing leaves, at least',
    label: 'Kept apart at least',
  },
  roundTips: {
    isOfArtwork: true,
    holds: measure('length', '0.5mm', RADIUS),
    field: 'roundTipsMm',
    otherwise: 'as drawn',
    group: 'outlines',
    takes: 'RADIUS',
    help: 'Round outward corners and tips to this radius',
    label: 'Radius of outward corners',
  },
  roundCorners: {
    isOfArtwork: true,
    holds: measure('length', '0.5mm', RADIUS),
    field: 'roundCornersMm',
    otherwise: 'as drawn',
    group: 'outlines',
    takes: 'RADIUS',
    help: 'Round inward corners to this radius',
    label: 'Radius of inward corners',
  },
  colourWall: {
    isOfArtwork: true,
    holds: measure('length', '1mm', { min: 0, max: 100, example: '1mm or 3/64in' }),
    field: 'colourWallMm',
    otherwise: 'as drawn',
    group: 'outlines',
    takes: 'LENGTH',
    help: 'Leave so much wood between two colours; what is drawn on top stays as it is',
    label: 'Wood between colours',
  },
} as const satisfies Rows<OutlineChange>;
