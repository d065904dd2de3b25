import { medialAxis, strokeWidths } from '@pourproof/geometry';
import { lettered } from '../support/shapes/lettered.ts';
import { labelledShapes } from '../support/strokes/labelled-strokes.ts';
import { type StrokeRule, strokeRules } from '../support/strokes/stroke-rules.ts';
import { type Score, scoreOf } from '../support/strokes/stroke-scores.ts';

/** Letters with straight strokes, without and with hairlines, and the limit as a share of the narrowest stroke of their capital I. */
const ALPHABETS = [
  { face: 'josefin-sans-400.ttf', share: 0.7, thin: false },
  { face: 'josefin-sans-700.ttf', share: 0.7, thin: false },
  { face: 'arvo-400.ttf', share: 0.7, thin: false },
  { face: 'lora-400.ttf', share: 0.8, thin: false },
  { face: 'bodoni-moda-400.ttf', share: 1.5, thin: true },
] as const;
const CAPITALS = 'AEFHIKLMNTUVWXYZ';

/** A rule against the labelled shapes at one flattening, and against capitals of five faces. */
export interface RuleRow {
  readonly rule: string;
  readonly score: Score;
  /** Letters without thin strokes in which the rule finds strokes (not tapers), and letters with hairlines in which it finds none. */
  readonly letterFalse: number;
  readonly letterMissed: number;
}

/** Every rule's scores. */
export async function ruleRows(toleranceMm: number): Promise<RuleRow[]> {
  const letters = await alphabets(toleranceMm);
  return strokeRules.map((rule) => ({
    rule: rule.name,
    score: scoreOf(rule, toleranceMm),
    letterFalse: letters.filter((each) => !each.thin && strokesIn(rule, each) > 0).length,
    letterMissed: letters.filter((each) => each.thin && strokesIn(rule, each) === 0).length,
  }));
}

type Letter = Awaited<ReturnType<typeof alphabets>>[number];

async function alphabets(toleranceMm: number) {
  const all = [];
  for (const { face, share, thin } of ALPHABETS) {
    const axisOf = async (letter: string) => medialAxis(await lettered(letter, face, 15, toleranceMm));
    const limitMm = share * (strokeWidths(await axisOf('I')).narrowestMm ?? 0);
    for (const letter of CAPITALS) {
      all.push({ axis: await axisOf(letter), limitMm, thin });
    }
  }
  return all;
}

const strokesIn = (rule: StrokeRule, { axis, limitMm }: Letter): number =>
  rule.thinPlaces(axis, limitMm).filter(({ kind }) => kind !== 'taper').length;

/** The page docs/method/strokes.md, from the scores. */
export function renderStrokesPage(rows: readonly RuleRow[], toleranceMm: number): string {
  const labels = labelledShapes.flatMap((shape) => [
    ...(shape.strokes ?? []),
    ...(shape.tapers ?? []),
  ]).length;
  const families = [...new Set(labelledShapes.map((shape) => shape.family))];
  return `# Strokes, corners, tapers

A medial axis runs into every corner of the artwork, and next to a corner it is as thin as one likes. A warning for each would be no help: which
parts of the axis carry a stroke is told by a rule. Code: \`packages/geometry/src/measure/stroke-parts.ts\`. This page is rendered by
\`tests/pages/strokes-page.ts\`; a test fails when it is out of date.

## The rule
- A branch towards the boundary is a **corner** if the way along it reaches at most one clearance beyond the disc at its root. A corner of
  angle φ reaches 1/sin(φ/2) − 1 clearances, so corners of 60° and more are never strokes, nor are facets of flattened arcs. Where a
  branch reaches farther, its stroke begins where it does so: a blunt end shows its width that far in.
- What is left and has a free end is a **taper** from its tip up to where doubling the way from the tip widens it by less than a quarter, and on from
  there to where it widens no faster than that: in a pointed bar to its shoulders, wherever the outline has points. A branch
  may narrow again by a tenth on its way and still be one. The way goes on up to where strokes meet.
- A blunt end is a tip only if its branch gets at least four times as wide, and either widens by more than 40 % over twelve half widths
  (or half its branch), or so steadily that doubling the way from where its flanks would meet widens it by 60 %. Else a stroke ends there.
- Where a stroke widens into a place so wide that all of the way is a corner of that, as a petal into its flower, it ends where it becomes one.
- Level pieces that hang together count as one, by their whole length: which of their ends is lower is rounding.
- Where a taper, all along from its tip, has gained clearance as steeply as a tip of 39° does, it is a **corner** again, if there it is within a quarter
  of its full width: of such a tip a flat bit leaves at most its own diameter, cut off square or not.
- The narrowest stroke is the least clearance on what is neither; the greatest clearance around counts too, so that dots have a width, but not that of a
  wave within a taper. Tapers have widths of their own, down to the tip; where all is taper, as in a wedge, the "narrowest stroke" is its widest place and
  the taper says the rest.

The numbers in it are our choice; they were settled on the shapes below.

## How often it is wrong
${labelledShapes.length} shapes (${families.join(', ')}) are labelled in \`tests/support/strokes/labelled-strokes.ts\` with the
${labels} places where a person would call them thinner than a limit. A false alarm is a shape in which a rule finds a place without a label; a miss
is a label without a place. Rules that know no tapers take every taper for a stroke, and then read a narrowest stroke of 0 off it. Then
${CAPITALS.length} capitals of four faces at a limit that none of their strokes is thinner than, and of a didone whose hairlines all are.
Arcs are flattened to ${Math.round(toleranceMm * 1000)} µm; at 2 µm and 10 µm ours scores the same.

| rule | false alarms | misses | tapers taken for strokes, or strokes for tapers | in several pieces | letters with a false alarm | letters missed |
| --- | ---: | ---: | ---: | ---: | ---: | ---: |
${rows.map(({ rule, score, letterFalse, letterMissed }) => `| ${rule} | ${score.falseAlarms} | ${score.misses} | ${score.wrongKind} | ${score.broken} | ${letterFalse} of ${4 * CAPITALS.length} | ${letterMissed} of ${CAPITALS.length} |`).join('\n')}

The object angle is that between the directions to both contacts, 180° between parallel walls; the area left is what a flat bit as wide as the limit
leaves in one piece.

What ours still gets wrong there:
${rows[0].score.faults.map((fault) => `- ${fault}`).join('\n')}

## Known limits
- A burr or spur that is longer than it is wide is a stroke, however small.
- A needle that ends blunt and is not four times as wide at its other end is a stroke as thin as its tip.
- A taper that narrows again by more than a tenth has a bottleneck, which counts as a stroke.
- Local thickness, as raster images are measured, agrees with these widths but at junctions and in bottlenecks as short as they are wide, where a larger disc
  beside covers the place (\`tests/geometry/raster-widths.test.ts\`, 200 glyphs).
`;
}
