import { bitName, bitSize, type Job } from '@pourproof/job';
import { keepUnits, type LengthUnit } from '@pourproof/plane';
import type { Report } from '@pourproof/proof';
import { CAUTION_WORDS } from '../advice/caution-words.ts';
import { formatMass } from '../facts/amounts.ts';
import { colourName } from '../facts/colour-name.ts';
import { formatMinutes } from '../facts/cutter-facts.ts';
import { jobFacts } from '../facts/job-facts.ts';
import { workFacts } from '../facts/work-facts.ts';
import type { FindingEntry } from '../findings/finding-entries.ts';
import { counted } from '../findings/parts-of-sentences.ts';
import type { Vetted } from '../vetted.ts';
import { escapeXml } from './escape-xml.ts';
import { placeAt } from './place-at.ts';

/** Places to look at before cutting: the largest of each finding, and no more than have room. */
const PLACES_OF_ONE = 2;
const MAX_PLACES = 8;
/** More steps, as of several rounds, have no room for what to mind at each. */
const MAX_STEPS_IN_TABLE = 10;

/**
 * What is needed at the bench, on one page to lay beside the machine: the setup, the bits in their order, the mix
 * in grams, the steps with their times, the places to watch, the cautions, and lines to sign.
 */
export function benchPage({ report, job }: Vetted, entries: readonly FindingEntry[]): string {
  return [
    '<section class="bench"><h2>At the bench</h2>',
    '<div class="columns"><div>',
    `<h3>Setup</h3>${table(jobFacts(job).map(({ name, value }) => [name, value]))}`,
    '</div><div>',
    `<h3>Bits, in this order</h3>${table(bitRows(report, job))}`,
    '</div></div>',
    `<h3>Mix: what the scale shows after each part, the cup left on it</h3>${mixTable(report)}`,
    placesList(entries, report, job.units),
    report.pour.schedule.length === 0 ? '' : `<h3>Steps</h3>${steps(report)}`,
    `<h3>Take care</h3><ul class="care">${Object.values(CAUTION_WORDS)
      .map((text) => `<li>${words(text)}</li>`)
      .join('')}</ul>`,
    '<div class="signing"><span>Board</span><span>Date</span><span>Checked by</span></div>',
    '</section>',
  ].join('');
}

function bitRows({ cut, rounds = [] }: Report, job: Job): readonly (readonly [string, string])[] {
  if (rounds.length > 0) {
    return rounds.map(({ round, cutters, depthMm, minutes }) => [
      `Round ${round}: ${cutters.map((cutter) => bitName(cutter, job.units)).join(', then ')}`,
      `${bitSize(depthMm, job.units)} deep, ${formatMinutes(minutes)}`,
    ]);
  }
  const rows = cut.perCutter.map(({ cutter, depthMm, passes, minutes }, k): readonly [string, string] => [
    `${k + 1}. ${bitName(cutter, job.units)}`,
    passes === 0
      ? 'has nothing to do'
      : `${bitSize(depthMm, job.units)} deep, ${counted(passes, 'pass', 'passes')}, ${formatMinutes(minutes)}`,
  ]);
  return cut.areaMm2 === 0 || rows.length < 2
    ? rows
    : [
        ...rows,
        [
          'All bits',
          `${formatMinutes(cut.time.minutes)} and ${cut.time.changeMinutes === undefined ? 'the changes' : `${formatMinutes(cut.time.changeMinutes)} of changes`}`,
        ],
      ];
}

/** A line for each colour. */
function mixTable({ pour, cut }: Report): string {
  if (cut.areaMm2 === 0) {
    return '<p>None: nothing will be cut.</p>';
  }
  const mass = (grams: number): string => formatMass(grams, pour.stepG);
  const names = pour.colours.map(({ name }) => name);
  const rows = pour.colours.map(({ name, cups, layers, pigmentG }) => {
    const [a = 0, ab = 0, all = 0] = cups.runningG;
    const cells = [
      mass(a),
      mass(ab),
      pigmentG > 0 ? mass(all) : '–',
      `${cups.count}`,
      `${layers.count}`,
      `${Math.round(cups.workingMinutes)} min`,
    ];
    const label = names.length === 1 ? 'Each cup' : colourName(name, names);
    return `<tr><th scope="row">${words(label)}</th>${cells.map((cell) => `<td class="amount">${words(cell)}</td>`).join('')}</tr>`;
  });
  const heads = ['', 'A', 'then B', 'then pigment', 'Cups', 'Layers', 'Workable about'];
  const boards = pour.boards === 1 ? '' : `<p class="places">For ${pour.boards} boards together.</p>`;
  return `<table class="mix"><thead><tr>${heads.map((head) => `<th>${head}</th>`).join('')}</tr></thead><tbody>${rows.join('')}</tbody></table>${boards}`;
}

function placesList(entries: readonly FindingEntry[], report: Report, unit: LengthUnit): string {
  const places = entries
    .filter(({ seenTo }) => seenTo !== true)
    .flatMap((entry) => entry.places.slice(0, PLACES_OF_ONE))
    .slice(0, MAX_PLACES);
  if (places.length === 0) {
    return '';
  }
  const items = places.map(
    (place) => `<li><b>${place.label}</b> ${words(`${place.text} at ${placeAt(place, report, unit)}`)}</li>`,
  );
  return `<h3>Places to watch, from the left and top edges of the artwork</h3><ul class="watch">${items.join('')}</ul>`;
}

/** The steps with boxes to tick; more of them than a table has room for stand in two columns, in brief. */
function steps(report: Report): string {
  if (report.pour.schedule.length > MAX_STEPS_IN_TABLE) {
    const items = workFacts(report, true).map(
      ({ name, value, remark }) =>
        `<li><span class="tick"></span> ${words(name)} <b>${words(value)}</b>${remark === '' ? '' : `, ${words(remark.replace(/\.$/u, ''))}`}</li>`,
    );
    return `<ul class="watch brief">${items.join('')}</ul>`;
  }
  const rows = workFacts(report).map(
    ({ name, value, remark }) =>
      `<tr><td><span class="tick"></span></td><th scope="row">${words(name)}</th><td class="amount">${words(value)}</td><td class="remark">${words(remark)}</td></tr>`,
  );
  return `<table class="steps"><tbody>${rows.join('')}</tbody></table>`;
}

function table(rows: readonly (readonly [string, string])[]): string {
  const lines = rows.map(
    ([name, value]) => `<tr><th scope="row">${words(name)}</th><td class="amount">${words(value)}</td></tr>`,
  );
  return `<table class="facts"><tbody>${lines.join('')}</tbody></table>`;
}

/** Words made safe for HTML, each number on one line with its unit. */
function words(text: string): string {
  return escapeXml(keepUnits(text));
}
