import { formatLength, type Notice, textInUnits } from '@pourproof/plane';
import type { KeptPlace } from './kept-open.ts';

/** What a change could not do everywhere. */
export interface ChangeLimits {
  readonly widenMm: number;
  readonly keepMm: number;
  /** Where two sides would have met. */
  readonly kept: readonly KeptPlace[];
  /** Gaps too narrow to have their corners rounded, and strokes. */
  readonly corners: readonly KeptPlace[];
  readonly tips: readonly KeptPlace[];
}

/** Most places that one notice names. */
const MAX_PLACES = 100;

/** Notices of the places where a change gave way. */
export function changeNotices({ widenMm, keepMm, kept, corners, tips }: ChangeLimits): readonly Notice[] {
  return [
    ...(kept.length === 0 ? [] : [keptNotice(kept, widenMm, keepMm)]),
    ...(corners.length === 0 ? [] : [narrowNotice('gap', corners)]),
    ...(tips.length === 0 ? [] : [narrowNotice('stroke', tips)]),
  ];
}

/** Widened strokes would have met, or narrowed ones vanished. */
function keptNotice(places: readonly KeptPlace[], widenMm: number, keepMm: number): Notice {
  const n = places.length;
  const least = Math.min(...places.map(({ widthMm }) => widthMm));
  const isWider = widenMm > 0;
  return {
    code: isWider ? 'widening-kept-apart' : 'narrowing-kept-whole',
    params: { places: n, leastMm: least, keepMm },
    text: textInUnits((unit) => {
      const [lost, what] = isWider ? ['close', 'wood'] : ['vanish', 'stroke'];
      return `${n === 1 ? 'One place' : `${n} places`} would ${lost} with the width asked for: ${formatLength(least, unit)} of ${what} ${
        n === 1 ? 'is' : 'at least are'
      } kept there. Change the width by less, or draw them ${isWider ? 'farther apart' : 'wider'}.`;
    }),
    where: places.slice(0, MAX_PLACES).map(({ atMm }) => ({ atMm })),
    severity: 'caution',
    effect: 'changed',
  };
}

function narrowNotice(what: 'gap' | 'stroke', places: readonly KeptPlace[]): Notice {
  const n = places.length;
  return {
    code: 'too-narrow-to-round',
    params: { what, places: n },
    text: textInUnits(
      `${n === 1 ? `One ${what} is` : `${n} ${what}s are`} narrower than twice the radius: nothing is rounded there.`,
    ),
    where: places.slice(0, MAX_PLACES).map(({ atMm }) => ({ atMm })),
    severity: 'note',
  };
}
