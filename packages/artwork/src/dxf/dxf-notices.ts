/** Weight and words of one kind of notice, given how often it happened and a list of the details. */
export interface DxfNoticeKind {
  readonly severity: 'caution' | 'note';
  readonly say: (count: number, list: string) => string;
}

function things(count: number, one: string, many = `${one}s`): string {
  return count === 1 ? `One ${one}` : `${count} ${many}`;
}

function be(count: number): string {
  return count === 1 ? 'is' : 'are';
}

/** Every kind of notice that reading the entities of a DXF file can give, by its code. */
export const DXF_NOTICES: Readonly<Record<string, DxfNoticeKind>> = {
  'entity-not-taken': {
    severity: 'caution',
    say: (_, list) =>
      `Not taken: ${list}. Explode them into lines, arcs and polylines in the drawing program if they are to be carved.`,
  },
  'text-not-outlined': {
    severity: 'caution',
    say: (count, list) =>
      `${things(count, 'text')} ${be(count)} not taken, because a DXF file holds letters but not their outlines: ${list}. Give a font, or convert text to curves in the drawing program.`,
  },
  'text-in-given-font': {
    severity: 'note',
    say: (count, list) =>
      `${things(count, 'text')} ${count === 1 ? 'was' : 'were'} set in the font given (${list}); the drawing program may have used another, so widths can differ.`,
  },
  'infinite-line': {
    severity: 'note',
    say: (count) =>
      `${things(count, 'construction line')} without end (RAY, XLINE) bound nothing and were left out.`,
  },
  'point-without-size': {
    severity: 'note',
    say: (count) => `${things(count, 'point')} (POINT) cover nothing and were left out.`,
  },
  'bad-number': {
    severity: 'caution',
    say: (count) =>
      `${things(count, 'entity', 'entities')} with a number that cannot be read, or beyond 1000 km, ${count === 1 ? 'was' : 'were'} left out. Export the drawing again.`,
  },
  'zero-size': {
    severity: 'note',
    say: (count) =>
      `${things(count, 'entity', 'entities')} without size ${count === 1 ? 'was' : 'were'} left out.`,
  },
  'hidden-layer': {
    severity: 'caution',
    say: (count, list) =>
      `${things(count, 'entity', 'entities')} on layers that are off or frozen ${count === 1 ? 'was' : 'were'} left out: ${list}. Turn the layers on if they are to be carved.`,
  },
  'layer-not-plotted': {
    severity: 'note',
    say: (count, list) =>
      `${things(count, 'entity', 'entities')} on layers that are not plotted ${count === 1 ? 'was' : 'were'} left out: ${list}.`,
  },
  'invisible-entity': {
    severity: 'note',
    say: (count) =>
      `${things(count, 'entity', 'entities')} marked as invisible ${count === 1 ? 'was' : 'were'} left out.`,
  },
  'paper-space': {
    severity: 'note',
    say: (count) =>
      `${things(count, 'entity', 'entities')} in paper space (sheet borders and the like) ${count === 1 ? 'was' : 'were'} left out; the model is what gets carved.`,
  },
  'missing-block': {
    severity: 'caution',
    say: (_, list) =>
      `Blocks that the file does not hold are inserted: ${list}. Bind or embed outside references and export again.`,
  },
  'recursive-block': {
    severity: 'caution',
    say: (_, list) => `Blocks that contain themselves were cut off where they repeat: ${list}.`,
  },
  'tilted-plane': {
    severity: 'caution',
    say: (count) =>
      `${things(count, 'entity', 'entities')} drawn in a tilted plane ${count === 1 ? 'was' : 'were'} taken as seen from above, so ${count === 1 ? 'it is' : 'they are'} foreshortened.`,
  },
  'hatch-pattern': {
    severity: 'note',
    say: (count) =>
      `${things(count, 'hatch', 'hatches')} with a line pattern ${count === 1 ? 'was' : 'were'} taken as a full area; the pattern's lines are not carved one by one.`,
  },
  'broken-hatch': {
    severity: 'caution',
    say: (count) =>
      `${things(count, 'hatch', 'hatches')} whose boundary does not close could not be taken, or only in part. Draw the boundary as closed polylines.`,
  },
  'crossed-solid': {
    severity: 'note',
    say: (count) =>
      `${things(count, 'SOLID')} with swapped corners crosses itself and was filled as the two triangles that the file describes. If a full quadrilateral is meant, swap its last two corners.`,
  },
  'broken-spline': {
    severity: 'caution',
    say: (_, list) =>
      `Splines that cannot be computed were left out (${list}). Convert them to polylines in the drawing program.`,
  },
  'spline-through-points': {
    severity: 'note',
    say: (count) =>
      `${things(count, 'spline')} ${count === 1 ? 'has' : 'have'} no usable control points and ${count === 1 ? 'was' : 'were'} drawn as the smooth curve through ${count === 1 ? 'its' : 'their'} fit points; the drawing program may bend it a little otherwise.`,
  },
  'doubled-line': {
    severity: 'caution',
    say: (count) =>
      `${things(count, 'line')} that lay upon other lines ${count === 1 ? 'was' : 'were'} merged with them.`,
  },
  'doubled-outline': {
    severity: 'caution',
    say: (count) =>
      `${things(count, 'outline')} drawn twice in the same place ${count === 1 ? 'was' : 'were'} taken once. A machine would cut such lines twice.`,
  },
  'nearly-doubled-outline': {
    severity: 'caution',
    say: (count) =>
      `${things(count, 'outline')} ${count === 1 ? 'runs' : 'run'} within 0.3 mm of another all along. By even-odd only the thin frame between them is filled. If they are the same outline drawn twice, delete one.`,
  },
  'branching-outline': {
    severity: 'caution',
    say: (count) =>
      `At ${things(count, 'point').toLowerCase()} an odd number of lines meet, so inside and outside cannot be told by even-odd; every closed cell there was filled. Split such a figure into closed outlines.`,
  },
  'layers-overlap': {
    severity: 'caution',
    say: (_, list) =>
      `Outlines lie within the extent of another layer or colour: ${list}. Each layer is an area of its own, so they make no holes there. If they are meant as holes, put them on the same layer in the same colour.`,
  },
  'areas-in-outlines': {
    severity: 'caution',
    say: (_, list) =>
      `Filled areas (hatches, solids, wide lines) lie within the extent of outlines: ${list}. Closed outlines count as filled too, so such areas may add nothing. Leave out, or turn off, what is not to be carved.`,
  },
};
