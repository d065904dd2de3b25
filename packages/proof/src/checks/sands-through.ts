import { levelMethods, limits } from '@pourproof/materials';
import { byGrain } from '@pourproof/plane';
import { opacityAt } from '../colours/opacity-at.ts';
import { gradeOf, type LevellingGrade, ROUNDING_MM } from '../levelling/graded-parts.ts';
import type { GradedStretch, LevelledPlace } from '../levelling/levelling-map.ts';
import type { Measured } from '../measured.ts';
import type { Finding, FindingPlace } from '../report/finding-schema.ts';
import type { Check } from './check.ts';
import { highMm, levellingFixes } from './levelling-fixes.ts';
import { placeOfDisc, placeOfPath, sortedBySize } from './places.ts';
import { proposed } from './proposed.ts';

/** A part that levelling spoils, with where it does most. */
interface Spoilt {
  readonly first: LevelledPlace;
  readonly place: FindingPlace;
  /** Shorter than it is wide, in a part whose widest place fares better: an end of it rather than a stroke (our choice). */
  readonly isTip: boolean;
}

/**
 * Levelling that takes all colour off, or leaves it too shallow to hide the floor or, between sloping walls, too narrow to
 * read; and levelling that would at the upper end of what its method takes off.
 */
export const sandsThrough: Check = {
  code: 'sands-through',
  run: (measured) => {
    const lost = partsOf(measured, 'lost').filter(({ first }) => !wasUnseen(first, measured));
    const spoilt = partsOf(measured, 'spoilt').filter(
      ({ first, isTip }) => !isTip && !wasTooNarrow(first, measured),
    );
    const gone = lost.filter(({ isTip }) => !isTip);
    if (gone.length > 0) {
      return gone.some(({ first }) => first.mostLeftMm <= first.needs.faintMm)
        ? depthFinding('stop', gone, measured)
        : widthFinding('stop', gone, measured);
    }
    const told = [...lost, ...spoilt];
    const shallow = told.filter(({ first }) => first.leftMm < first.needs.shallowestMm - ROUNDING_MM);
    if (shallow.length > 0) {
      return depthFinding('caution', shallow, measured);
    }
    return told.length > 0 ? widthFinding('caution', told, measured) : rangeFinding(measured);
  },
};

/** All parts of a grade: stretches of stroke, for a taper always ends in nothing, and parts without one. */
function partsOf({ levellingMap }: Measured, grade: LevellingGrade): readonly Spoilt[] {
  const { stretches, areas, parts, planMm } = levellingMap;
  const better = new Set(
    parts.flatMap(({ part, last }) =>
      last !== null && !isAsGrave(gradeOf(last, planMm), grade) ? [part] : [],
    ),
  );
  return [
    ...stretches
      .filter((each) => each.grade === grade && each.kind === 'stroke')
      .map((each) => ({
        first: each.first,
        place: placeOfGraded(each),
        isTip: each.lengthMm <= each.narrowestMm && better.has(each.part),
      })),
    ...areas
      .filter((each) => each.grade === grade)
      .map(({ first }) => ({ first, place: placeOfDisc(first.atMm, first.widthMm), isTip: false })),
  ];
}

function isAsGrave(one: LevellingGrade, other: LevellingGrade): boolean {
  return GRAVEST_FIRST.indexOf(one) <= GRAVEST_FIRST.indexOf(other);
}

const GRAVEST_FIRST: readonly LevellingGrade[] = ['lost', 'spoilt', 'close', 'holds'];

function placeOfGraded({ first, path, lengthMm, narrowestMm }: GradedStretch): FindingPlace {
  return placeOfPath(first.atMm, path, { what: 'stroke', lengthMm, widthMm: narrowestMm });
}

/** The same of strokes and dots too narrow to be seen. */
function wasUnseen({ widthMm, needs, mostLeftMm }: LevelledPlace, { shape }: Measured): boolean {
  return shape.includedRad === null && widthMm < needs.faintWidthMm && mostLeftMm > needs.faintMm;
}

/** Strokes that upright walls leave too narrow from the start have a finding of their own. */
function wasTooNarrow({ widthMm, needs, leftMm }: LevelledPlace, { shape }: Measured): boolean {
  return shape.includedRad === null && widthMm < needs.narrowestMm && leftMm >= needs.shallowestMm;
}

type Severe = 'stop' | 'caution';

function depthFinding(severity: Severe, parts: readonly Spoilt[], measured: Measured): Finding {
  const { first } = parts.reduce((worst, each) => (each.first.leftMm < worst.first.leftMm ? each : worst));
  const { opaque, faint } = opacityAt(measured.colourCuts)(first.atMm);
  const limit = severity === 'stop' || measured.shape.includedRad !== null ? faint : opaque;
  // what may be left at most is none, or what is left at least is too little
  const leftMm = severity === 'stop' ? first.mostLeftMm : first.leftMm;
  return {
    code: 'sands-through',
    severity,
    where: placesOf(parts),
    measured: { value: Math.max(0, leftMm), quantity: 'depth', unit: 'mm' },
    limit: { value: limit.value, quantity: 'depth', unit: 'mm' },
    because: [...new Set([...limit.because, ...measured.job.rows.resin.shrinkagePct.because])],
    fix: proposed(() => levellingFixes(measured, first)),
  };
}

function widthFinding(severity: Severe, parts: readonly Spoilt[], measured: Measured): Finding {
  const { first } = parts.reduce((worst, each) =>
    each.first.leftWidthMm < worst.first.leftWidthMm ? each : worst,
  );
  const limit =
    severity === 'stop'
      ? limits.faintWidth
      : measured.shape.includedRad === null
        ? limits.narrowestStrokeFlat
        : limits.narrowestStrokeVee;
  return {
    code: 'sands-through',
    severity,
    where: placesOf(parts),
    measured: { value: Math.max(0, first.leftWidthMm), quantity: 'width', unit: 'mm' },
    limit: { value: limit.value, quantity: 'width', unit: 'mm' },
    because: [...limit.because],
    fix: proposed(() => levellingFixes(measured, first)),
  };
}

/** Colour that holds under the plan, but not at the upper end of what the method takes off. */
function rangeFinding(measured: Measured): Finding | null {
  const { job, levellingMap } = measured;
  const { first, stretches, areas } = levellingMap;
  const high = highMm(measured);
  const near = [
    ...stretches
      .filter(({ kind }) => kind === 'stroke')
      .map((each) => ({ place: each.first, marked: placeOfGraded(each) })),
    ...areas.map(({ first: place }) => ({ place, marked: placeOfDisc(place.atMm, place.widthMm) })),
  ].filter(({ place }) => seenForMm(place, measured) < high);
  // a taper alone has neither
  const places = near.length > 0 ? near.map(({ place }) => place) : first === null ? [] : [first];
  const worst = places.toSorted(byGrain((place) => seenForMm(place, measured)))[0];
  if (worst === undefined || seenForMm(worst, measured) >= high) {
    return null;
  }
  return {
    code: 'sands-through',
    severity: 'caution',
    where: sortedBySize(near.map(({ marked }) => marked)),
    measured: { value: seenForMm(worst, measured), quantity: 'height', unit: 'mm' },
    limit: { value: high, quantity: 'height', unit: 'mm' },
    because: [...levelMethods[job.levelBy].removalMm.because],
    fix: proposed(() => levellingFixes(measured, worst)),
  };
}

/** What may come off before colour is gone or too narrow to be seen, mm. */
function seenForMm(place: LevelledPlace, measured: Measured): number {
  return wasUnseen(place, measured) ? place.goneMm : Math.min(place.goneMm, place.unseenMm);
}

function placesOf(parts: readonly Spoilt[]): FindingPlace[] {
  return sortedBySize(parts.map(({ place }) => place));
}
