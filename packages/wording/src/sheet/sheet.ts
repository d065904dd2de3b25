import { bitSize, SETTINGS } from '@pourproof/job';
import { type CautionId, cautions, sources } from '@pourproof/materials';
import { formatLength, keepUnits, type LengthUnit } from '@pourproof/plane';
import { passWidthMm, type Report } from '@pourproof/proof';
import { CAUTION_WORDS } from '../advice/caution-words.ts';
import { bidiParts } from '../bidi-parts.ts';
import { cutSentences } from '../facts/cut-sentences.ts';
import type { Fact } from '../facts/fact.ts';
import { measureFacts } from '../facts/measure-facts.ts';
import { notAsDrawn, noticesSeenTo, otherNotices } from '../facts/reader-notices.ts';
import { resinFacts } from '../facts/resin-facts.ts';
import { roundFacts } from '../facts/round-facts.ts';
import { shopValues, type UsualValue, usualValues } from '../facts/usual-values.ts';
import { VERDICT_WORDS } from '../facts/verdict-words.ts';
import { type FindingEntry, findingEntries, type MarkedPlace } from '../findings/finding-entries.ts';
import { seenToText } from '../findings/seen-to-text.ts';
import { shortBasis } from '../text/short-basis.ts';
import type { Vetted } from '../vetted.ts';
import { benchPage } from './bench-page.ts';
import { escapeXml } from './escape-xml.ts';
import { htmlHead } from './html-head.ts';
import { keySample } from './key-sample.ts';
import { levellingFigure } from './levelling-figure.ts';
import { obstacleKey } from './obstacle-shapes.ts';
import { digits } from './path-data.ts';
import { sheetPicture } from './sheet-picture.ts';
import { SHEET_STYLE } from './sheet-style.ts';

/** Enlargements beside one finding. */
const MAX_LOUPES = 2;
/** Places listed in words for one finding. */
const MAX_PLACES = 4;

/**
 * A page to print for every artwork, as one HTML document that needs nothing else: no script, no network.
 *
 * Reads well in black and white, on A4 and on Letter, and on a phone.
 *
 * @param version of pourproof, for the foot of the page
 * @example
 * const html = sheetHtml([await vet(source, job)], '0.1.0');
 */
export function sheetHtml(vetted: readonly Vetted[], version: string): string {
  const title = vetted.map(({ report }) => `${report.artwork.file}: ${report.verdict}`).join(', ');
  return [
    ...htmlHead(title, SHEET_STYLE, version),
    '<body>',
    ...vetted.map((each, k) => page(each, `p${k + 1}`, version)),
    '</body>',
    '</html>',
    '',
  ].join('\n');
}

function page(vetted: Vetted, id: string, version: string): string {
  const { report, job } = vetted;
  const unit = job.units;
  const entries = findingEntries(report, job);
  const picture = sheetPicture(vetted, entries, id);
  return [
    '<main class="sheet">',
    header(report, unit),
    notDrawn(report),
    `<figure>${picture.svg}${key(report, vetted, id)}<figcaption>${captionText(picture, vetted)}</figcaption></figure>`,
    entries.length === 0 ? '' : `<h2>Findings</h2>\n${overview(entries)}`,
    benchPage(vetted, entries),
    levellingFigure(vetted),
    ...entries.filter(({ seenTo }) => seenTo !== true).map((entry) => findingBlock(entry, vetted, id)),
    seenToList(entries, report),
    `<h2>Measures</h2>${factTable(measureFacts(report, unit))}`,
    report.rounds === undefined ? '' : `<h2>Rounds</h2>${factTable(roundFacts(report, unit))}`,
    `<h2>Resin</h2>${factTable(resinFacts(report, unit))}`,
    notices(report),
    job.shop === null ? '' : valueList(`Not given, so taken from ${job.shop.name}`, shopValues(job)),
    valueList('Not given, so taken as usual', usualValues(job)),
    sourcesOfCare(),
    `<footer>Made by pourproof ${escapeXml(version)}. It holds for the job above only; data sheets, local codes and the machine’s manual come first.</footer>`,
    '</main>',
  ].join('\n');
}

function header(report: Report, unit: LengthUnit): string {
  return [
    '<header><div>',
    '<p class="kind">Proof before the first chip</p>',
    `<h1><bdi>${escapeXml(report.artwork.file)}</bdi></h1></div>`,
    `<p class="stamp ${report.verdict}">${report.verdict}<small>${words(VERDICT_WORDS[report.verdict])}</small></p>`,
    `<p class="lead">${words(cutSentences(report, unit).join(' '))}</p>`,
    '</header>',
  ].join('');
}

/** Right under the verdict, which holds for the artwork as read. */
function notDrawn(report: Report): string {
  const items = notAsDrawn(report).map(({ text }) => `<li>${words(text)}</li>`);
  return items.length === 0
    ? ''
    : `<section class="not-drawn"><h2>Not as drawn</h2><ul>${items.join('')}</ul></section>`;
}

function captionText(
  { ratioText, unmarked }: { readonly ratioText: string; readonly unmarked: number },
  { picture }: Vetted,
): string {
  const more =
    unmarked > 0
      ? `${unmarked} more ${unmarked === 1 ? 'place is' : 'places are'} not marked here; the overlay shows ${unmarked === 1 ? 'it' : 'them'}.`
      : '';
  return words([ratioText, fibresText(picture.blocks), more].filter((part) => part !== '').join(' '));
}

function fibresText(blocks: Vetted['picture']['blocks']): string {
  const angles = [...new Set(blocks.map(({ grainDeg }) => `${digits(grainDeg)}°`))];
  const isEnd = blocks.map(({ diveDeg }) => diveDeg >= 45);
  const lines =
    angles.length === 1
      ? `The faint lines run along the fibres (${angles[0]}).`
      : 'The faint lines run along the fibres of each block.';
  return [
    ...(isEnd.includes(false) ? [lines] : []),
    ...(isEnd.includes(true) ? ['Small rings stand for fibres that end at the face.'] : []),
  ].join(' ');
}

/** Words made safe for HTML, each number on one line with its unit, and names from right to left isolated. */
function words(text: string): string {
  return bidiParts(keepUnits(text))
    .map((part) => (part.isForeign ? `<bdi>${escapeXml(part.text)}</bdi>` : escapeXml(part.text)))
    .join('');
}

/** Small samples of what is in the picture, in the same patterns. */
function key(report: Report, { picture, job }: Vetted, id: string): string {
  const items = [
    keySample(
      `<rect x="1" y="1" width="32" height="17" fill="#e6ecf3"/><path d="M1 10L10 1M1 18L18 1M10 18L27 1M18 18L33 3M27 18L33 12" stroke="#3d5a80" stroke-width="0.9"/><rect x="1" y="1" width="32" height="17" class="outline"/>`,
      'will be cut and filled',
    ),
  ];
  const [shallowest] = picture.depths;
  if (shallowest !== undefined) {
    items.push(
      keySample(
        '<path d="M1 5H33M1 9.500H33M1 14H33" class="depth"/>',
        `lines of equal depth, ${bitSize(shallowest.depthMm, job.units)} apart`,
      ),
    );
  }
  if (picture.standing.length > 0) {
    items.push(
      keySample('<rect x="1" y="1" width="32" height="17" class="standing"/>', 'drawn, but stays wood'),
    );
  }
  if (picture.narrow.length > 0) {
    items.push(
      keySample(
        '<path class="narrow-ground" d="M3 9.5H31"/><path class="narrow" d="M3 9.5H31"/>',
        'stroke narrower than the smallest bit',
      ),
    );
  }
  if (picture.bleedWalls.length > 0) {
    items.push(keySample('<path class="bleed" d="M2 9.5H32"/>', 'wall that may bleed'));
  }
  if (picture.blocks.some(({ outline }) => outline !== null)) {
    items.push(keySample('<path d="M2 9.5H32" stroke="#7c715a" stroke-width="1.2"/>', 'edge of a block'));
  }
  items.push(...obstacleKey(picture));
  if (report.findings.length > 0) {
    items.push(
      keySample(
        '<circle cx="17" cy="9.5" r="8" fill="#fffefb" stroke="#14213d" stroke-width="1.2"/><text x="17" y="13" font-size="10" text-anchor="middle" font-family="Arial, Liberation Sans, sans-serif">1</text>',
        'number of the finding',
      ),
    );
  }
  return `<ul class="key" data-for="${id}">${items.join('')}</ul>`;
}

function overview(entries: readonly FindingEntry[]): string {
  const rows = entries
    .map(
      (entry) =>
        `<tr><td><span class="number">${entry.number}</span></td><td>${words(entry.title)}</td><td><span class="grade ${entry.severity}">${entry.seenTo === true ? 'seen to' : entry.severity}</span></td><td class="amount" data-limit=", limit ${escapeXml(keepUnits(entry.limit))}">${words(entry.measured)}</td><td class="amount">${words(entry.limit)}</td><td>${entry.places.length}</td></tr>`,
    )
    .join('');
  return `<table class="overview"><thead><tr><th></th><th>Finding</th><th></th><th>Measured</th><th>Limit</th><th>Places</th></tr></thead><tbody>${rows}</tbody></table>`;
}

/** What the maker answers for: the work that is to be done, or has been. */
function seenToList(entries: readonly FindingEntry[], report: Report): string {
  const items = [
    ...entries
      .filter(({ seenTo }) => seenTo === true)
      .map(
        (entry) =>
          `<li><span class="number">${entry.number}</span> ${words(seenToText(entry))} Code: ${entry.code}.</li>`,
      ),
    ...noticesSeenTo(report).map(({ text, code }) => `<li>${words(text)} Code: ${code}.</li>`),
  ];
  return items.length === 0 ? '' : `<h2>Seen to by you</h2><ul class="care">${items.join('')}</ul>`;
}

function findingBlock(entry: FindingEntry, vetted: Vetted, id: string): string {
  const loupes = entry.places.slice(0, MAX_LOUPES).map((place) => loupe(place, vetted, id));
  return [
    '<section class="finding"><div>',
    `<h3><span class="number">${entry.number}</span> ${words(entry.title)} <span class="grade ${entry.severity}">${entry.severity}</span></h3>`,
    `<p>${words(entry.headline)}</p>`,
    entry.fixes.length === 0
      ? ''
      : `<ul>${entry.fixes.map((fix) => `<li>${words(fix.text)}</li>`).join('')}</ul>`,
    `<p class="why">${words(entry.why)}</p>`,
    placesLine(entry, vetted),
    `<p class="basis">Basis: ${words(shortBasis(entry.basis).join('; '))}. Code: ${entry.code}.</p>`,
    '</div>',
    loupes.length === 0 ? '' : `<div class="loupes">${loupes.join('')}</div>`,
    '</section>',
  ].join('');
}

function placesLine({ places }: FindingEntry, { report, job }: Vetted): string {
  if (places.length === 0) {
    return '';
  }
  const [left, top] = report.rulerOffsetMm;
  const listed = places
    .slice(0, MAX_PLACES)
    .map(
      ({ label, text, atMm }) =>
        `${label}: ${text} at ${formatLength(atMm[0] - left, job.units)}, ${formatLength(atMm[1] - top, job.units)}`,
    )
    .join('; ');
  const more = places.length > MAX_PLACES ? `; ${places.length - MAX_PLACES} more` : '';
  return `<p class="places">From the left and top edges of the artwork: ${words(listed + more)}.</p>`;
}

/** One place enlarged: a round window wide enough to show the bit twice over. */
function loupe({ label, atMm }: MarkedPlace, { job }: Vetted, id: string): string {
  const bitMm = passWidthMm(job);
  const radius = Math.max(1.5 * bitMm, 2);
  const box = [atMm[0] - radius, atMm[1] - radius, 2 * radius, 2 * radius].map(digits).join(' ');
  return [
    `<figure class="loupe"><svg viewBox="${box}" role="img" aria-label="Place ${label} enlarged"><use href="#${id}-shapes"/>`,
    `<circle cx="${digits(atMm[0])}" cy="${digits(atMm[1])}" r="${digits(bitMm / 2)}" fill="none" stroke="#b3400a" stroke-width="1.6px" stroke-dasharray="3 2" vector-effect="non-scaling-stroke"/>`,
    `</svg>${label}, dashed: the bit</figure>`,
  ].join('');
}

function factTable(facts: readonly Fact[]): string {
  const rows = facts
    .map(
      ({ name, value, remark }) =>
        `<tr><th scope="row"${name.startsWith(' ') ? ' class="sub"' : ''}>${words(name.trim())}</th><td><span class="amount">${words(value)}</span>${remark === '' ? '' : ` <span class="remark">${words(remark)}</span>`}</td></tr>`,
    )
    .join('');
  return `<table class="facts"><tbody>${rows}</tbody></table>`;
}

function notices(report: Report): string {
  // the others stand under the verdict
  const all = otherNotices(report);
  if (all.length === 0) {
    return '';
  }
  const items = all
    .map((notice) => {
      const more = notice.where.length > 1 ? ` (${notice.where.length} places)` : '';
      return `<li>${words(`${notice.text}${more}`)}</li>`;
    })
    .join('');
  return `<h2>From reading the artwork</h2><ul class="care">${items}</ul>`;
}

/** What the maker did not give, with what was taken instead. */
function valueList(title: string, taken: readonly UsualValue[]): string {
  const values = taken.map(({ key, value }) => `${SETTINGS[key].label ?? key}: ${value}`);
  return values.length === 0
    ? ''
    : `<h2>${words(title)}</h2><p class="places">${words(values.join('; '))}.</p>`;
}

/** What the cautions rest on; their words stand on the page for the bench. */
function sourcesOfCare(): string {
  const titles = (Object.keys(CAUTION_WORDS) as CautionId[]).flatMap((id) =>
    cautions[id].because.map((source) => sources[source].title),
  );
  return `<p class="basis">What to take care of rests on: ${words([...new Set(titles)].join('; '))}.</p>`;
}
