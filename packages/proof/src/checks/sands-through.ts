import { limits } from '@pourproof/materials';
import { formatLength, type LengthUnit } from '@pourproof/plane';
import { cutShape } from '../cut/cut-shape.ts';
import { deepestReachMm } from '../cut/short-bit.ts';
import { levelledStroke, type StrokeShop } from '../levelling/stroke-margin.ts';
import type { Measured } from '../measured.ts';
import type { Finding, FixOption } from '../report/report.ts';
import type { Check } from './check.ts';
import { placeOfPath, placeOfPoint } from './places.ts';
import { noLess } from './way-length.ts';

/** Colour shallower than this lets the floor show through. */
const OPAQUE = limits.opaqueDepth;

/** Least that levelling takes, mm: a way out that leaves nothing to level is none (our choice). */
const STEP_MM = 0.01;
/** No pocket is deeper, mm (our choice: what is taken for a slip of the unit). */
const DEEPEST_MM = 100;
/** A pocket that has to get more than so many times as deep is another job, no way out of this one (our choice). */
const MOST_DEEPENED = 4;
/** Unit of a finding that measures width and not depth. */
const WIDE = 'mm wide';

/** Levelling that takes all colour off, or leaves it too shallow to hide the floor or, in a V, too narrow to read. */
export const sandsThrough: Check = {
  code: 'sands-through',
  title: 'Levelling sands through the colour',
  run: (measured) => {
    const { job, levelling, shape } = measured;
    const { leftMm, leftWidthMm } = levelling;
    if (levelling.firstLostAt === null) {
      return null;
    }
    const isVee = shape.includedRad !== null;
    const isDeep = leftMm > 0 && (isVee || leftMm >= OPAQUE.value);
    const tellsWidth = isVee || isDeep;
    if (isDeep && !losesWidth(measured)) {
      return null;
    }
    const limit = tellsWidth ? widthLimit(shape) : OPAQUE;
    return {
      code: 'sands-through',
      severity: leftMm <= 0 ? 'stop' : 'caution',
      where: placesOf(measured),
      measured: tellsWidth
        ? { value: leftMm <= 0 ? 0 : leftWidthMm, unit: WIDE }
        : { value: Math.max(0, leftMm), unit: 'mm' },
      limit: { value: limit.value, unit: tellsWidth ? WIDE : 'mm' },
      because: [...limit.because, ...job.rows.resin.shrinkagePct.because],
      fix: { options: tellsWidth ? widthFixes(measured) : fixes(measured) },
    };
  },
  advise: (finding, unit) => ({
    headline: headlineOf(finding, unit),
    why:
      finding.measured.unit === WIDE
        ? 'The walls slope: what levelling takes off the face takes width as well, and the seal that pools at the narrow bottom takes depth.'
        : 'What is left is the depth of the cut, less the seal on the floor, less what curing shrinks, less the low spots of the board, less what levelling takes.',
    fixes:
      finding.fix.options.length === 0
        ? [
            'No one change is enough here: widen the stroke, give fewer coats of seal and take less off the face.',
          ]
        : finding.fix.options.map((option) => {
            const length = noLess(Number(option.value), unit);
            switch (option.do) {
              case 'deepen':
                return `Cut ${length} deeper.`;
              case 'fewer-coats':
                return `Give ${coatsText(Number(option.value))} of seal instead.`;
              case 'widen':
                return `Widen the stroke by ${length}.`;
              default:
                return `Take ${length} less off the face.`;
            }
          }),
  }),
};

function coatsText(coats: number): string {
  return `${coats} ${coats === 1 ? 'coat' : 'coats'}`;
}

/** Least width that still reads after levelling. */
function widthLimit({ includedRad }: Measured['shape']): typeof limits.narrowestStrokeVee {
  return includedRad === null ? limits.narrowestStrokeFlat : limits.narrowestStrokeVee;
}

/**
 * Whether levelling leaves a stroke too narrow. A V's walls show through along its edges whatever its depth: it is held to its width throughout. What other
 * bits cut too narrow from the start has its own finding.
 */
function losesWidth({ levelling, shape }: Measured): boolean {
  const { leftWidthMm, narrowestMm } = levelling;
  const least = widthLimit(shape).value;
  return leftWidthMm < least && (shape.includedRad !== null || narrowestMm >= least);
}

function headlineOf({ severity, measured, limit }: Finding, unit: LengthUnit): string {
  if (severity === 'stop') {
    return 'Levelling as planned takes all colour off the narrowest strokes.';
  }
  const [left, least] = [formatLength(measured.value, unit), formatLength(limit.value, unit)];
  return measured.unit === WIDE
    ? `Levelling as planned leaves the narrowest stroke ${left} wide; below ${least} it fades.`
    : `Levelling as planned leaves ${left} of colour; below ${least} the floor shows through.`;
}

/** The strokes that are lost; where colour only becomes thin, the place where it does first. */
function placesOf({ levelling, bitMm, narrowerThan }: Measured): ReturnType<typeof placeOfPoint>[] {
  const { lostBelowMm, firstLostAt } = levelling;
  const lost =
    lostBelowMm > bitMm && Number.isFinite(lostBelowMm)
      ? narrowerThan(lostBelowMm).filter((stretch) => stretch.kind === 'stroke')
      : [];
  return lost.length > 0
    ? lost.map((stretch) => placeOfPath(stretch.atMm, stretch.path))
    : [placeOfPoint(firstLostAt ?? [0, 0])];
}

function fixes(measured: Measured): FixOption[] {
  const { job, levelling } = measured;
  const missing = OPAQUE.value - levelling.leftMm;
  const options: FixOption[] = [];
  const isSafe = (deeperMm: number, coats = job.coats): boolean => {
    const depthMm = job.depthMm + deeperMm;
    // a round or sloped end is wider at the face when it goes deeper
    const deeper = cutShape(job.bits, depthMm);
    const widthMm = Math.max(deeper.entersMm, levelling.narrowestMm);
    const section = deeper.sectionAt(widthMm);
    const shop = shopOf(measured);
    const film = { ...shop, filmMm: job.coats > 0 ? (shop.filmMm * coats) / job.coats : 0 };
    return section !== null && levelledStroke(section, film, job.levelMm).colourDepthMm >= OPAQUE.value;
  };
  const deepen = least(isSafe, Math.min(deepestMm(job) - STEP_MM, MOST_DEEPENED * job.depthMm) - job.depthMm);
  if (deepen !== null) {
    options.push({ do: 'deepen', value: deepen, unit: 'mm', clears: true });
  }
  for (let fewer = job.coats - 1; fewer >= 1; fewer--) {
    if (isSafe(0, fewer)) {
      options.push({ do: 'fewer-coats', value: fewer, unit: 'coats', clears: true });
      break;
    }
  }
  if (job.levelMm - STEP_MM >= missing) {
    options.push({ do: 'level-less', value: Math.ceil(missing * 100) / 100, unit: 'mm', clears: true });
  }
  return options;
}

/** No deeper can the bits of a job go, or its board is cut through. */
function deepestMm({ bits, board }: Measured['job']): number {
  return Math.min(board?.thicknessMm ?? DEEPEST_MM, deepestReachMm(bits));
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
function widthFixes(measured: Measured): FixOption[] {
  const { job, levelling, shape } = measured;
  const setting = shopOf(measured);
  const narrowest = widthLimit(shape).value;
  const shallowest = shape.includedRad === null ? OPAQUE.value : 0;
  const isSafe = (widthMm: number, levelMm: number): boolean => {
    const section = shape.sectionAt(widthMm);
    const left = section === null ? null : levelledStroke(section, setting, levelMm);
    return (
      left !== null && left.colourDepthMm > 0 && left.colourDepthMm >= shallowest && left.widthMm >= narrowest
    );
  };
  const options: FixOption[] = [];
  const widen = least((mm) => isSafe(levelling.narrowestMm + mm, levelling.planMm), 10 * narrowest);
  if (widen !== null) {
    options.push({ do: 'widen', value: widen, unit: 'mm', clears: true });
  }
  const less = least((mm) => isSafe(levelling.narrowestMm, levelling.planMm - mm), job.levelMm - STEP_MM);
  if (less !== null) {
    options.push({ do: 'level-less', value: less, unit: 'mm', clears: true });
  }
  return options;
}

/** Least hundredths of a millimetre, up to a limit, from which on something is safe; `null` where nothing is. */
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
