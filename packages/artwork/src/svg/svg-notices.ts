import type { Notice } from '@pourproof/plane';

/** What the SVG reader can have to say; each is explained in docs/unsupported.md. */
export type SvgNoticeCode =
  | 'size-assumed'
  | 'size-differs'
  | 'page-size-zero'
  | 'page-background'
  | 'outside-page'
  | 'nothing-painted'
  | 'open-outline'
  | 'path-data-error'
  | 'number-too-large'
  | 'transform-ignored'
  | 'hidden-elements'
  | 'invisible-paint'
  | 'translucent-paint'
  | 'gradient-fill'
  | 'pattern-fill'
  | 'hairline-stroke'
  | 'dashes-too-fine'
  | 'stroke-join-arcs'
  | 'mask-ignored'
  | 'filter-ignored'
  | 'clip-unknown'
  | 'text-not-outlined'
  | 'text-simplified'
  | 'text-in-given-font'
  | 'embedded-picture'
  | 'foreign-content'
  | 'animation-ignored'
  | 'script-ignored'
  | 'unknown-element'
  | 'external-reference'
  | 'broken-reference'
  | 'reference-cycle'
  | 'style-skipped'
  | 'encoding-differs'
  | 'namespace-undeclared'
  | 'switch-choice'
  | 'doubled-shape'
  | 'paint-covers-paint'
  | 'likely-knock-out'
  | 'paper-left-out'
  | 'speck'
  | 'short-segments'
  | 'fine-detail'
  | 'artwork-huge'
  | 'artwork-tiny';

/** How a kind of notice reads, given how often it occurred, its details in a list, and its smallest and largest measure. */
interface NoticeWords {
  readonly severity: Notice['severity'];
  readonly text: (count: number, details: string, measure: { min: number; max: number }) => string;
}

const plural = (count: number, one: string, many: string = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

function caution(text: NoticeWords['text']): NoticeWords {
  return { severity: 'caution', text };
}

function note(text: NoticeWords['text']): NoticeWords {
  return { severity: 'note', text };
}

/** The words of every kind. */
export const SVG_NOTICES: Readonly<Record<SvgNoticeCode, NoticeWords>> = {
  'size-assumed': caution((_, d) => d),
  'size-differs': caution((_, d) => d),
  'page-size-zero': caution(
    (_, d) => `The page's ${d} is 0, so a viewer shows nothing. It was read as if it were not given.`,
  ),
  'page-background': caution(
    (_, d) =>
      `A shape as large as the page (${d}) lies beneath the rest and counts as artwork. Delete it if it is only a background.`,
  ),
  'outside-page': caution(
    (n, _, { max }) =>
      `${plural(n, 'shape')} lie${n === 1 ? 's' : ''} outside the page, where a viewer shows nothing, by up to ${Number(max.toPrecision(3))} mm. They count as artwork; delete what is not wanted.`,
  ),
  'nothing-painted': caution((_, d) => `The file paints nothing that could be carved.${d}`),
  'open-outline': caution(
    (n, _, { max }) =>
      `${plural(n, 'filled outline')} ${n === 1 ? 'is' : 'are'} open and ${n === 1 ? 'was' : 'were'} closed by a straight line, as SVG fills them; the largest gap is ${Number(max.toPrecision(3))} mm. Close the outlines in the drawing if that is not the shape meant.`,
  ),
  'path-data-error': caution(
    (n, d) =>
      `The data of ${plural(n, 'shape')} has an error and is drawn only up to it: ${d}. Export the drawing again.`,
  ),
  'number-too-large': caution(
    (n) =>
      `${plural(n, 'shape')} ${n === 1 ? 'lies' : 'lie'} more than 1000 km away or cannot be computed, and ${n === 1 ? 'is' : 'are'} left out. Check the numbers in the file.`,
  ),
  'transform-ignored': caution(
    (n, d) =>
      `${plural(n, 'transform')} could not be read and ${n === 1 ? 'was' : 'were'} left out, as SVG has it: ${d}.`,
  ),
  'hidden-elements': note(
    (n) =>
      `${plural(n, 'element')} ${n === 1 ? 'is' : 'are'} hidden (display or visibility) and not part of the artwork.`,
  ),
  'invisible-paint': note(
    (n) =>
      `${plural(n, 'shape or group', 'shapes or groups')} with opacity 0 ${n === 1 ? 'is' : 'are'} not part of the artwork.`,
  ),
  'translucent-paint': note(
    (n) =>
      `${plural(n, 'shape')} ${n === 1 ? 'is' : 'are'} partly transparent; ${n === 1 ? 'it counts' : 'they count'} as fully painted.`,
  ),
  'gradient-fill': note(
    (n) =>
      `${plural(n, 'shape')} ${n === 1 ? 'is' : 'are'} painted with a gradient; ${n === 1 ? 'it counts' : 'they count'} as painted in its first colour.`,
  ),
  'pattern-fill': note(
    (n) =>
      `${plural(n, 'shape')} ${n === 1 ? 'is' : 'are'} painted with a pattern; the whole area counts as painted.`,
  ),
  'hairline-stroke': caution(
    (n, _, { min }) =>
      `${plural(n, 'stroke')} ${n === 1 ? 'is' : 'are'} thinner than 0.1 mm (the thinnest ${Number(min.toPrecision(2))} mm). Such lines are usually meant as outlines only: give them a real width or take them out.`,
  ),
  'dashes-too-fine': caution(
    (n) =>
      `The dashes of ${plural(n, 'stroke')} are too many to be cut; ${n === 1 ? 'it is' : 'they are'} drawn without gaps.`,
  ),
  'stroke-join-arcs': note(
    (n) =>
      `${plural(n, 'stroke')} ask${n === 1 ? 's' : ''} for joins of the kind "arcs"; they are drawn as miters.`,
  ),
  'mask-ignored': caution(
    (n, d) =>
      `${plural(n, 'mask')} ${n === 1 ? 'is' : 'are'} not taken, since only masks of plain black and white are, and what ${n === 1 ? 'it hides' : 'they hide'} counts as painted: ${d}. Use a clip path, or cut the shapes in the drawing program.`,
  ),
  'filter-ignored': caution(
    (n, d) =>
      `${plural(n, 'filter effect')} ${n === 1 ? 'is' : 'are'} not taken; the shapes count without ${n === 1 ? 'it' : 'them'}: ${d}.`,
  ),
  'clip-unknown': caution(
    (n, d) =>
      `${plural(n, 'clip path')} of a kind that is not taken ${n === 1 ? 'was' : 'were'} left out: ${d}.`,
  ),
  'text-not-outlined': caution(
    (n, d) =>
      `${plural(n, 'text')} ${n === 1 ? 'is' : 'are'} not part of the artwork, since no font was given: ${d}. Convert text to outlines in the drawing program, or pass --font with the font's file.`,
  ),
  'text-simplified': caution(
    (n, d) =>
      `${plural(n, 'text')} could be set only in part: ${d}. Convert text to outlines in the drawing program to be sure.`,
  ),
  'text-in-given-font': note(
    (n, d) =>
      `${plural(n, 'text')} ${n === 1 ? 'is' : 'are'} set in the font given, ${d}, since the drawing asks for another family.`,
  ),
  'embedded-picture': caution(
    (n) =>
      `${plural(n, 'picture')} ${n === 1 ? 'is' : 'are'} not taken: only drawn shapes can be carved. Trace ${n === 1 ? 'it' : 'them'} in a drawing program.`,
  ),
  'foreign-content': caution(
    (n) =>
      `${plural(n, 'part')} of the file ${n === 1 ? 'is' : 'are'} not SVG (foreignObject) and not taken.`,
  ),
  'animation-ignored': note(
    (n) =>
      `${plural(n, 'animation')} ${n === 1 ? 'is' : 'are'} not run; the drawing is read as it stands without ${n === 1 ? 'it' : 'them'}.`,
  ),
  'script-ignored': note((n) => `${plural(n, 'script')} ${n === 1 ? 'is' : 'are'} never run.`),
  'unknown-element': note(
    (n, d) => `${plural(n, 'element')} of an unknown kind ${n === 1 ? 'paints' : 'paint'} nothing: ${d}.`,
  ),
  'external-reference': caution(
    (n, d) =>
      `${plural(n, 'reference')} to other files ${n === 1 ? 'is' : 'are'} never read: ${d}. Embed the parts in the drawing.`,
  ),
  'broken-reference': caution(
    (n, d) => `${plural(n, 'reference')} point${n === 1 ? 's' : ''} to nothing in the file: ${d}.`,
  ),
  'reference-cycle': caution(
    (n, d) =>
      `${plural(n, 'element')} refer${n === 1 ? 's' : ''} to ${n === 1 ? 'itself' : 'themselves'}, by one step or several, and ${n === 1 ? 'is' : 'are'} not drawn there: ${d}.`,
  ),
  'style-skipped': note(
    (n, d) => `${plural(n, 'part')} of the style sheets ${n === 1 ? 'was' : 'were'} left out: ${d}.`,
  ),
  'encoding-differs': note((_, d) => d),
  'namespace-undeclared': note(
    (_, d) => `The file uses the prefix "${d}" without declaring it; it was read as usual.`,
  ),
  'switch-choice': note(
    (n) => `${plural(n, 'switch', 'switches')} chose among versions of the drawing for readers of English.`,
  ),
  'doubled-shape': caution(
    (n, d) =>
      `${plural(n, 'shape')} lie${n === 1 ? 's' : ''} exactly on another one: ${d}. They count once; delete the copies.`,
  ),
  'paint-covers-paint': note(
    (n) =>
      `${plural(n, 'shape')} lie${n === 1 ? 's' : ''} over others of another colour. All of it counts as one artwork; with --carve visible each colour keeps what can be seen of it.`,
  ),
  'likely-knock-out': caution(
    (n) =>
      `${plural(n, 'white shape')} over darker ones ${n === 1 ? 'looks' : 'look'} meant to leave wood standing, yet count${n === 1 ? 's' : ''} as artwork. Use --carve visible, or cut the holes in the drawing program.`,
  ),
  'paper-left-out': note(
    (n) =>
      `${plural(n, 'white shape')} ${n === 1 ? 'was' : 'were'} taken for paper: ${n === 1 ? 'it hides' : 'they hide'} what lies beneath and ${n === 1 ? 'is' : 'are'} not carved.`,
  ),
  speck: caution(
    (n, d) =>
      `${plural(n, 'shape')} ${n === 1 ? 'is' : 'are'} smaller than ${d} mm²: dust in the drawing, or detail that no cutter reaches.`,
  ),
  'short-segments': note(
    (n, d) =>
      `${plural(n, 'shape')} ${n === 1 ? 'has' : 'have'} segments shorter than the tolerance of ${d} mm.`,
  ),
  'fine-detail': note(
    (_, d) =>
      `The outlines have more points than a machine can follow: half of the segments are shorter than ${d} mm. Simplify the paths if the machine stutters.`,
  ),
  'artwork-huge': caution(
    (_, d) =>
      `The artwork is ${d} mm, larger than any board here is likely to be. Check the unit; --width, --height or --scale set the size.`,
  ),
  'artwork-tiny': caution(
    (_, d) => `The artwork is only ${d} mm. Check the unit; --width, --height or --scale set the size.`,
  ),
};
