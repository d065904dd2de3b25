import { flagOf, SETTING_GROUPS, SETTING_KEYS, SETTINGS, type SettingKey, usualInput } from '@pourproof/job';
import { limits } from '@pourproof/materials';

const HEAD = `# Settings of a job

Written from the table of settings (\`packages/job/src/settings/\`) by a test; change the table, not this page.

A job is a JSON file or an object in code with any of these keys, or the flags of \`pourproof vet\`. Every value may be typed as a text with its
unit or given as a structure; both mean the same. What is neither given nor usual is taken as the column "if not given" says. A key that is not
in this list, a value of another type, an empty list and settings that contradict one another are refused by name.
`;

/** The page of settings as Markdown. */
export function renderSettingsPage(): string {
  const groups = SETTING_GROUPS.map(({ id, help }) => {
    const keys = SETTING_KEYS.filter((key) => SETTINGS[key].group === id);
    return [
      `## ${help}`,
      '',
      '| key | flag | sets | is written as | range | if not given | because | means something |',
      '| --- | --- | --- | --- | --- | --- | --- | --- |',
      ...keys.map(row),
      '',
    ].join('\n');
  });
  return `${HEAD}\n${groups.join('\n')}`;
}

function row(key: SettingKey): string {
  const { help, holds } = SETTINGS[key];
  const flag = flagOf(key);
  const cells = [
    `\`${key}\``,
    flag === null ? '' : `\`--${flag}\``,
    help,
    holds.form,
    holds.range,
    ifNotGiven(key),
    because(key),
    where(key),
  ];
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
}

function ifNotGiven(key: SettingKey): string {
  const { usual, otherwise = '' } = SETTINGS[key];
  if (usual === undefined) {
    return otherwise;
  }
  return 'from' in usual ? usual.from : shown(usualInput(key, {}));
}

function shown(value: unknown): string {
  return typeof value === 'string' ? value : JSON.stringify(value);
}

/** Origin of a usual value: its sources, or the limit that it is. */
function because(key: SettingKey): string {
  const { usual } = SETTINGS[key];
  if (usual === undefined || 'from' in usual) {
    return '';
  }
  return 'limit' in usual
    ? `${limits[usual.limit].because.join(', ')} (limit \`${usual.limit}\`)`
    : usual.because.join(', ');
}

function where(key: SettingKey): string {
  const { formats, isSealed, hasLines, board, pattern } = SETTINGS[key].only ?? {};
  const parts = [
    formats === undefined ? '' : `for ${formats.join(', ')}`,
    isSealed === true ? 'where the wood is sealed' : '',
    hasLines === true ? 'with several lines' : '',
    board === undefined ? '' : `${board} a board`,
    pattern === undefined ? '' : `of the pattern ${pattern}`,
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'always' : parts.join(', ');
}
