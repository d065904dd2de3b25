import { formatLength } from '@pourproof/plane';
import type { Finding, Fix } from '@pourproof/proof';
import type { FixWords, Reader } from './finding-words.ts';
import { noLess } from './way-length.ts';

/** A count with its noun: `1 coat`, `3 coats`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** The places of a finding as the subject of a sentence: `One stroke is`, `12 strokes are`. */
export function subject(
  { where }: Finding,
  one: string,
  many: string,
  verbs: readonly [string, string] = ['is', 'are'],
): string {
  return where.length === 1 ? `One ${one} ${verbs[0]}` : `${where.length} ${many} ${verbs[1]}`;
}

/** What a finding about colour travel rests on. */
export function basisText({ basis }: Finding): string {
  return basis === 'calibrated' ? 'calibrated with your coupons' : 'prior, no coupon yet';
}

/** A seal coat: `2 coats of clear epoxy`. */
function sealText({ seal, coats }: Extract<Fix, { do: 'change-seal' }>, { materials }: Reader): string {
  return `${counted(coats, 'coat')} of ${materials.sealers[seal]?.name ?? seal}`;
}

/** The ways out of a better seal, or of the same one left longer. */
export const sealBetter: Required<Pick<FixWords, 'change-seal' | 'wait'>> = {
  'change-seal': (fix, reader) =>
    `Seal with ${sealText(fix, reader)}, and leave it ${hoursText(fix.hours)} before the colour${fix.bondsUnsanded ? ', which still bonds to it unsanded then' : ''}.`,
  wait: ({ hours }) => `Leave the seal ${hoursText(hours)} longer before the colour.`,
};

/** The way out of cutting test slots, where no number is sure enough to be relied on. */
export const couponBefore: Required<Pick<FixWords, 'test-coupon'>> = {
  'test-coupon': ({ slots, lengthMm, depthMm, tellsApart }, { units }) =>
    `Cut a coupon first, for the limit lies within the doubt of this number: ${counted(slots, 'slot')} ${formatLength(lengthMm, units)} long and ${formatLength(depthMm, units)} deep across the grain of the same board, sealed and filled like the job.${tellsApart === undefined ? '' : ` Half of them ${formatLength(tellsApart.nearEndMm, units)} from the board’s end, half ${formatLength(tellsApart.farMm, units)} or more from both: where streaks run much farther towards the near end, trapped air stops them and not the resin’s thickness, so a thicker resin would not help.`}`,
};

/** The ways out of setting letters, lines or parts of a drawing farther apart. */
export const spaceApart: Required<Pick<FixWords, 'track' | 'space-lines' | 'move-apart'>> = {
  track: ({ byMm }, { units }) => `Set the letters ${noLess(byMm, units)} farther apart.`,
  'space-lines': ({ factor }) => `Set the lines ${factor} times as far apart.`,
  'move-apart': ({ byMm }, { units }) =>
    `Move what lies on one side of it ${noLess(byMm, units)} farther away, and all beyond with it.`,
};

/** The way out of widening a stroke or a dot. */
export function widenStroke({ what, byMm }: Extract<Fix, { do: 'widen' }>, { units }: Reader): string {
  return `Widen the ${what === 'dot' ? 'dot' : 'stroke'} by ${noLess(byMm, units)}.`;
}

/** The way out of scaling the artwork. */
export function scaleArtwork({ factor }: Extract<Fix, { do: 'scale' }>): string {
  return `Scale the artwork by ${factor.toFixed(2)}.`;
}

/** Hours with at most one decimal. */
export function hoursText(hours: number): string {
  return `${Number(hours.toFixed(1))} h`;
}
