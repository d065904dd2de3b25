import type { TypedJob } from '@pourproof/job';
import type { JobPart } from './changed-job.ts';

/** Height of capitals that the form offers while nothing sizes the lettering (our choice). */
export const OFFERED_CAP_HEIGHT = '15mm';

/**
 * The form of lettering as changes to the job; empty fields reset values to their defaults.
 *
 * A line spacing that is not a number becomes NaN, which the job refuses.
 */
export function letteringPart(form: Pick<FormData, 'get'>, isSingleLine: boolean): JobPart {
  const typed = (name: string): string | undefined => {
    const text = String(form.get(name) ?? '').trim();
    return text === '' ? undefined : text;
  };
  const radius = typed('radius');
  const spacing = typed('lineSpacing');
  const axis = typed('axis')?.split(/[\s,;]+/u);
  return {
    capHeight: typed('capHeight'),
    singleLine: isSingleLine ? true : undefined,
    align: typed('align') as TypedJob['align'],
    tracking: typed('tracking'),
    lineSpacing: spacing === undefined ? undefined : Number(spacing.replace(',', '.')),
    arc: radius === undefined ? undefined : typed('side') === 'under' ? `${radius} under` : radius,
    axis: isSingleLine ? undefined : axis,
  };
}
