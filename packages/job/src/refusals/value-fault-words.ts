import type { WordsFor } from './fault-words.ts';

/** Words for values that cannot be read or that make no sense. */
export const valueFaultWords: WordsFor<
  | 'not-a-measure'
  | 'out-of-range'
  | 'unknown-material'
  | 'not-a-time'
  | 'not-an-arc'
  | 'arc-without-radius'
  | 'arc-too-wide'
  | 'not-an-axis'
  | 'coupon-wood'
  | 'coupon-hours'
  | 'coupon-reading'
  | 'coupon-none'
  | 'coupon-zero'
  | 'coupon-length'
  | 'coupon-ends'
  | 'coupon-rule'
  | 'not-colour-pairs'
  | 'not-rounds'
  | 'round-twice'
  | 'colour-not-drawn'
  | 'materials-entry'
  | 'shop-entry'
> = {
  'not-a-measure': ({ reason }, key) => {
    // the reader of measures ends with what to type
    const [, what = reason, remedy = ''] = /^(.*?[.:]) ((?:Did|Type|Check|Units).*)$/su.exec(reason) ?? [];
    return { what: `${key}: ${what}`, remedy };
  },
  'out-of-range': ({ shown, range, why, example }, key) => ({
    what: `${key} is ${shown}; it must be ${range}.`,
    remedy: why === '' ? `Type it as in ${example}.` : why,
  }),
  'unknown-material': ({ id, known, near }, key) => ({
    what: `${key} "${id}" is unknown.`,
    remedy: `${near.length === 0 ? '' : `Did you mean ${near.join(' or ')}? `}Known: ${known.join(', ')}.`,
  }),
  'not-a-time': ({ shown }, key) => ({
    what: `${key} "${shown}" is not a day and time.`,
    remedy: 'Type it as in "2026-12-01 09:00".',
  }),
  'not-an-arc': ({ shown }, key) => ({
    what: `${key} "${shown}" is not a radius and a side.`,
    remedy: 'Write it like "80mm" or "80mm under".',
  }),
  'arc-without-radius': ({ shown }, key) => ({
    what: `${key} "${shown}" has no radius above 0.`,
    remedy: 'Write it like "80mm" or "80mm under".',
  }),
  'arc-too-wide': ({ shown, limitM }, key) => ({
    what: `${key} "${shown}" is wider than ${limitM} m.`,
    remedy: 'A line on such a circle is straight: leave the arc out.',
  }),
  'not-an-axis': ({ shown }, key) => ({
    what: `${key} "${shown}" is not a tag of four letters and a number.`,
    remedy: 'Write it like "wght=600"; the font’s maker says which axes it has.',
  }),
  'coupon-wood': (_, key) => ({
    what: `${key}: the board has several woods, so the row must name its own.`,
    remedy: 'Write it as in "wood": "maple".',
  }),
  'coupon-hours': ({ shown }, key) => ({
    what: `${key}: "${shown}" is no time that a seal was left.`,
    remedy: 'Check its unit.',
  }),
  'coupon-reading': ({ shown, classes }, key) => ({
    what: `${key}: "${shown}" is no reading.`,
    remedy: `Write a length such as "1.2mm", "none below 0.45mm", "between 1mm and 2mm", or one of ${classes.join(', ')}.`,
  }),
  'coupon-none': ({ shown }, key) => ({
    what: `${key}: "${shown}" does not say how short a streak would have been seen.`,
    remedy: 'Write it like "none below 0.45mm".',
  }),
  'coupon-zero': (_, key) => ({
    what: `${key}: a streak of 0 is no reading.`,
    remedy: 'Write the shortest that you would have seen, as "none below 0.45mm".',
  }),
  'coupon-length': ({ shown, maxMm }, key) => ({
    what: `${key}: "${shown}" is no length of a streak (above 0, up to ${maxMm} mm).`,
    remedy: 'Check its unit.',
  }),
  'coupon-ends': ({ from, to }, key) => ({
    what: `${key}: a streak cannot lie between ${from} and ${to}.`,
    remedy: 'Write the shorter end first, as in "between 1mm and 2mm".',
  }),
  'coupon-rule': ({ shown, maxMm }, key) => ({
    what: `${key} "${shown}" is nothing that a rule is read to (above 0, up to ${maxMm} mm).`,
    remedy: 'Write it like "1mm" or "1/16in".',
  }),
  'not-colour-pairs': ({ shown, known }, key) => ({
    what: `${key} "${shown}" does not pair colours of the drawing with resin colours.`,
    remedy: `Write it like "red=black, blue=#f5f0e1"; resin colours are ${known.join(', ')}, #rrggbb or a colour name of the web.`,
  }),
  'not-rounds': ({ shown }, key) => ({
    what: `${key} "${shown}" has a round without a colour or layer.`,
    remedy: 'Write it like "red, blue" or "red:3mm, blue+white:2mm with flat:1mm".',
  }),
  'round-twice': ({ name }, key) => ({
    what: `${key}: "${name}" stands in two rounds.`,
    remedy: 'Name each colour or layer once.',
  }),
  'colour-not-drawn': ({ name, known, near }, key) => ({
    what: `${key}: the drawing has no colour or layer "${name}".`,
    remedy: `${near === null ? '' : `Did you mean ${near}? `}It has ${known.join(', ')}.`,
  }),
  'materials-entry': ({ file, reason, remedy }) => ({ what: `${file}: ${reason}`, remedy }),
  'shop-entry': ({ file, reason, remedy }) => ({ what: `${file}: ${reason}`, remedy }),
};
