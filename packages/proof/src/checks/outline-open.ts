import {
  DEFAULT_JOIN_TOLERANCE_MM,
  type OpenOutline,
  type OpenOutlines,
  SPECK_AREA_MM2,
} from '@pourproof/plane';
import type { Finding, FindingPlace } from '../report/finding-schema.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfPath } from './places.ts';

/**
 * Outlines that the file leaves open. One that is left out takes its area with it, which is a stop; one that
 * is filled as if a straight line closed it may not be the shape that is meant.
 */
export const outlineOpen: Check = {
  code: 'outline-open',
  run: ({ drawing: { open } }) => {
    if (open === undefined) {
      return null;
    }
    const lost = open.outlines.filter(({ reading }) => reading === 'left-out');
    return lost.length > 0 ? leftOut(lost, open.join) : filled(open.outlines);
  },
};

function leftOut(outlines: readonly OpenOutline[], join: OpenOutlines['join']): Finding {
  const sum = (isHole: boolean): number =>
    outlines.reduce((area, each) => area + (each.isHole === isHole ? each.areaMm2 : 0), 0);
  const joinEnds: Fix[] =
    join === null
      ? []
      : [
          {
            do: 'join-ends',
            toleranceMm: join.toleranceMm,
            closes: join.closes,
            areaMm2: join.areaMm2,
            clears: join.closes === outlines.length,
          },
        ];
  return {
    code: 'outline-open',
    severity: 'stop',
    where: outlines.flatMap(placesOf),
    measured: { value: sum(false) + sum(true), quantity: 'area', unit: 'mm²' },
    limit: { value: SPECK_AREA_MM2, quantity: 'area', unit: 'mm²' },
    openOutlines: { count: outlines.length, cutMm2: sum(false), woodMm2: sum(true) },
    because: ['own-inference'],
    fix: { options: [...joinEnds, closeGap(outlines)] },
  };
}

function filled(outlines: readonly OpenOutline[]): Finding {
  return {
    code: 'outline-open',
    severity: 'caution',
    where: outlines.flatMap(placesOf),
    measured: { value: widestOf(outlines), quantity: 'length', unit: 'mm' },
    limit: { value: DEFAULT_JOIN_TOLERANCE_MM, quantity: 'length', unit: 'mm' },
    because: ['svg2-fill'],
    fix: { options: [closeGap(outlines)] },
  };
}

function closeGap(outlines: readonly OpenOutline[]): Fix {
  return { do: 'close-gap', gapMm: widestOf(outlines), clears: true };
}

function widestOf(outlines: readonly OpenOutline[]): number {
  return outlines.reduce((most, { gaps }) => Math.max(most, gaps[0]?.widthMm ?? 0), 0);
}

function placesOf({ gaps, areaMm2 }: OpenOutline): FindingPlace[] {
  return gaps.map(({ fromMm, toMm, widthMm }) =>
    placeOfPath([(fromMm[0] + toMm[0]) / 2, (fromMm[1] + toMm[1]) / 2], [...fromMm, ...toMm], {
      what: 'gap',
      lengthMm: widthMm,
      areaMm2,
    }),
  );
}
