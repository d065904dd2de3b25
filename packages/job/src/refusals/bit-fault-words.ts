import { BIT_FORMS } from '../bits/bit-forms.ts';
import type { FaultWords, WordsFor } from './fault-words.ts';
import type { SettingName } from './setting-name.ts';

const bit = (name: SettingName, shown: string, what: string, remedy: string): FaultWords => ({
  what: `${name('bit')} "${shown}" ${what}`,
  remedy,
});

/** Words for bits. */
export const bitFaultWords: WordsFor<
  | 'bit-without-kind'
  | 'bit-kind'
  | 'bit-incomplete'
  | 'bit-parts'
  | 'bit-word'
  | 'bit-size'
  | 'bit-below-zero'
  | 'bit-angle'
  | 'bit-corner'
  | 'bit-tip'
  | 'bit-two-tips'
  | 'bit-tip-radius'
  | 'bit-taper'
  | 'bit-length'
  | 'profile-pair'
  | 'profile-points'
  | 'profile-falls'
  | 'profile-empty'
  | 'profile-needle'
> = {
  'bit-without-kind': ({ shown, meant }, _, name) =>
    bit(name, shown, 'does not say its kind.', `Did you mean ${meant.join(' or ')}?`),
  'bit-kind': ({ shown, kind, kinds }, _, name) =>
    bit(
      name,
      shown,
      `is of no known kind: "${kind}".`,
      `Write it like flat:1/8in; kinds: ${kinds.join(', ')}.`,
    ),
  'bit-incomplete': ({ shown }, _, name) =>
    bit(name, shown, 'is not complete.', `Write it like ${BIT_FORMS.join(', ')}.`),
  'bit-parts': ({ shown }, _, name) =>
    bit(name, shown, 'has more parts than a bit of its kind.', `Write it like ${BIT_FORMS.join(', ')}.`),
  'bit-word': ({ shown, part, word, example }, _, name) => ({
    what: `${name('bit')} "${shown}": "${part}" is not a ${word}.`,
    remedy: `Write it between quotes, with ${example} in it.`,
  }),
  'bit-size': ({ shown, value, least, most }, _, name) =>
    bit(name, shown, `has a size of ${value} mm.`, `Diameters lie between ${least} and ${most} mm.`),
  'bit-below-zero': ({ shown, value, word }, _, name) =>
    bit(name, shown, `has a ${word} of ${value} mm.`, 'It cannot be below 0.'),
  'bit-angle': ({ shown, value, limit }, _, name) =>
    bit(name, shown, `has an angle of ${value}°.`, `It must lie between 0 and ${limit}°.`),
  'bit-corner': ({ shown, value, limit }, _, name) =>
    bit(
      name,
      shown,
      `has a corner radius of ${value} mm.`,
      `It lies above 0 and is at most half its diameter, ${limit} mm.`,
    ),
  'bit-tip': ({ shown, value, limit }, _, name) =>
    bit(
      name,
      shown,
      `has a tip of ${value} mm, as wide as the bit or wider.`,
      `A tip is narrower than the bit's ${limit} mm.`,
    ),
  'bit-two-tips': ({ shown }, _, name) =>
    bit(name, shown, 'has a flat tip and a round one.', 'Give tipMm or tipRadiusMm, one of them.'),
  'bit-tip-radius': ({ shown, value, limit }, _, name) =>
    bit(
      name,
      shown,
      `has a tip radius of ${value} mm, too large for its diameter of ${limit} mm: no flank is left.`,
      'Write a ball bit.',
    ),
  'bit-taper': ({ shown, value, limit }, _, name) =>
    bit(
      name,
      shown,
      `has a tip of ${value} mm, wider than the bit itself, ${limit} mm.`,
      'The order is tip, angle of one side, diameter.',
    ),
  'bit-length': ({ shown, value }, _, name) =>
    bit(name, shown, `has a cutting edge of ${value} mm.`, 'It must be above 0.'),
  'profile-pair': ({ shown, pair }, _, name) => ({
    what: `${name('bit')} "${shown}": "${pair}" is not a diameter at a height.`,
    remedy:
      'Write it like 3mm@2.5mm: 3 mm across, 2.5 mm above the tip. A comma parts such pairs, decimals have a point.',
  }),
  'profile-points': ({ shown }, _, name) =>
    bit(
      name,
      shown,
      'needs two points or more, the first at height 0mm.',
      'Write it like profile:1mm@0mm,3mm@2mm.',
    ),
  'profile-falls': ({ shown, diameterMm, heightMm }, _, name) =>
    bit(
      name,
      shown,
      `falls back at ${diameterMm} mm @ ${heightMm} mm.`,
      'Heights and diameters must rise or stay from point to point.',
    ),
  'profile-empty': ({ shown }, _, name) =>
    bit(name, shown, 'has no body.', 'Its widest diameter and its height must be above 0.'),
  'profile-needle': ({ shown, heightMm }, _, name) =>
    bit(
      name,
      shown,
      `has no width up to ${heightMm} mm above its tip, so nothing cuts there.`,
      'Give it the diameter that it has there.',
    ),
};
