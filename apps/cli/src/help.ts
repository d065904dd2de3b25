import { wrap } from '@pourproof/wording';
import { FLAG_GROUPS, FLAGS } from './tables/flags.ts';

const COLUMN = 26;
/** Below this many columns what a flag does stands below it. */
const TABLE_COLUMNS = 60;

const COMMANDS: readonly (readonly [string, string])[] = [
  ['pourproof vet FILE … [flags]', 'vet SVG or DXF files; - stands for the standard input'],
  ['pourproof vet --text "…" --font FILE', 'vet lettering; \\n in the text breaks the line'],
  ['pourproof vet --texts FILE …', 'vet each line of a text file as lettering'],
  [
    'pourproof compare FILE … [flags]',
    'a row for every choice of values, as --depth "2mm or 3mm" --seal shop',
  ],
  ['pourproof remedy FILE [flags]', 'the few best ways to a board without stops'],
  ['pourproof explain CODE', 'what a finding or a notice means and what to do'],
  [
    'pourproof list WHAT',
    'woods, seals, resins, bits, priors, findings or notices; with --shop FILE.json what your shop has',
  ],
];

const EXAMPLES: readonly string[] = [
  'pourproof vet sign.svg --bit flat:1/8in --depth 1/8in --wood cherry',
  'pourproof vet --text "Rowan & Ash" --font serif.ttf --cap-height 18mm --report sheet.html',
  'pourproof vet crest.dxf --job board.json --grain 90deg --overlay crest-check.svg --json',
];

/**
 * The help text: what it does, the flags by group, the simple ones first, three examples.
 *
 * @param columns longest line, but for the examples, which can be pasted as they stand
 */
export function helpText(columns: number): string {
  const row = (left: string, right: string): string[] => line(left, right, COLUMN, columns);
  return [
    ...wrap(
      'pourproof vets artwork that will be carved in wood and filled with resin, before the first chip.',
      columns,
    ),
    '',
    ...COMMANDS.flatMap(([left, right]) => line(left, right, 38, columns)),
    '',
    ...FLAG_GROUPS.flatMap(({ id, help }) => [
      ...wrap(`${help}:`, columns),
      ...FLAGS.filter((flag) => flag.group === id).flatMap((flag) =>
        row(flag.takes === undefined ? `--${flag.name}` : `--${flag.name} ${flag.takes}`, flag.help),
      ),
      '',
    ]).slice(0, -1),
    ...row('--help, --version', ''),
    '',
    ...wrap(
      'Lengths are typed with their unit: 3.2mm, 3,2mm, 1/8in, 3/16", 1-1/2in. A bare number is refused. Where commas part a list, decimals have a point. Names may be typed in capitals, or as they are printed.',
      columns,
    ),
    ...wrap(
      'Exit codes: 0 clear, 1 findings at or above --fail-on (default stop), 2 input or flags that cannot be read, 70 a fault in pourproof itself.',
      columns,
    ),
    '',
    'Examples:',
    ...EXAMPLES.map((example) => `  ${example}`),
    '',
  ].join('\n');
}

function line(left: string, right: string, column: number, columns: number): string[] {
  const start = `  ${left.padEnd(column - 1)} `;
  return columns < TABLE_COLUMNS || [...start].length > column + 2
    ? [`  ${left}`, ...(right === '' ? [] : wrap(right, columns, '      '))]
    : wrap(right, columns, start);
}
