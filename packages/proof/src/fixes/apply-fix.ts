import {
  type CouponRow,
  type Job,
  type JobInput,
  type SettingKey,
  type Shop,
  settleJob,
  typedJob,
} from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import { type LengthUnit, type Point, parseLengthMm, radians } from '@pourproof/plane';
import type { Fix, FixStep } from '../report/fix-schema.ts';
import { changedBits } from './changed-bits.ts';
import { deeperRound, partedRound, typedRounds } from './changed-rounds.ts';
import { pinnedCoupons } from './pinned-coupons.ts';
import { typedLength, unitOf } from './typed-length.ts';

/** What a job is for. */
export interface FixContext {
  /** Those that ship with pourproof if left out. */
  readonly materials?: MaterialsBook | undefined;
  /** The maker's shop, where there is one. */
  readonly shop?: Shop | undefined;
  /** Whether lettering is vetted: it is sized by its capitals. */
  readonly isLettering?: boolean | undefined;
  /** Coupons that stand beside the job: where a way out changes what their rows leave out, the changed job has them with it written in. */
  readonly coupons?: readonly CouponRow[] | undefined;
}

/** Settings that each kind of way out may change; none where it is work on the drawing, the board or at the bench. */
export const FIX_SETTINGS: Readonly<Record<Fix['do'], readonly SettingKey[]>> = {
  'use-bit': ['bit', 'rounds'],
  'use-vee': ['bit', 'rounds'],
  'use-tip': ['bit', 'rounds'],
  scale: ['width', 'height', 'scale', 'capHeight'],
  widen: [],
  'move-apart': [],
  track: ['tracking'],
  'space-lines': ['lineSpacing'],
  turn: ['turn', 'grain'],
  move: ['place'],
  'change-seal': ['seal', 'coats', 'sealHours', 'coupons'],
  'fewer-coats': ['coats', 'coupons'],
  wait: ['sealHours', 'coupons'],
  'pour-sooner': ['sealHours', 'coupons'],
  abrade: [],
  deepen: ['depth', 'rounds'],
  'cut-shallower': ['depth', 'rounds'],
  'level-less': ['level'],
  'level-by': ['levelBy'],
  flatten: [],
  'use-scale': ['weigh'],
  'zero-between': [],
  'mix-more': [],
  'read-label': [],
  'top-up': [],
  'change-temperature': ['shopTemp', 'coupons'],
  'less-pigment': ['pigmentPct'],
  'pour-proud': ['overpour'],
  // the plan is split that way already
  'more-cups': [],
  'pour-in-layers': [],
  'use-resin': ['resin', 'coupons'],
  clean: [],
  'test-coupon': [],
  // where to is for the maker to choose
  'move-clamp': [],
  'thicker-board': ['thickness', 'board'],
  'part-by-wall': [],
  'pour-in-rounds': ['rounds'],
  'join-ends': ['join'],
  'redraw-ends': [],
  'close-gap': [],
  'merge-shapes': [],
};

/**
 * A job with a way out applied, and with what else it takes; `null` where no setting of the job expresses it.
 *
 * Only the settings that {@link FIX_SETTINGS} names change; lengths keep the unit in which they were typed.
 *
 * @throws {JobError} when the job itself cannot be settled
 * @example
 * const [fix] = report.findings[0].fix.options; // { do: 'deepen', byMm: 0.8, clears: true }
 * applyFix({ depth: '2mm', wood: 'cherry' }, fix); // { depth: '2.8mm', wood: 'cherry' }
 */
export function applyFix(job: JobInput, fix: Fix | FixStep, context: FixContext = {}): JobInput | null {
  return withSteps(job, [fix, ...('also' in fix ? (fix.also ?? []) : [])], context);
}

/**
 * A job with changes made one after the other; `null` where no setting expresses one of them. A thicker board comes first: a deeper cut may
 * need it.
 *
 * @throws {JobError} when the job, or one on the way, cannot be settled
 */
export function withSteps(
  job: JobInput,
  steps: readonly FixStep[],
  context: FixContext = {},
): JobInput | null {
  const isBoard = (step: FixStep): boolean => step.do === 'thicker-board';
  return [...steps.filter(isBoard), ...steps.filter((step) => !isBoard(step))].reduce<JobInput | null>(
    (changed, step) => (changed === null ? null : withStep(changed, step, context)),
    job,
  );
}

function withStep(job: JobInput, step: FixStep, context: FixContext): JobInput | null {
  if (FIX_SETTINGS[step.do].length === 0) {
    return null;
  }
  const changed = changesOf(job, step, context);
  return changed === null ? null : { ...job, ...changed, ...couponsWith(job, step, context) };
}

/** The coupons with what they took from the job, where the step changes it; nothing where it does not. */
function couponsWith(
  job: JobInput,
  step: FixStep,
  { materials, shop, coupons }: FixContext,
): Pick<JobInput, 'coupons'> {
  const rows = job.coupons ?? coupons ?? [];
  if (rows.length === 0) {
    return {};
  }
  const settled = settleJob(job, { materials, shop, hasFont: job.singleLine !== true });
  const pinned = pinnedCoupons(rows, settled, [step]);
  return pinned.changed.length > 0 ? { coupons: pinned.rows } : {};
}

function changesOf(
  job: JobInput,
  fix: FixStep,
  { materials, shop, isLettering = false }: FixContext,
): JobInput | null {
  const settled = settleJob(job, { materials, shop, hasFont: job.singleLine !== true });
  const typed = typedJob(job);
  const like = (mm: number, text: string | undefined, rounding: 'up' | 'down'): string =>
    typedLength(mm, unitOf(text, settled.units), rounding);
  switch (fix.do) {
    case 'use-bit':
    case 'use-vee':
    case 'use-tip':
      return changedBits(job, settled, fix);
    case 'scale':
      return scaledSize(job, fix.factor, isLettering);
    case 'track':
    case 'space-lines':
      return spaced(fix, settled, typed.tracking);
    case 'turn':
      return turned(fix.deg, settled);
    case 'move':
      return moved([fix.rightMm, fix.downMm], settled);
    case 'change-seal':
    case 'fewer-coats':
    case 'wait':
    case 'pour-sooner':
      return resealed(fix, settled);
    case 'deepen':
      return fix.round === undefined
        ? { depth: like(settled.depthMm + fix.byMm, typed.depth, 'up') }
        : deeperRound(settled, fix.round, (mm) => like(mm + fix.byMm, typed.depth, 'up'));
    case 'cut-shallower':
      return fix.round === undefined
        ? { depth: like(fix.toMm, typed.depth, 'down') }
        : deeperRound(settled, fix.round, () => like(fix.toMm, typed.depth, 'down'));
    case 'level-less':
      return { level: like(settled.levelMm - fix.byMm, typed.level, 'down') };
    case 'level-by':
      return { levelBy: fix.method };
    case 'thicker-board':
      return thickerBoard(fix.thicknessMm, job, settled.units);
    case 'use-scale':
      return { weigh: fix.scale };
    case 'use-resin':
      return { resin: fix.resin };
    case 'change-temperature':
      return { shopTemp: `${fix.toC}C` };
    case 'less-pigment':
      return { pigmentPct: fix.toPct };
    case 'join-ends':
      return { join: like(fix.toleranceMm, typed.join, 'up') };
    case 'pour-in-rounds':
      return { rounds: typedRounds(fix.rounds.map((colours) => partedRound(colours, settled))) };
    case 'pour-proud':
      return { overpour: like(fix.overpourMm, typed.overpour, 'up') };
    default:
      return null;
  }
}

/** The third size of the board, or its thickness where it is given alone, in the unit that it has. */
function thickerBoard(mm: number, job: JobInput, unit: LengthUnit): JobInput | null {
  const { thickness, board } = typedJob(job);
  if (board === undefined) {
    return thickness === undefined ? null : { thickness: typedLength(mm, unitOf(thickness, unit), 'up') };
  }
  const [size = '', sides = '', own = ''] =
    /\s([\d./-]+x[\d./-]+x)[\d./-]+(mm|in|")(?=\s|$)/iu.exec(board) ?? [];
  const thick = typedLength(mm, unitOf(`1${own}`, unit), 'up').replace(/[a-z"]+$/iu, own);
  return size === '' ? null : { board: board.replace(size, ` ${sides}${thick}`) };
}

/** Another seal, other coats of it, or another wait after it. */
function resealed(
  fix: FixStep & { do: 'change-seal' | 'fewer-coats' | 'wait' | 'pour-sooner' },
  { sealHours }: Job,
): JobInput {
  switch (fix.do) {
    case 'change-seal':
      return { seal: fix.seal, coats: fix.coats, sealHours: `${fix.hours}h` };
    case 'fewer-coats':
      return { coats: fix.coats };
    case 'wait':
      return { sealHours: `${Number((sealHours + fix.hours).toFixed(2))}h` };
    case 'pour-sooner':
      return { sealHours: `${fix.hours}h` };
  }
}

/** Letters or lines farther apart than they are. */
function spaced(
  fix: FixStep & { do: 'track' | 'space-lines' },
  { lettering: { trackingMm = 0, lineSpacing = 1 }, units }: Job,
  tracking: string | undefined,
): JobInput {
  return fix.do === 'track'
    ? { tracking: typedLength(trackingMm + fix.byMm, unitOf(tracking, units), 'up') }
    : { lineSpacing: Number((lineSpacing * fix.factor).toFixed(4)) };
}

/** The size of a job times a factor, in the setting and the unit that it has. */
function scaledSize(job: JobInput, factor: number, isLettering: boolean): JobInput | null {
  const { width, height, scale, capHeight } = typedJob(job);
  const times = (text: string): string => typedLength(parseLengthMm(text) * factor, unitOf(text, 'mm'), 'up');
  if (width !== undefined) {
    return { width: times(width) };
  }
  if (isLettering) {
    return capHeight === undefined ? null : { capHeight: times(capHeight) };
  }
  return height === undefined
    ? { scale: Number(((scale ?? 1) * factor).toFixed(4)) }
    : { height: times(height) };
}

/** On a described board the artwork turns; without one the fibres turn the other way under it. */
function turned(deg: number, { board, turnDeg, grainDeg }: Job): JobInput {
  return board === null
    ? { grain: `${rounded((((grainDeg - deg) % 180) + 180) % 180)}deg` }
    : { turn: `${rounded(turnDeg + deg)}deg` };
}

/** The place on the board after a move of the artwork as drawn, which lies on the board turned counter-clockwise. */
function moved([right, down]: Point, { board, placeMm, turnDeg, units }: Job): JobInput | null {
  if (board === null) {
    return null;
  }
  const [x, y] = placeMm ?? [board.widthMm / 2, board.heightMm / 2];
  const [cos, sin] = [Math.cos(radians(turnDeg)), Math.sin(radians(turnDeg))];
  // y points down, so that counter-clockwise as seen is from +y towards +x
  const by: Point = [cos * right + sin * down, cos * down - sin * right];
  // rounded onwards, so that the move is enough
  const onward = (from: number, mm: number): string =>
    typedLength(from + mm, units, mm === 0 ? 'nearest' : mm > 0 ? 'up' : 'down');
  return { place: `${onward(x, by[0])},${onward(y, by[1])}` };
}

function rounded(deg: number): number {
  return Number(deg.toFixed(3));
}
