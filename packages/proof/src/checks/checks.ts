import { bitCannotEnter } from './bit-cannot-enter.ts';
import type { Check } from './check.ts';
import { highBleedWall } from './high-bleed-wall.ts';
import { outlineCrosses } from './outline-crosses.ts';
import { outlineOpen } from './outline-open.ts';
import { strokeNearBitWidth } from './stroke-near-bit-width.ts';
import { strokeTooNarrowToLevel } from './stroke-too-narrow-to-level.ts';

/** All checks, in the order in which a maker should read them. */
export const checks: readonly Check[] = [
  bitCannotEnter,
  strokeNearBitWidth,
  strokeTooNarrowToLevel,
  highBleedWall,
  outlineOpen,
  outlineCrosses,
];
