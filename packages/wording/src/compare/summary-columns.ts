import { bareLength, bareMass, bareMinutes, NOTHING } from './compare-cells.ts';
import type { Merit, SettingSummary, ValueSummary } from './compare-summary.ts';
import type { Compared } from './compared.ts';
import type { TextColumn } from './text-table.ts';

type Mean = NonNullable<ValueSummary['mean']>;

/** What each value of a setting comes to, as columns: how many rows are clear and stopped, and the means of the others' figures. */
export function summaryColumns(
  { name, values }: SettingSummary,
  { keys, rows, unit }: Compared,
): readonly TextColumn[] {
  const artworks = new Set(rows.map(({ artwork }) => artwork)).size;
  const number = (title: string, of: (each: ValueSummary) => string, unitText = ''): TextColumn => ({
    title,
    unit: unitText,
    cells: values.map(of),
    isRight: true,
  });
  const mean = (title: string, of: (each: Mean) => string, unitText = ''): TextColumn =>
    number(title, (each) => (each.mean === null ? NOTHING : of(each.mean)), unitText);
  const isPriced = values.some((each) => each.mean !== null && each.mean.price !== null);
  return [
    { title: `by ${name}`, unit: '', cells: values.map(({ value }) => value), isRight: false },
    number('clear', ({ clear }) => `${clear}`),
    number('caution', ({ caution }) => `${caution}`),
    number('stop', ({ stop }) => `${stop}`),
    // what is refused whatever the value is tells nothing of it
    ...(new Set(values.map(({ refused }) => refused)).size > 1
      ? [number('refused', ({ refused }) => `${refused}`)]
      : []),
    // where several settings differ, one choice of the others may do
    ...(artworks > 1 && keys.length > 1
      ? [number('can be made', ({ artworksMade }) => `${artworksMade} of ${artworks}`)]
      : []),
    ...(values.some(({ toBuy }) => toBuy !== null) ? [number('to buy', toBuyText)] : []),
    mean('mean lost', ({ lostLengthMm }) => bareLength(lostLengthMm, unit), unit),
    mean('time', ({ minutes }) => bareMinutes(minutes), 'min'),
    mean('mix', ({ massG }) => bareMass(massG), 'g'),
    ...(isPriced ? [mean('price', ({ price }) => (price === null ? NOTHING : price.toFixed(2)))] : []),
  ];
}

function toBuyText({ toBuy }: ValueSummary): string {
  return toBuy === null ? NOTHING : toBuy === 0 ? 'at hand' : toBuy.toFixed(2);
}

const AHEAD: Readonly<Record<Merit, string>> = {
  stops: 'it is stopped least often',
  clear: 'as few stops as the next, and more often clear',
  lost: 'stops and clear rows as the next, and less stroke lost',
  time: 'stops, clear rows and lost stroke as the next, and quicker',
};

/** Which value does best, and why. */
export function bestText({ name, best }: SettingSummary): string {
  return best === null
    ? `No ${name} is ahead in stops, clear rows, lost stroke or time.`
    : `${best.value.replaceAll(' ', '\u00a0')} is ahead: ${AHEAD[best.by]}.`;
}
