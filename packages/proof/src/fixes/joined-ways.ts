import type { Job } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import type { Fix, FixStep } from '../report/fix-schema.ts';
import { FIX_SETTINGS } from './apply-fix.ts';

/** A way out and what else it takes, one after the other. */
export function stepsOf(fix: Fix): readonly FixStep[] {
  return [untried(fix), ...(fix.also ?? [])];
}

/** A way out without what trials of it said and added. */
export function untried({ leaves: _, brings: __, couponRows: ___, also: ____, ...fix }: Fix): Fix {
  return fix;
}

/** What a step does, whatever its trial says. */
export function doneBy({ clears: _, ...step }: FixStep): string {
  return JSON.stringify(step);
}

/** The same steps in another order are the same way out. */
export function isFirst(fix: Fix, index: number, all: readonly Fix[]): boolean {
  const done = (each: Fix): string => stepsOf(each).map(doneBy).toSorted().join();
  return all.findIndex((each) => done(each) === done(fix)) === index;
}

/** Two ways out as one: the first made larger by another of its kind, or with the second after it; none where they undo each other. */
export function joined(fix: Fix, step: FixStep): readonly Fix[] {
  const larger = sumOf(fix, step);
  if (larger !== null) {
    return [{ ...fix, ...larger }];
  }
  const sums = (fix.also ?? []).map((each) => sumOf(each, step));
  if (sums.some((sum) => sum !== null)) {
    return [{ ...fix, also: (fix.also ?? []).map((each, k) => sums[k] ?? each) }];
  }
  const [before = [], seal] = [fix.also, step.do === 'change-seal' ? step : undefined];
  if (seal !== undefined && before.some((each) => each.do === 'change-seal')) {
    // a better seal instead of the first
    return [{ ...fix, also: before.map((each) => (each.do === 'change-seal' ? seal : each)) }];
  }
  const also = [...before, step];
  const taken = new Set([fix, ...(fix.also ?? [])].flatMap((each) => FIX_SETTINGS[each.do]));
  return FIX_SETTINGS[step.do].some((key) => taken.has(key)) ? [] : [{ ...fix, also }];
}

/** What two changes of one kind make together; `null` for kinds that do not add up. */
function sumOf(fix: FixStep, step: FixStep): FixStep | null {
  switch (step.do) {
    case 'move':
      return fix.do === 'move'
        ? {
            ...step,
            rightMm: hundredths(fix.rightMm + step.rightMm),
            downMm: hundredths(fix.downMm + step.downMm),
          }
        : null;
    case 'deepen':
      return fix.do === 'deepen' && fix.round === step.round
        ? { ...step, byMm: hundredths(fix.byMm + step.byMm) }
        : null;
    case 'level-less':
      return fix.do === 'level-less' ? { ...step, byMm: hundredths(fix.byMm + step.byMm) } : null;
    case 'track':
      return fix.do === 'track' ? { ...step, byMm: hundredths(fix.byMm + step.byMm) } : null;
    case 'space-lines':
      return fix.do === 'space-lines' ? { ...step, factor: hundredths(fix.factor * step.factor) } : null;
    case 'scale':
      return fix.do === 'scale' ? { ...step, factor: hundredths(fix.factor * step.factor) } : null;
    default:
      return null;
  }
}

/** Rounding of sums that is no step more, in hundredths. */
const ROUNDING = 1e-6;

/** Rounded away from 0 to a hundredth, as it is printed. */
function hundredths(value: number): number {
  return (Math.sign(value) * Math.ceil(Math.abs(value) * 100 - ROUNDING)) / 100;
}

/** A board that leaves enough wood below a deeper cut. */
export function thickerBoards(fix: Fix, job: Job): readonly FixStep[] {
  if (fix.do !== 'deepen') {
    return [];
  }
  const depthMm = job.depthMm + fix.byMm;
  const least = Math.max(depthMm + limits.floorUnderPocket.value, depthMm / (1 - limits.floorToBoard.value));
  return [{ do: 'thicker-board', thicknessMm: Math.ceil(least * 100) / 100, clears: true }];
}
