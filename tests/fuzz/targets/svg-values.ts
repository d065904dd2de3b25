import { readSvg } from '@pourproof/artwork';
import { CSS_PX_PER_INCH, MM_PER_INCH, signedArea } from '@pourproof/plane';
import fc from 'fast-check';
import { checkDrawing } from '../check-drawing.ts';
import { answerOf, type FuzzTarget, fuzzTarget } from '../fuzz-target.ts';

/** A value as written and what it is in px, `null` where no reader may read it. */
interface Value {
  readonly text: string;
  readonly px: number | null;
}

const PX: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  in: CSS_PX_PER_INCH,
  cm: (10 * CSS_PX_PER_INCH) / MM_PER_INCH,
  mm: CSS_PX_PER_INCH / MM_PER_INCH,
  pt: CSS_PX_PER_INCH / 72,
  pc: CSS_PX_PER_INCH / 6,
  q: CSS_PX_PER_INCH / MM_PER_INCH / 4,
  em: 16,
  rem: 16,
  ex: 8,
};

const plain: fc.Arbitrary<Value> = fc
  .tuple(
    fc.integer({ min: 1, max: 90_000 }),
    fc.constantFrom(...Object.keys(PX)),
    fc.constantFrom('', ' ', '+'),
  )
  .map(([n, unit, before]) => ({ text: `${before}${n / 1000}${unit}`, px: (n / 1000) * PX[unit]! }));

/** Sums, products and choices of lengths with units; a bare number does not go with a length there. */
const computed: fc.Arbitrary<Value> = fc
  .tuple(plain, plain, fc.integer({ min: 1, max: 9 }))
  .filter(([a, b]) => [a, b].every(({ text }) => /[a-z]$/iu.test(text)))
  .chain(([a, b, n]) => {
    const [x, y] = [a.px!, b.px!];
    const [s, t] = [a.text.trim(), b.text.trim()];
    return fc.constantFrom<Value[]>(
      { text: `calc(${s} + ${t})`, px: x + y },
      { text: `calc(${s} * ${n})`, px: x * n },
      { text: `calc((${s} + ${t}) / ${n})`, px: (x + y) / n },
      { text: `min(${s}, ${t})`, px: Math.min(x, y) },
      { text: `max(${s}, calc(${n} * ${t}))`, px: Math.max(x, n * y) },
      { text: `clamp(0px, ${s}, ${t})`, px: Math.min(x, y) },
      { text: `calc(${s} + ${n})`, px: null },
    );
  });

const unreadable: fc.Arbitrary<Value> = fc
  .oneof(
    fc.constantFrom(
      '1e309',
      'NaN',
      'Infinity',
      '--1',
      '1e',
      '0x10',
      '5..',
      '.',
      '-',
      '10 mm',
      '3 4',
      '9'.repeat(400),
      'calc(1mm + 2)',
      'calc(1furlong)',
      'calc(1/0)',
      'calc(1px * NaN)',
      'none',
      '١٢',
      '10mm;',
      '1;2',
    ),
    fc.tuple(fc.integer({ min: 0, max: 99 }), fc.integer({ min: 0, max: 99 })).map(([a, b]) => `${a},${b}`),
    fc
      .tuple(
        fc.integer({ min: 1, max: 99 }),
        fc.constantFrom('furlong', 'mmm', '°', '"', ' mm', 'mm mm', 'm'),
      )
      .map(([n, unit]) => n + unit),
  )
  .map((text) => ({ text, px: null }));

const value: fc.Arbitrary<Value> = fc.oneof(
  { weight: 5, arbitrary: plain },
  { weight: 1, arbitrary: computed },
  { weight: 1, arbitrary: unreadable },
);

const SHAPES = {
  rect: { names: ['width', 'height'], area: (w: number, h: number) => w * h },
  ellipse: { names: ['rx', 'ry'], area: (a: number, b: number) => Math.PI * a * b },
  circle: { names: ['r', 'cx'], area: (r: number) => Math.PI * r * r },
} as const;

/**
 * Shapes whose lengths are written in every way, as attributes or in `style`: the area is that of the lengths, and each that
 * cannot be read is told with element, name and value.
 */
export const svgValues: FuzzTarget = fuzzTarget(
  'svg-values',
  { limitMs: 500, quick: 300 },
  fc.record({
    shape: fc.constantFrom(...(Object.keys(SHAPES) as (keyof typeof SHAPES)[])),
    first: value,
    second: value,
    stroke: fc.option(unreadable, { freq: 9 }),
    isStyled: fc.boolean(),
  }),
  ({ shape, first, second, stroke, isStyled }) => {
    const { names, area } = SHAPES[shape];
    const given = [
      [names[0], first] as const,
      [names[1], second] as const,
      ...(stroke === null ? [] : [['stroke-width', stroke] as const]),
    ].map(([name, v]) => [name, asWritten(v, isStyled)] as const);
    const written = given.map(([name, v]) =>
      isStyled ? `${name}:${v.text}` : `${name}="${escaped(v.text)}"`,
    );
    const attributes = isStyled ? `style="${escaped(written.join(';'))}"` : written.join(' ');
    const source = `<svg xmlns="http://www.w3.org/2000/svg" width="9000px" height="9000px"><${shape} ${attributes}/></svg>`;
    const drawing = answerOf(() => readSvg(source));
    if (drawing === null) {
      return;
    }
    checkDrawing(drawing);
    const told = drawing.notices
      .filter(({ code }) => code === 'length-unreadable')
      .flatMap(({ params }) => params?.details ?? []);
    for (const [name, v] of given) {
      const isTold = told.some((detail) => String(detail).startsWith(`${shape} ${name}="`));
      if ((v.px === null) !== isTold) {
        throw new Error(`${name}="${v.text}" is ${isTold ? 'told as unreadable' : 'dropped in silence'}`);
      }
    }
    const [a, b] = [given[0]![1].px, given[1]![1].px];
    if (a !== null && b !== null) {
      checkArea(
        drawing.shapes.reduce((sum, s) => sum + Math.abs(signedArea(s.region)), 0),
        area(a, b),
      );
    }
  },
);

/** In a declaration a semicolon ends the value, and a quote or bracket that stays open swallows all that follows. */
function asWritten(v: Value, isStyled: boolean): Value {
  if (isStyled && /"|\([^)]*$/u.test(v.text)) {
    return { text: 'junk', px: null };
  }
  if (!isStyled || !v.text.includes(';')) {
    return v;
  }
  const text = v.text.split(';')[0]!;
  return text === '10mm' ? { text, px: 10 * PX.mm! } : { text, px: Number(text) };
}

const escaped = (text: string): string => text.replaceAll('"', '&quot;');

function checkArea(mm2: number, px2: number): void {
  const want = px2 * (MM_PER_INCH / CSS_PX_PER_INCH) ** 2;
  // what flattening may move
  if (Math.abs(mm2 - want) > 1e-9 * want + 1e-9) {
    throw new Error(`the area is ${mm2}, not ${want} mm²`);
  }
}
