import { type GroupId, SETTING_GROUPS } from '@pourproof/job';
import { FLAGS } from './flags.ts';

const COLUMN = 26;

/** The help text: what it does, the flags by group, the simple ones first, three examples. */
export function helpText(): string {
  return [
    'pourproof vets artwork that will be carved in wood and filled with resin, before the first chip.',
    '',
    '  pourproof vet FILE … [flags]          vet SVG or DXF files',
    '  pourproof vet --text "…" --font FILE  vet lettering',
    '  pourproof explain CODE                what a finding means and what to do',
    '  pourproof list WHAT                   woods, seals, resins, bits, findings or notices',
    '',
    ...SETTING_GROUPS.flatMap(({ id, help }) => [`${help}:`, ...flagLines(id), '']).slice(0, -1),
    line('--help, --version', ''),
    '',
    'Lengths are typed with their unit: 3.2mm, 1/8in, 3/16", 1-1/2in. A bare number is refused.',
    'Exit codes: 0 clear, 1 findings at or above --fail-on (default stop), 2 input or flags that',
    'cannot be read, 70 a fault in pourproof itself.',
    '',
    'Examples:',
    '  pourproof vet sign.svg --bit flat:1/8in --depth 1/8in --wood cherry',
    '  pourproof vet --text "Rowan & Ash" --font serif.ttf --cap-height 18mm --report sheet.html',
    '  pourproof vet crest.dxf --job board.json --grain 90deg --overlay crest-check.svg --json',
    '',
  ].join('\n');
}

function flagLines(group: GroupId): string[] {
  return FLAGS.filter((flag) => flag.group === group).map((flag) =>
    line(flag.takes === undefined ? `--${flag.name}` : `--${flag.name} ${flag.takes}`, flag.help),
  );
}

function line(left: string, right: string): string {
  return `  ${left.padEnd(COLUMN)}${right}`.trimEnd();
}
