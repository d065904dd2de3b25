import { limits } from '@pourproof/materials';
import { type Point, packRings, type Rings } from '@pourproof/plane';
import { cutShape } from '../cut/cut-shape.ts';
import { deepestReachMm } from '../cut/short-bit.ts';
import { levelledAs } from '../levelling/levelling-plan.ts';
import type { StrokeShop } from '../levelling/stroke-margin.ts';
import type { Measured } from '../measured.ts';
import type { Fix } from '../report/fix-schema.ts';
import type { Check } from './check.ts';
import { placeOfPoint, placeOfRings, placeOfStretch } from './places.ts';

/** Colour shallower than this lets the floor show through. */
const OPAQUE = limits.opaqueDepth;

/** Least that levelling takes off, mm: a fix that leaves nothing to level is none (our choice). */
const STEP_MM = 0.01;
/** No pocket is deeper, mm (our choice: beyond it a wrong unit is assumed). */
const DEEPEST_MM = 100;
/** Deepening by more than this factor makes it another job, and is not offered (our choice). */
const MAX_DEEPENED = 4;

/**
 * Levelling that takes all colour off, or leaves it too shallow to hide the floor or, in a V, too narrow to
 * read.
 */
export const sandsThrough: Check = {
  code: 'sands-through',
  run: (measured) => {
    const { job, levelling, shape } = measured;
    const { leftMm, leftWidthMm } = levelling;
    if (levelling.firstLostAt === null) {
      return null;
    }
    const isVee = shape.includedRad !== null;
    const isGone = leftMm <= goneBelowMm(measured);
    const isDeep = !isGone && (isVee || leftMm >= OPAQUE.value);
    const tellsWidth = isVee || isDeep;
    if (isDeep && !losesWidth(measured)) {
      return null;
    }
    const limit = tellsWidth ? widthLimit(shape) : OPAQUE;
    return {
      code: 'sands-through',
      severity: isGone ? 'stop' : 'caution',
      where: placesOf(measured),
      measured: tellsWidth
        ? { value: isGone ? 0 : leftWidthMm, quantity: 'width', unit: 'mm' }
        : { value: Math.max(0, leftMm), quantity: 'depth', unit: 'mm' },
      limit: { value: limit.value, quantity: tellsWidth ? 'width' : 'depth', unit: 'mm' },
      because: [...limit.because, ...job.rows.resin.shrinkagePct.because],
      fix: { options: tellsWidth ? widthFixes(measured) : fixes(measured) },
    };
  },
};

/** Depth of colour that is none: even the strongest colour shows the floor through less; a V shows its walls beside it and is held to its width. */
function goneBelowMm({ shape }: Measured): number {
  return shape.includedRad === null ? limits.faintDepth.value : 0;
}

/** Least width that still reads after levelling. */
function widthLimit({ includedRad }: Measured['shape']): typeof limits.narrowestStrokeVee {
  return includedRad === null ? limits.narrowestStrokeFlat : limits.narrowestStrokeVee;
}

/**
 * Whether levelling leaves a stroke too narrow. A V's walls show through along its edges whatever its depth:
 * it is held to its width throughout. Strokes that other bits cut too narrow from the start have their own
 * finding.
 */
function losesWidth({ levelling, shape }: Measured): boolean {
  const { leftWidthMm, narrowestMm } = levelling;
  const least = widthLimit(shape).value;
  return leftWidthMm < least && (shape.includedRad !== null || narrowestMm >= least);
}

/** The strokes that are lost; where colour only becomes thin, the place where it does so first. */
function placesOf({ levelling, bitMm, narrowerThan }: Measured): ReturnType<typeof placeOfPoint>[] {
  const { lostBelowMm, lostDots, firstLostAt } = levelling;
  const lost =
    lostBelowMm > bitMm && Number.isFinite(lostBelowMm)
      ? narrowerThan(lostBelowMm).filter((stretch) => stretch.kind === 'stroke')
      : [];
  const places = [
    ...lost.map(placeOfStretch),
    ...lostDots.map(({ atMm, widthMm }) =>
      placeOfRings(atMm, circleAround(atMm, widthMm / 2), { what: 'dot', widthMm }),
    ),
  ];
  return places.length > 0 ? places : [placeOfPoint(firstLostAt ?? [0, 0], { what: 'stroke' })];
}

/** Sides of the polygon that shows a dot. */
const CIRCLE_SIDES = 32;

function circleAround([x, y]: Point, radiusMm: number): Rings {
  return packRings([
    Array.from({ length: CIRCLE_SIDES }, (_, k) => (2 * Math.PI * k) / CIRCLE_SIDES).flatMap((angle) => [
      x + radiusMm * Math.cos(angle),
      y + radiusMm * Math.sin(angle),
    ]),
  ]);
}

function fixes(measured: Measured): Fix[] {
  const { job, levelling } = measured;
  const missing = OPAQUE.value - levelling.leftMm;
  const options: Fix[] = [];
  const isSafe = (deeperMm: number, coats = job.coats): boolean => {
    const depthMm = job.depthMm + deeperMm;
    // a round or sloped end is wider at the face when it goes deeper
    const deeper = cutShape(job.bits, depthMm);
    const widthMm = Math.max(deeper.entersMm, levelling.narrowestMm);
    const section = deeper.sectionAt(widthMm);
    const shop = shopOf(measured);
    const film = { ...shop, filmMm: job.coats > 0 ? (shop.filmMm * coats) / job.coats : 0 };
    return (
      section !== null && levelledAs(levelling.form, section, film, job.levelMm).colourDepthMm >= OPAQUE.value
    );
  };
  const deepen = least(isSafe, Math.min(deepestMm(job) - STEP_MM, MAX_DEEPENED * job.depthMm) - job.depthMm);
  if (deepen !== null) {
    options.push({ do: 'deepen', byMm: deepen, clears: true });
  }
  for (let fewer = job.coats - 1; fewer >= 1; fewer--) {
    if (isSafe(0, fewer)) {
      options.push({ do: 'fewer-coats', coats: fewer, clears: true });
      break;
    }
  }
  if (job.levelMm - STEP_MM >= missing) {
    options.push({ do: 'level-less', byMm: Math.ceil(missing * 100) / 100, clears: true });
  }
  return options;
}

/** The greatest depth that the bits reach and that does not cut through the board. */
function deepestMm({ bits, thicknessMm }: Measured['job']): number {
  return Math.min(thicknessMm ?? DEEPEST_MM, deepestReachMm(bits));
}

/** What takes room from the colour, at the lowest place of the board. */
function shopOf({ job, sealFilm, heights }: Measured): StrokeShop {
  return {
    filmMm: sealFilm,
    shrinkagePct: job.rows.resin.shrinkagePct.value,
    shallowByMm: Math.max(0, -(heights?.lowestMm ?? 0)),
  };
}

/** Each way is tried on the section of the narrowest stroke. */
function widthFixes(measured: Measured): Fix[] {
  const { job, levelling, shape } = measured;
  const setting = shopOf(measured);
  const narrowest = widthLimit(shape).value;
  const shallowest = shape.includedRad === null ? OPAQUE.value : 0;
  const isSafe = (widthMm: number, levelMm: number): boolean => {
    const section = shape.sectionAt(widthMm);
    const left = section === null ? null : levelledAs(levelling.form, section, setting, levelMm);
    return (
      left !== null && left.colourDepthMm > 0 && left.colourDepthMm >= shallowest && left.widthMm >= narrowest
    );
  };
  const options: Fix[] = [];
  const widen = least((mm) => isSafe(levelling.narrowestMm + mm, levelling.planMm), 10 * narrowest);
  if (widen !== null) {
    options.push({ do: 'widen', what: 'stroke', byMm: widen, clears: true });
  }
  const less = least((mm) => isSafe(levelling.narrowestMm, levelling.planMm - mm), job.levelMm - STEP_MM);
  if (less !== null) {
    options.push({ do: 'level-less', byMm: less, clears: true });
  }
  return options;
}

/** The least hundredths of a millimetre, up to a limit, that are safe; `null` where none are. */
function least(isSafe: (mm: number) => boolean, mostMm: number): number | null {
  let low = 0;
  let high = Math.floor(mostMm * 100);
  if (!isSafe(high / 100)) {
    return null;
  }
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (isSafe(middle / 100)) {
      high = middle;
    } else {
      low = middle;
    }
  }
  return high / 100;
}
