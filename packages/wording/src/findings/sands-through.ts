import { levelMethods } from '@pourproof/materials';
import type { FindingWords } from './finding-words.ts';
import { counted, widenStroke } from './parts-of-sentences.ts';
import { noLess } from './way-length.ts';

/** Words of levelling that takes the colour off. */
export const sandsThrough: FindingWords = {
  title: 'Levelling sands through the colour',
  headline: ({ severity, measured }, _reader, amounts) => {
    if (severity === 'stop') {
      return 'Levelling as planned leaves no colour, or too little to be seen, at the places marked.';
    }
    const [left, least] = [amounts.measured, amounts.limit];
    if (measured.quantity === 'height') {
      return `Colour is gone, or too narrow to be seen, after ${left}, and this way of levelling takes off up to ${least}.`;
    }
    return measured.quantity === 'width'
      ? `Levelling as planned leaves the narrowest stroke ${left} wide; below ${least} it fades.`
      : `Levelling as planned leaves ${left} of colour; below ${least} the floor shows through.`;
  },
  why: ({ measured }) =>
    measured.quantity === 'height'
      ? 'The plan itself leaves enough, but nobody stops to the tenth of a millimetre: a board that is a little out of flat, or one pass too many, takes the colour with it.'
      : measured.quantity === 'width'
        ? 'The walls slope, so levelling narrows the stroke as it lowers the face, and the seal that pools at the narrow bottom takes up depth.'
        : 'What is left is the depth of the cut, less the seal on the floor, the shrinkage on curing, the low spots of the board and what levelling takes off.',
  fixes: {
    deepen: ({ byMm }, { units }) => `Cut ${noLess(byMm, units)} deeper.`,
    'fewer-coats': ({ coats }) => `Apply ${counted(coats, 'coat')} of seal instead.`,
    widen: widenStroke,
    'level-by': ({ method }) => `Level with the ${levelMethods[method].name} instead: it takes off less.`,
    'level-less': ({ byMm }, { units }) => `Take ${noLess(byMm, units)} less off the face.`,
  },
  advice: ({ fix }) =>
    fix.options.length > 0
      ? []
      : [
          'No single change is enough here: widen the stroke or the dot, apply fewer coats of seal and take less off the face.',
        ],
  measuredHow: ({ measured }) => (measured.quantity === 'width' ? 'wide' : ''),
};
