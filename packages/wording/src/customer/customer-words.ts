import { inchesFromMm, type LengthUnit } from '@pourproof/plane';
import { CAUTION_WORDS } from '../advice/caution-words.ts';
import { colourName } from '../facts/colour-name.ts';
import { counted } from '../findings/parts-of-sentences.ts';
import { escapeXml } from '../sheet/escape-xml.ts';
import type { Vetted } from '../vetted.ts';
import { fillOf } from './fill-patterns.ts';

/**
 * The first page of a customer's proof: what is to be read back, what is agreed, what to know, and lines to sign.
 *
 * @param readBack in HTML
 */
export function customerWords(vetted: Vetted, readBack: string): string {
  return [
    '<h1>Please read before it is cut</h1>',
    openStops(vetted),
    readBack,
    '<h2>What is agreed</h2>',
    `<table><tbody>${agreed(vetted)
      .map(([name, value]) => `<tr><th scope="row">${name}</th><td><bdi>${escapeXml(value)}</bdi></td></tr>`)
      .join('')}</tbody></table>`,
    colourKey(vetted),
    '<h2>What to know</h2><ul class="know">',
    '<li>The next sheets show in real size what the bits really cut: inner corners and ends are as round as the smallest bit. Lay a ruler on the bar of 100 mm first.</li>',
    '<li>No two boards have the same colour, figure or grain, and resin on wood looks otherwise than on paper.</li>',
    `<li>${escapeXml(CAUTION_WORDS.food)}</li>`,
    '</ul>',
    '<h2>Checked by you</h2><ul class="ticks">',
    ...[
      'Every letter, capital, accent and date',
      'Size and place',
      'Wood and colours',
      vetted.job.boards === 1 ? 'One board' : `${vetted.job.boards} boards`,
    ].map((text) => `<li><span class="box"></span>${text}</li>`),
    '</ul>',
    '<div class="signing"><span>To be changed</span><span>Name and signature</span><span>Date</span></div>',
  ].join('');
}

/** A proof with open stops is not one to sign. */
function openStops({ report }: Vetted): string {
  const stops = report.findings.filter(({ severity, seenTo }) => severity === 'stop' && seenTo !== true);
  return stops.length === 0
    ? ''
    : `<p class="banner">Not ready for a customer: ${counted(stops.length, 'stop is', 'stops are')} open. Clear ${stops.length === 1 ? 'it' : 'them'} and print anew.</p>`;
}

/** A size that a ruler can check: to 0.1 mm or 0.01 in. */
function sizeIn(mm: number, unit: LengthUnit): string {
  return unit === 'mm' ? `${Number(mm.toFixed(1))} mm` : `${Number(inchesFromMm(mm).toFixed(2))} in`;
}

function agreed({ report, job }: Vetted): readonly (readonly [string, string])[] {
  const { units, board } = job;
  const [left, top, right, bottom] = report.artwork.boundsMm;
  const size = (mm: readonly number[]): string => {
    const inUnit = (unit: LengthUnit): string => mm.map((each) => sizeIn(each, unit)).join(' × ');
    return `${inUnit(units)} (${inUnit(units === 'mm' ? 'in' : 'mm')})`;
  };
  const woods =
    board === null
      ? [job.rows.wood.name]
      : [...new Set(board.blocks.map(({ wood }) => job.materials.woods[wood]?.name ?? wood))];
  return [
    ['Artwork', `${size([right - left, bottom - top])} across and down`],
    ...(board === null ? [] : [['Board', size([board.widthMm, board.heightMm, board.thicknessMm])] as const]),
    ['Wood', woods.join(' and ')],
    ['Resin', `${job.rows.resin.name}, level with the face`],
    ...(job.boards === 1 ? [] : [['Boards', `${job.boards}, all alike`] as const]),
  ];
}

/** What each fill of the drawing stands for. */
function colourKey({ report, picture }: Vetted): string {
  if (picture.colours.length === 0) {
    return '';
  }
  const names = report.pour.colours.map(({ name }) => name);
  const items = picture.colours.map(({ name }, k) => {
    const resin = report.pour.colours.find((each) => each.name === name)?.resin ?? null;
    const number = picture.colours.length === 1 ? '' : `${k + 1}. `;
    const drawn = `drawn in ${colourName(name, names)}`;
    // a customer knows no codes of colours: their numbers and fills tell two of one word apart
    const poured = resin === null ? `colour still to be said (${drawn})` : colourName(resin, [resin]);
    return `<li><svg width="12mm" height="6mm" viewBox="0 0 12 6" aria-hidden="true"><rect x="0.2" y="0.2" width="11.6" height="5.6" fill="${fillOf(k)}" stroke="#000" stroke-width="0.2"/></svg>${number}<bdi>${escapeXml(poured)}</bdi></li>`;
  });
  return `<h2>${counted(picture.colours.length, 'colour', 'colours')}</h2><ul class="key">${items.join('')}</ul>`;
}
