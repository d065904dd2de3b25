import { readSvg } from '@pourproof/artwork';
import fc from 'fast-check';
import { checkDrawing } from '../check-drawing.ts';
import { answerOf, type FuzzTarget, fuzzTarget } from '../fuzz-target.ts';
import { damaged, someNumber } from '../hostile-text.ts';
import { pathData, transforms } from './svg-paths.ts';

const length = fc
  .tuple(someNumber, fc.constantFrom('', '', '', 'px', 'mm', 'in', '%', 'em', 'vw', 'cm'))
  .map(([n, unit]) => n + unit);
const calc = fc
  .tuple(
    length,
    fc.constantFrom('+', '-', '*', '/'),
    length,
    fc.constantFrom('calc', 'min', 'max', 'clamp', 'calc(calc'),
  )
  .map(([a, sign, b, name]) => (name === 'calc' ? `calc(${a} ${sign} ${b})` : `${name}(${a}, ${b})`));
const size = fc.oneof(
  { weight: 6, arbitrary: length },
  { weight: 1, arbitrary: calc },
  { weight: 1, arbitrary: fc.constantFrom('auto', 'inherit', 'var(--a)', 'var(--b, 3mm)', 'unset') },
);
const numbers = fc.array(someNumber, { maxLength: 9 }).map((all) => all.join(' '));
const reference = fc.constantFrom('a', 'b', 'c', 'd', 'gone');
const link = reference.map((id) => `url(#${id})`);

const ATTRIBUTES: Readonly<Record<string, fc.Arbitrary<string>>> = {
  id: reference,
  class: fc.constantFrom('u', 'v', 'u v'),
  x: size,
  y: size,
  width: size,
  height: size,
  rx: size,
  ry: size,
  cx: size,
  cy: size,
  r: size,
  x1: size,
  y1: size,
  x2: size,
  y2: size,
  dx: size,
  dy: size,
  d: pathData,
  points: numbers,
  transform: transforms,
  'transform-origin': fc.tuple(size, size).map((both) => both.join(' ')),
  'transform-box': fc.constantFrom('fill-box', 'view-box', 'stroke-box'),
  viewBox: numbers,
  preserveAspectRatio: fc.constantFrom('none', 'xMidYMid slice', 'xMinYMax meet', 'junk'),
  fill: fc.oneof(
    fc.constantFrom(
      'none',
      'red',
      'white',
      '#abc',
      'currentColor',
      'rgb(1,2,3)',
      'context-fill',
      'rgba(0 0 0 / 0)',
      'junk',
    ),
    link,
  ),
  stroke: fc.oneof(fc.constantFrom('none', 'blue', 'context-stroke', '#0000'), link),
  'stroke-width': size,
  'stroke-dasharray': numbers,
  'stroke-dashoffset': size,
  'stroke-linejoin': fc.constantFrom('round', 'bevel', 'arcs', 'miter-clip'),
  'stroke-linecap': fc.constantFrom('round', 'square', 'butt'),
  'stroke-miterlimit': someNumber,
  'fill-rule': fc.constantFrom('evenodd', 'nonzero'),
  'fill-opacity': someNumber,
  opacity: someNumber,
  'vector-effect': fc.constant('non-scaling-stroke'),
  pathLength: someNumber,
  'font-size': size,
  'clip-path': fc.oneof(
    link,
    fc.tuple(size, size).map(([a, b]) => `circle(${a} at ${b} ${a})`),
    fc.tuple(size, size).map(([a, b]) => `inset(${a} ${b} round ${a})`),
  ),
  mask: link,
  'marker-start': link,
  'marker-mid': link,
  'marker-end': link,
  clipPathUnits: fc.constantFrom('objectBoundingBox', 'userSpaceOnUse'),
  maskUnits: fc.constantFrom('objectBoundingBox', 'userSpaceOnUse'),
  maskContentUnits: fc.constantFrom('objectBoundingBox', 'userSpaceOnUse'),
  markerWidth: size,
  markerHeight: size,
  refX: size,
  refY: size,
  markerUnits: fc.constantFrom('strokeWidth', 'userSpaceOnUse'),
  orient: fc.oneof(fc.constantFrom('auto', 'auto-start-reverse'), someNumber),
  overflow: fc.constantFrom('visible', 'hidden'),
  display: fc.constantFrom('none', 'inline'),
  visibility: fc.constantFrom('hidden', 'visible'),
  href: reference.map((id) => `#${id}`),
  offset: someNumber,
  'font-family': fc.constant('serif'),
  textLength: size,
  startOffset: size,
};
const NAMES = Object.keys(ATTRIBUTES);

/** What each element is mostly given; any other attribute may stand there too. */
const ELEMENTS: Readonly<Record<string, readonly string[]>> = {
  rect: ['x', 'y', 'width', 'height', 'rx', 'ry', 'fill'],
  circle: ['cx', 'cy', 'r', 'fill', 'clip-path'],
  ellipse: ['cx', 'cy', 'rx', 'ry'],
  line: ['x1', 'y1', 'x2', 'y2', 'stroke', 'stroke-width', 'marker-end'],
  polyline: ['points', 'stroke', 'marker-mid'],
  polygon: ['points', 'fill-rule'],
  path: ['d', 'd', 'fill', 'stroke', 'stroke-width', 'stroke-dasharray'],
  use: ['href', 'href', 'x', 'y', 'width', 'height'],
  g: ['transform', 'fill', 'opacity', 'clip-path', 'mask', 'id'],
  svg: ['x', 'y', 'width', 'height', 'viewBox', 'preserveAspectRatio'],
  symbol: ['id', 'viewBox', 'width'],
  clipPath: ['id', 'clipPathUnits', 'transform', 'clip-path'],
  mask: ['id', 'maskUnits', 'maskContentUnits', 'x', 'y', 'width', 'height'],
  marker: ['id', 'markerWidth', 'markerHeight', 'refX', 'refY', 'orient', 'viewBox', 'markerUnits'],
  linearGradient: ['id', 'href', 'x1'],
  pattern: ['id', 'width', 'height'],
  stop: ['offset'],
  text: ['x', 'y', 'dx', 'font-size', 'textLength'],
  switch: [],
  defs: [],
  image: ['href', 'width'],
  foreignObject: [],
  unheardOf: ['width'],
};
const LEAVES = ['rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon', 'path', 'use', 'stop'];
const HOLDERS = Object.keys(ELEMENTS).filter((name) => !LEAVES.includes(name));

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

function attributesOf(name: string): fc.Arbitrary<string> {
  const usual = ELEMENTS[name]!;
  const names = fc.oneof(
    { weight: 5, arbitrary: fc.constantFrom(...(usual.length > 0 ? usual : NAMES)) },
    { weight: 1, arbitrary: fc.constantFrom(...NAMES) },
  );
  return fc
    .array(
      names.chain((attribute) => fc.tuple(fc.constant(attribute), ATTRIBUTES[attribute]!)),
      { minLength: Math.min(3, usual.length), maxLength: 7 },
    )
    .map((pairs) => [...new Map(pairs)].map(([key, value]) => ` ${key}="${escaped(value)}"`).join(''));
}

function elementOf(names: readonly string[], content: fc.Arbitrary<string>): fc.Arbitrary<string> {
  return fc
    .constantFrom(...names)
    .chain((name) => fc.tuple(fc.constant(name), attributesOf(name), content))
    .map(([name, attributes, inner]) => `<${name}${attributes}>${inner}</${name}>`);
}

const leaf = elementOf(LEAVES, fc.constant(''));
const bottom = fc.oneof(
  { weight: 5, arbitrary: leaf },
  { weight: 1, arbitrary: fc.constantFrom('words', '<!-- x -->', '<tspan dx="3">ab</tspan>') },
);
const group = (inner: fc.Arbitrary<string>): fc.Arbitrary<string> =>
  fc.oneof(
    { weight: 3, arbitrary: leaf },
    {
      weight: 2,
      arbitrary: elementOf(
        HOLDERS,
        fc.array(inner, { maxLength: 3 }).map((all) => all.join('')),
      ),
    },
  );
const tree = group(group(bottom));

const selector = fc
  .array(
    fc.tuple(
      fc.constantFrom(
        'rect',
        '.u',
        '#a',
        '*',
        'g',
        'path',
        ':first-child',
        ':not(.u)',
        '[id]',
        ':nth-child(2n+1)',
        ':is(g, .v)',
        '::before',
        ':hover',
        'svg|rect',
      ),
      fc.constantFrom(' ', '>', '+', '~', '', ','),
    ),
    {
      minLength: 1,
      maxLength: 5,
    },
  )
  .map((all) =>
    all
      .map(([what, then]) => what + then)
      .join('')
      .replace(/[\s>+~,]+$/u, ''),
  );
const declarations = fc
  .array(
    fc
      .constantFrom(...NAMES, '--a', '--b', 'all', 'marker', 'font')
      .chain((name) =>
        fc.tuple(fc.constant(name), ATTRIBUTES[name] ?? size, fc.constantFrom('', '', '!important')),
      ),
    { maxLength: 4 },
  )
  .map((all) => all.map(([name, value, importance]) => `${name}:${value}${importance}`).join(';'));
const rule = fc.tuple(selector, declarations).map(([chosen, what]) => `${chosen}{${what}}`);
const sheet = fc
  .array(
    fc.oneof(
      { weight: 6, arbitrary: rule },
      {
        weight: 1,
        arbitrary: fc.constantFrom(
          '@media print{*{fill:none}}',
          '@import "x.css";',
          '@layer a{rect{fill:red}}',
          '/* c */',
          '@font-face{}',
          '}',
        ),
      },
    ),
    { maxLength: 4 },
  )
  .map((rules) => (rules.length === 0 ? '' : `<style>${escaped(rules.join(''))}</style>`));

const file = fc
  .tuple(
    fc.oneof(
      { weight: 5, arbitrary: fc.constant(' width="100mm" height="80mm" viewBox="0 0 100 80"') },
      { weight: 1, arbitrary: attributesOf('svg') },
    ),
    sheet,
    fc.array(tree, { minLength: 1, maxLength: 4 }),
    fc.option(declarations, { freq: 4 }),
  )
  .map(
    ([root, styles, parts, styled]) =>
      `<svg xmlns="http://www.w3.org/2000/svg"${root}${styled === null ? '' : ` style="${escaped(styled)}"`}>${styles}${parts.join('')}</svg>`,
  );

/** Whole SVG files of every element, damaged now and then: a drawing that holds together, or a refusal. */
export const svgFiles: FuzzTarget = fuzzTarget(
  'svg-files',
  { limitMs: 5000, quick: 150 },
  fc.record({
    source: fc.oneof({ weight: 8, arbitrary: file }, { weight: 1, arbitrary: damaged(file) }),
    options: fc.oneof(
      { weight: 4, arbitrary: fc.constant({}) },
      {
        weight: 1,
        arbitrary: fc.constantFrom(
          { widthMm: 200 },
          { heightMm: 5, widthMm: 7 },
          { carve: 'visible' } as const,
          { scale: 25.4 },
          { pxPerInch: 72 },
          { toleranceMm: 0.2 },
        ),
      },
    ),
  }),
  ({ source, options }) => {
    const drawing = answerOf(() => readSvg(source, options));
    if (drawing !== null) {
      checkDrawing(drawing);
    }
  },
);
