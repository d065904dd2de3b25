import { woods } from '@pourproof/materials';
import {
  type BadInput,
  expectOwnWords,
  expectRefusals,
  folderWithSquare,
  said,
  vet,
} from '../support/cli/bad-input.ts';

const folder = folderWithSquare();

const CASES: readonly BadInput[] = [
  {
    name: 'a bare number',
    argv: vet('square.svg', '--depth', '3'),
    err: said('--depth: "3" has no unit.', 'Did you mean 3mm or 3in?'),
  },
  {
    name: 'a bare fraction',
    argv: vet('square.svg', '--width', '3/4'),
    err: said('--width: "3/4" has no unit.', 'Did you mean 3/4mm or 3/4in?'),
  },
  {
    name: 'a bare angle',
    argv: vet('square.svg', '--grain', '45'),
    err: said('--grain: "45" has no unit.', 'Did you mean 45deg or 45rad?'),
  },
  {
    name: 'a depth that is no number',
    argv: vet('square.svg', '--depth', 'NaN'),
    err: said('--depth: "NaN" is not a length.', 'Type a number with its unit, such as 3.2mm or 1/8in.'),
  },
  {
    name: 'a depth divided by zero',
    argv: vet('square.svg', '--depth', '1/0in'),
    err: said('--depth: "1/0in" is not a length: the number is not finite.', 'Check the fraction.'),
  },
  {
    name: 'a depth of nothing',
    argv: vet('square.svg', '--depth', '0mm'),
    err: said('--depth is 0 mm; it must be above 0 and at most 100 mm.', 'Type it as in 1/8in or 3mm.'),
  },
  {
    name: 'a depth below nothing',
    argv: vet('square.svg', '--depth', '-3mm'),
    err: said('--depth is -3 mm; it must be above 0 and at most 100 mm.', 'Type it as in 1/8in or 3mm.'),
  },
  {
    name: 'a depth beyond any board',
    argv: vet('square.svg', '--depth', '3m'),
    err: said(
      '--depth is 3000 mm; it must be above 0 and at most 100 mm.',
      'No board here is deeper: check the unit.',
    ),
  },
  {
    name: 'resin colours without the colours that they are of',
    argv: vet('square.svg', '--colour-of', 'black'),
    err: said(
      '--colour-of "black" does not pair colours of the drawing with resin colours.',
      'Write it like "red=black, blue=#f5f0e1"; resin colours are black, blue, white, red, #rrggbb or a colour name of the web.',
    ),
  },
  {
    name: 'a resin of a colour that is not drawn',
    argv: vet('square.svg', '--colour-of', 'gren=black'),
    err: said('--colour-of: the drawing has no colour or layer "gren".', 'It has black (#000000).'),
  },
  {
    name: 'a round of nothing',
    argv: vet('square.svg', '--rounds', 'black,,red'),
    err: said(
      '--rounds "black,,red" has a round without a colour or layer.',
      'Write it like "red, blue" or "red:3mm, blue+white:2mm with flat:1mm".',
    ),
  },
  {
    name: 'a colour in two rounds',
    argv: vet('square.svg', '--rounds', 'black, black:2mm'),
    err: said('--rounds: "black" stands in two rounds.', 'Name each colour or layer once.'),
  },
  {
    name: 'a round without depth',
    argv: vet('square.svg', '--rounds', 'black:0mm'),
    err: said('--rounds is 0 mm; it must be above 0 and at most 100 mm.', 'Type it as in 1/8in or 3mm.'),
  },
  {
    name: 'a width of nothing',
    argv: vet('square.svg', '--width', '0mm'),
    err: said('--width is 0 mm; it must be above 0 and at most 10000 mm.', 'Type it as in 120mm or 4-3/4in.'),
  },
  {
    name: 'a height below nothing',
    argv: vet('square.svg', '--height', '-2in'),
    err: said(
      '--height is -50.8 mm; it must be above 0 and at most 10000 mm.',
      'Type it as in 120mm or 4-3/4in.',
    ),
  },
  {
    name: 'a width beyond any board',
    argv: vet('square.svg', '--width', '1e30mm'),
    err: said(
      '--width is 1e+30 mm; it must be above 0 and at most 10000 mm.',
      'No board is longer: check the unit.',
    ),
  },
  {
    name: 'two sizes that may disagree',
    argv: vet('square.svg', '--width', '20mm', '--height', '40mm'),
    err: said(
      '--width and --height are given together, and they may disagree.',
      'Check them, and give one of --width, --height and --scale: the artwork keeps its proportions.',
    ),
  },
  {
    name: 'a scale with a unit',
    argv: vet('square.svg', '--scale', '2mm'),
    err: said('--scale "2mm" is not a number.', 'It is a factor without a unit, such as 1.25.'),
  },
  {
    name: 'a scale that is no number',
    argv: vet('square.svg', '--scale', 'NaN'),
    err: said('--scale "NaN" is not a number.', 'It is a factor without a unit, such as 1.25.'),
  },
  {
    name: 'a scale of nothing',
    argv: vet('square.svg', '--scale', '0'),
    err: said('--scale is 0; it must be between 0.0001 and 10000.', 'Type it as in 1.25.'),
  },
  {
    name: 'half a coat',
    argv: vet('square.svg', '--coats', '1.5'),
    err: said('--coats is 1.5; it must be a whole number from 0 to 10.', 'Type it as in 2.'),
  },
  {
    name: 'coats in words',
    argv: vet('square.svg', '--coats', 'two'),
    err: said('--coats "two" is not a number.', 'It is a whole number, such as 2.'),
  },
  {
    name: 'an unknown bit',
    argv: vet('square.svg', '--bit', 'drill:3mm'),
    err: said(
      '--bit "drill:3mm" is of no known kind: "drill".',
      'Write it like flat:1/8in; kinds: flat, ball, bull, vee, taper, profile.',
    ),
  },
  {
    name: 'a bit of no size',
    argv: vet('square.svg', '--bit', 'flat:0mm'),
    err: said('--bit "flat:0mm" has a size of 0 mm.', 'Diameters lie between 0.05 and 300 mm.'),
  },
  {
    name: 'a bit finer than any',
    argv: vet('square.svg', '--bit', 'flat:1e-9mm'),
    err: said('--bit "flat:1e-9mm" has a size of 1e-9 mm.', 'Diameters lie between 0.05 and 300 mm.'),
  },
  {
    name: 'a bit without its unit',
    argv: vet('square.svg', '--bit', 'flat:1/8'),
    err: said('--bit: "1/8" has no unit.', 'Did you mean 1/8mm or 1/8in?'),
  },
  {
    name: 'a V bit that is more than flat',
    argv: vet('square.svg', '--bit', 'vee:200deg:1/2in'),
    err: said('--bit "vee:200deg:1/2in" has an angle of 200°.', 'It must lie between 0 and 180°.'),
  },
  {
    name: 'an unknown seal',
    argv: vet('square.svg', '--seal', 'wax'),
    err: said('--seal "wax" is unknown.', 'Known: none, sanding-sealer, shellac, epoxy.'),
  },
  {
    name: 'a word within the names of several woods',
    argv: vet('square.svg', '--wood', 'Oak'),
    err: said(
      '--wood "Oak" is unknown.',
      `Did you mean white-oak or red-oak? Known: ${Object.keys(woods).join(', ')}.`,
    ),
  },
  {
    name: 'a misspelt wood of a glue-up',
    argv: vet('square.svg', '--board', 'plain 300x180x20mm mapel'),
    err: said('--board "mapel" is unknown.', `Did you mean maple? Known: ${Object.keys(woods).join(', ')}.`),
  },
  {
    name: 'a comma that may part thousands',
    argv: vet('square.svg', '--width', '1,250mm'),
    err: said('--width: "1,250mm" can be read in two ways.', 'Did you mean 1.250mm or 1250mm?'),
  },
  {
    name: 'decimal commas where a comma parts two lengths',
    argv: vet('square.svg', '--board', 'plain 300x180x20mm maple', '--place', '12,5mm,30mm'),
    err: said(
      '--place: "12,5mm,30mm" is not a place.',
      'Type two lengths, each with its unit, such as 20mm,30.5mm: a comma parts them, decimals have a point.',
    ),
  },
  {
    name: 'percent of what is a count',
    argv: vet('square.svg', '--coats', '2%'),
    err: said('--coats "2%" is not a number.', 'It is a whole number, such as 2.'),
  },
  {
    name: 'a misspelt colour',
    argv: vet('square.svg', '--colour', 'blak'),
    err: said('--colour "blak" is unknown.', 'Did you mean black? Type black, blue, white or red.'),
  },
];

const OWN_WORDS: readonly (readonly [string, readonly string[]])[] = [
  ['an unknown wood', vet('square.svg', '--wood', 'mapel')],
  ['an unknown colour', vet('square.svg', '--colour', 'plaid')],
  ['an unknown way of levelling', vet('square.svg', '--level-by', 'teeth')],
];

expectRefusals('values', CASES, folder);
expectOwnWords(OWN_WORDS, folder);
