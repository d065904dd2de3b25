import { type Compared, type ToldRow, valueText } from './compared.ts';

const FIGURES = [
  'verdict',
  'stops',
  'cautions',
  'gravest',
  'lostLengthMm',
  'levelledAwayMm',
  'leftStandingMm2',
  'narrowestMm',
  'minutes',
  'changeMinutes',
  'massG',
  'price',
  'travelMedianMm',
  'travelLowMm',
  'travelHighMm',
  'refused',
] as const;

/** A comparison as comma-separated values (RFC 4180), one line a row, numbers as the report has them. */
export function compareCsv(compared: Compared): string {
  const head = ['artwork', ...compared.keys, ...FIGURES];
  const lines = compared.rows.map((row) => [
    row.artwork,
    ...compared.keys.map((key) => (row.values[key] === undefined ? '' : valueText(key, row.values))),
    ...figureCells(row),
  ]);
  return `${[head, ...lines].map((cells) => cells.map(cell).join(',')).join('\r\n')}\r\n`;
}

function figureCells({ outcome }: ToldRow): readonly (string | number)[] {
  if (outcome.is !== 'judged') {
    const why = outcome.is === 'refused' ? outcome.refusal.what : `fault in pourproof: ${outcome.what}`;
    return FIGURES.map((name) => (name === 'refused' ? why : ''));
  }
  const { verdict, findings, travelMm, ...figures } = outcome.figures;
  const ofGrade = (grade: string): number => findings.filter(({ severity }) => severity === grade).length;
  const cells: Readonly<Record<(typeof FIGURES)[number], string | number | null>> = {
    ...figures,
    verdict,
    stops: ofGrade('stop'),
    cautions: ofGrade('caution'),
    gravest: findings[0]?.code ?? '',
    travelMedianMm: travelMm?.median ?? null,
    travelLowMm: travelMm?.low ?? null,
    travelHighMm: travelMm?.high ?? null,
    refused: '',
  };
  return FIGURES.map((name) => cells[name] ?? '');
}

/** A text that starts like a formula is told as a text to programs that would run it. */
function cell(value: string | number): string {
  const text = typeof value === 'string' && /^[=+@\t\r-]/u.test(value) ? `'${value}` : String(value);
  return /[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
