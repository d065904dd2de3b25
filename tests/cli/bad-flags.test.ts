import { type BadInput, expectRefusals, folderWithSquare, said, vet } from '../support/cli/bad-input.ts';

const folder = folderWithSquare();
const ALL_FLAGS = 'All flags: pourproof --help.';

const CASES: readonly BadInput[] = [
  {
    name: 'a flag with a slip',
    argv: vet('square.svg', '--dept', '3mm'),
    err: said('there is no flag --dept.', `Did you mean --depth? ${ALL_FLAGS}`),
  },
  {
    name: 'a flag of another world',
    argv: vet('square.svg', '--frobnicate'),
    err: said('there is no flag --frobnicate.', ALL_FLAGS),
  },
  {
    name: 'a short flag',
    argv: vet('square.svg', '-d', '3mm'),
    err: said('there is no flag -d.', ALL_FLAGS),
  },
  {
    name: 'a flag that every object has',
    argv: vet('square.svg', '--__proto__', 'x'),
    err: said('there is no flag --__proto__.', ALL_FLAGS),
  },
  {
    name: 'a flag given twice',
    argv: vet('square.svg', '--wood', 'maple', '--wood', 'cherry'),
    err: said('--wood is given twice.', 'Give it once.'),
  },
  {
    name: 'a flag without its value at the end',
    argv: vet('square.svg', '--depth'),
    err: said('--depth needs a value.', 'Write --depth LENGTH: Depth of the pocket, such as 1/8in or 3mm.'),
  },
  {
    name: 'a flag without its value before another',
    argv: vet('square.svg', '--wood', '--json'),
    err: said('--wood needs a value.', 'Write --wood NAME: Wood of the board (pourproof list woods).'),
  },
  {
    name: 'a switch with a value',
    argv: vet('square.svg', '--json=yes'),
    err: said('--json takes no value, but got "yes".', 'Write --json alone.'),
  },
  {
    name: 'a unit of answer that is none',
    argv: vet('square.svg', '--units', 'cm'),
    err: said('--units "cm" is unknown.', 'Did you mean mm? Type mm or in.'),
  },
  {
    name: 'a level that is none',
    argv: vet('square.svg', '--fail-on', 'warning'),
    err: said('--fail-on "warning" is unknown.', 'Type stop, caution, note or never.'),
  },
  {
    name: 'no file at all',
    argv: vet('--bit', 'flat:1/8in'),
    err: said(
      'there is nothing to vet.',
      'Name an SVG or DXF file, as in: pourproof vet sign.svg --bit flat:1/8in',
    ),
  },
  {
    name: 'an unknown command',
    argv: ['vett', 'square.svg'],
    err: said(
      'there is no command "vett".',
      'Did you mean vet? Commands: vet, compare, remedy, explain, list. See pourproof --help.',
    ),
  },
  {
    name: 'a file in the place of a command',
    argv: ['square.svg'],
    err: said('there is no command "square.svg".', 'Did you mean: pourproof vet square.svg'),
  },
  {
    name: 'an unknown list',
    argv: ['list', 'wood'],
    err: said(
      'there is no list "wood".',
      'Did you mean woods? Lists: woods, seals, resins, bits, priors, findings, notices.',
    ),
  },
  {
    name: 'a list without a name',
    argv: ['list'],
    err: said('list needs a name.', 'Lists: woods, seals, resins, bits, priors, findings, notices.'),
  },
  {
    name: 'an unknown finding',
    argv: ['explain', 'bit-can-not-enter'],
    err: said(
      'there is no finding or notice "bit-can-not-enter".',
      'Did you mean bit-cannot-enter? All codes: pourproof list findings, pourproof list notices.',
    ),
  },
];

expectRefusals('flags', CASES, folder);
