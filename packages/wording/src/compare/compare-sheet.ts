import type { Rings } from '@pourproof/plane';
import { isolatedText } from '../bidi-parts.ts';
import { escapeXml } from '../sheet/escape-xml.ts';
import { htmlHead } from '../sheet/html-head.ts';
import { digits, ringsPath } from '../sheet/path-data.ts';
import { SHEET_STYLE } from '../sheet/sheet-style.ts';
import { compareCells } from './compare-cells.ts';
import { compareSummary, type SettingSummary } from './compare-summary.ts';
import type { Compared, ToldRow } from './compared.ts';
import { bestText, summaryColumns } from './summary-columns.ts';

/** Room of a small picture, mm on paper: three stand side by side on A4 and on Letter. */
const ROOM_MM: readonly [number, number] = [52, 30];

const STYLE = `
.rows { display: grid; grid-template-columns: repeat(3, minmax(0, 1fr)); gap: 5mm 6mm; margin-top: 5mm; }
.row { break-inside: avoid; border-top: 0.3mm solid var(--ink); padding-top: 1.5mm; font-size: 8.5pt; line-height: 1.3; }
.row h2 { margin: 0; border: 0; padding: 0; font-size: 9pt; }
.row .small { display: flex; align-items: center; justify-content: center; height: ${ROOM_MM[1] + 2}mm; }
.row p { margin: 0.6mm 0 0; overflow-wrap: anywhere; }
.row .grade.caution { border-style: double; border-width: 0.8mm; }
.row .codes { color: var(--soft); }
.small svg { max-width: 100%; height: auto; }
.small .art { fill: var(--paper); stroke: var(--ink); stroke-width: 0.5px; vector-effect: non-scaling-stroke; }
.small .cut { fill: #9aa3b0; }
.small .standing { fill: var(--ink); }
.values { margin-top: 5mm; border-collapse: collapse; font-size: 9pt; font-variant-numeric: tabular-nums; }
.values th, .values td { padding: 0.8mm 4mm 0.8mm 0; text-align: right; font-weight: inherit; }
.values th { border-bottom: 0.3mm solid var(--ink); }
.values th:first-child, .values td:first-child { text-align: left; }
.ahead { margin: 1mm 0 0; font-size: 9pt; }
@media (max-width: 640px) { .rows { grid-template-columns: 1fr; } }
@page { margin: 12mm; }
@media print { html { background: none; } .sheet { margin: 0; padding: 0; max-width: none; box-shadow: none; } .row, .key .art, .small .cut, .small .standing { -webkit-print-color-adjust: exact; print-color-adjust: exact; } }
`;

/**
 * A comparison as a page to print: a small picture for each row, all of one artwork to one scale, with its verdict and figures. One HTML
 * document without scripts; it reads in black and white.
 *
 * @param version of pourproof, for the foot of the page
 */
export function compareSheet(compared: Compared, version: string): string {
  const table = compareCells(compared);
  const title = `Compared: ${[...new Set(compared.rows.map(({ artwork }) => artwork))].join(', ')}`;
  const scales = scalesOf(compared.rows);
  const cards = compared.rows.map((row, k) => {
    const { given = [], found = null, remarks = [] } = table.rows[k] ?? {};
    const said = remarks.map(({ code, text }) => (code === '' ? text : code)).join(', ');
    const named = given.map((cell, n) => `${table.given[n]} ${cell}`);
    const figures = (found ?? []).slice(1).map((cell, n) => `${table.found[n + 1]?.name} ${cell}`);
    const grade = row.outcome.is === 'judged' ? row.outcome.figures.verdict : row.outcome.is;
    return [
      '<section class="row">',
      `<h2>${k + 1}. ${words(named.join(', ') || row.artwork)}</h2>`,
      `<div class="small">${picture(row, scales)}</div>`,
      `<p><span class="grade ${grade}">${grade}</span> ${words(figures.join('; '))}</p>`,
      said === '' ? '' : `<p class="codes">${words(said)}</p>`,
      '</section>',
    ].join('\n');
  });
  return [
    ...htmlHead(title, SHEET_STYLE + STYLE, version),
    '<body>',
    '<main class="sheet">',
    `<header><div><p class="kind">Comparison</p><h1>${words(title)}</h1></div><p class="lead">Grey is cut, black is drawn and stays wood, a thin line is the drawing. Pictures of one artwork are to one scale. Lost is stroke narrower than the smallest bit; travel is the median in the worst wood, and what it may come to.</p></header>`,
    ...compareSummary(compared).map((each) => summaryTable(each, compared)),
    `<div class="rows">${cards.join('\n')}</div>`,
    `<footer>Made by pourproof ${escapeXml(version)}. No ways out were sought: vet the one you choose. Data sheets, local codes and the machine’s manual come first.</footer>`,
    '</main>',
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

/** What each value of a setting comes to, as a table. */
function summaryTable(summary: SettingSummary, compared: Compared): string {
  const columns = summaryColumns(summary, compared);
  const head = columns.map(
    ({ title, unit }) => `<th>${words(unit === '' ? title : `${title}, ${unit}`)}</th>`,
  );
  const rows = summary.values.map(
    (_, k) => `<tr>${columns.map(({ cells }) => `<td>${words(cells[k] ?? '')}</td>`).join('')}</tr>`,
  );
  return `<table class="values"><thead><tr>${head.join('')}</tr></thead><tbody>${rows.join('')}</tbody></table><p class="ahead">${words(bestText(summary))}</p>`;
}

function words(text: string): string {
  return escapeXml(isolatedText(text));
}

/** The scale of the pictures of each artwork: that of its largest row. */
function scalesOf(rows: readonly ToldRow[]): ReadonlyMap<string, number> {
  const scales = new Map<string, number>();
  for (const { artwork, outcome } of rows) {
    if (outcome.is === 'judged' && outcome.picture !== undefined) {
      const [left, top, right, bottom] = outcome.picture.boundsMm;
      const own = Math.min(
        ROOM_MM[0] / Math.max(right - left, 1e-3),
        ROOM_MM[1] / Math.max(bottom - top, 1e-3),
      );
      scales.set(artwork, Math.min(scales.get(artwork) ?? Number.POSITIVE_INFINITY, own));
    }
  }
  return scales;
}

function picture({ artwork, outcome }: ToldRow, scales: ReadonlyMap<string, number>): string {
  if (outcome.is !== 'judged' || outcome.picture === undefined) {
    return '';
  }
  const { boundsMm, artwork: drawn, cut, standing } = outcome.picture;
  const [left, top, right, bottom] = boundsMm;
  const scale = scales.get(artwork) ?? 1;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${digits((right - left) * scale)}mm" height="${digits((bottom - top) * scale)}mm" viewBox="${[left, top, right - left, bottom - top].map(digits).join(' ')}" role="img" aria-label="What is cut and what stays wood">`,
    area(drawn, 'art'),
    area(cut, 'cut'),
    ...standing.map((rings) => area(rings, 'standing')),
    '</svg>',
  ].join('');
}

function area(rings: Rings, name: string): string {
  return rings.ringEnds.length === 0
    ? ''
    : `<path fill-rule="evenodd" class="${name}" d="${ringsPath(rings)}"/>`;
}
