import { inchesFromMm, type LengthUnit, type Point } from '@pourproof/plane';
import { escapeXml } from '../sheet/escape-xml.ts';
import type { Vetted } from '../vetted.ts';
import { paperName } from './paper-pages.ts';
import type { Tiling } from './paper-tiles.ts';
import type { PlacementFrame } from './placement-frame.ts';

/** Digits after the point of a number to type: 10 µm and 0.0005 in, finer than a router repeats. */
const DIGITS: Readonly<Record<LengthUnit, number>> = { mm: 2, in: 4 };

/** The first page: the numbers to type, and how zero is found again. */
export function placementNumbers({ report, job }: Vetted, frame: PlacementFrame, tiling: Tiling): string {
  const { units, turnDeg } = job;
  const [left, top, right, bottom] = frame.artworkMm;
  const where =
    frame.zero.of === 'board'
      ? 'Zero is the lower left corner of the board’s face.'
      : 'No board is described: zero is the lower left corner of the box around the artwork.';
  const isTurned = frame.zero.of === 'board' && turnDeg !== 0;
  const rows: readonly (readonly [string, Point])[] = [
    ['Lower left corner of the artwork', [left, bottom]],
    ['Upper right corner of the artwork', [right, top]],
    ...(isTurned
      ? ([
          ['Middle of its box as it lies', [(left + right) / 2, (top + bottom) / 2]],
          ['Middle of the artwork, about which it is turned', frame.middleMm],
        ] as const)
      : ([['Middle of the artwork', frame.middleMm]] as const)),
    ...frame.marks.map(({ name, atMm }): readonly [string, Point] => [`Mark ${name}`, atMm]),
  ];
  const body = rows.map(([name, at]) => {
    const [x, y] = fromZero(at, frame);
    return `<tr><th scope="row">${escapeXml(name)}</th><td>${typed(x, units)}</td><td>${typed(y, units)}</td></tr>`;
  });
  const turn = isTurned
    ? ` The artwork is turned by ${turnDeg}° counter-clockwise; corners are those of its box as it lies.`
    : '';
  return [
    `<h1><bdi>${escapeXml(paperName(report))}</bdi> in real size</h1>`,
    `<p>${where} X runs to the right, Y up, both in ${units === 'in' ? 'inches' : 'mm'}.${turn}</p>`,
    `<h2>Numbers to type</h2><table><thead><tr><th></th><th>X</th><th>Y</th></tr></thead><tbody>${body.join('')}</tbody></table>`,
    `<h2>Lay the sheets on the board</h2><ol>${layingSteps(tiling)}</ol>`,
    `<h2>Find zero again, as after the pour</h2>${findingZero(frame, units)}`,
    '<h2>Take care</h2><p>Spindle off and unplugged while hands are on the board. Take the paper off before the first cut. The drawing shows the artwork as it is vetted, without clamps that are not described.</p>',
  ].join('');
}

function layingSteps({ columns, rows }: Tiling): string {
  const many = columns * rows > 1;
  return [
    '<li>Measure the bar of 100 mm on every sheet: if it is off by more than 0.5 mm, print anew at 100 %.</li>',
    many
      ? `<li>${columns * rows} sheets, ${columns} across and ${rows} down: lay crosses with the same letter on each other, and tape them.</li>`
      : '',
    '<li>Lay the drawing on the board by its edges or by the lines through its middle.</li>',
  ].join('');
}

function findingZero(frame: PlacementFrame, units: LengthUnit): string {
  const [first, second] = frame.marks;
  if (first === undefined || second === undefined) {
    return '<p>The board has no room for marks beside the artwork: use two of its edges, which must then stay as they are.</p>';
  }
  const [ax, ay] = fromZero(first.atMm, frame);
  const [bx, by] = fromZero(second.atMm, frame);
  const apart = typed(Math.hypot(bx - ax, by - ay), units);
  return [
    '<ol>',
    `<li>Before the first cut, move to ${first.name} and to ${second.name} and prick or drill a small hole at each, where neither levelling nor resin reaches its bottom.</li>`,
    `<li>Later, bring the point of a bit over ${first.name} and type X ${typed(ax, units)}, Y ${typed(ay, units)} as its place.</li>`,
    `<li>Move to X ${typed(bx, units)}, Y ${typed(by, units)}: the point must stand over ${second.name}, ${apart} ${units} away. If it does not, the board lies turned: turn it about ${first.name} until it does.</li>`,
    '</ol>',
  ].join('');
}

/** A place from zero on, y up. */
function fromZero([x, y]: Point, { zero: { atMm } }: PlacementFrame): Point {
  return [x - atMm[0], atMm[1] - y];
}

function typed(mm: number, unit: LengthUnit): string {
  const text = (unit === 'in' ? inchesFromMm(mm) : mm).toFixed(DIGITS[unit]);
  return Number(text) === 0 ? (0).toFixed(DIGITS[unit]) : text;
}
