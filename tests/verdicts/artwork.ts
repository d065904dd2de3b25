/** One shape of a case: its path data, paint and place. */
interface Shape {
  readonly path: string;
  readonly colour: string;
  readonly at: readonly [number, number];
}

/** Artwork of a case: flags that name a source, or an SVG that stands in for a file. */
export type CaseArtwork =
  | { readonly kind: 'flags'; readonly flags: readonly string[] }
  | { readonly kind: 'svg'; readonly svg: string };

/** The page is larger than any case and has the origin in its middle, mm. */
const PAGE_MM = 4000;

/**
 * Reads the artwork column of `cases.txt`: its first lines say what may stand there.
 *
 * @throws {Error} for a word that it does not know
 */
export function caseArtwork(text: string): CaseArtwork {
  const [kind = '', ...words] = text.split(' ');
  const rest = words.join(' ');
  switch (kind) {
    case 'text': {
      const [face, capHeight, ...letters] = words;
      return {
        kind: 'flags',
        flags: [
          '--text',
          letters.join(' '),
          '--font',
          `fixtures/fonts/${face}.ttf`,
          '--cap-height',
          `${capHeight}mm`,
        ],
      };
    }
    case 'file':
      return { kind: 'flags', flags: [`fixtures/${rest}`] };
    case 'svg':
      return { kind: 'svg', svg: page(rest) };
    case 'path':
      return { kind: 'svg', svg: page(`<path d="${rest}"/>`) };
    default:
      return { kind: 'svg', svg: page(text.split(' + ').map(shapeOf).map(painted).join('')) };
  }
}

function page(content: string): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${PAGE_MM}mm" height="${PAGE_MM}mm" viewBox="${-PAGE_MM / 2} ${-PAGE_MM / 2} ${PAGE_MM} ${PAGE_MM}">${content}</svg>`;
}

function painted({ path, colour, at: [x, y] }: Shape): string {
  return `<path fill="${colour}" fill-rule="evenodd" transform="translate(${x} ${y})" d="${path}"/>`;
}

function shapeOf(text: string): Shape {
  const [, body = '', at, colour] =
    /^(.*?)(?: at (-?[\d.]+,-?[\d.]+))?(?: in (\w+))?$/u.exec(text.trim()) ?? [];
  const [x = 0, y = 0] = (at ?? '0,0').split(',').map(Number);
  return {
    path: body.split(' minus ').map(outline).join(' '),
    colour: colour ?? 'black',
    at: [x, y],
  };
}

/** Outlines are centred, so that one can be cut out of the middle of another. */
function outline(text: string): string {
  const [kind, ...numbers] = text.split(' ');
  const [a = 0, b = 0, c = 0] = numbers.map(Number);
  switch (kind) {
    case 'rect':
      return polygon(box(a, b));
    case 'bar':
      return polygon(box(a, b).map((point) => turned(point, c)));
    case 'disc':
      return circle(a / 2);
    case 'ring':
      return `${circle(a / 2)} ${circle(b / 2)}`;
    case 'triangle':
      return polygon([0, 1, 2].map((k) => onCircle(a / Math.sqrt(3), 120 * k - 90)));
    case 'star':
      return polygon(
        Array.from({ length: 10 }, (_, k) => onCircle(k % 2 === 0 ? a : a * INNER_OF_STAR, 36 * k - 90)),
      );
    case 'wedge':
      return polygon([
        [-a / 2, -b / 2],
        [a / 2, 0],
        [-a / 2, b / 2],
      ]);
    case 'heart': {
      const u = a / 4;
      return `M0,${3 * u} C${-4 * u},${0.5 * u} ${-1.5 * u},${-2.5 * u} 0,${-0.8 * u} C${1.5 * u},${-2.5 * u} ${4 * u},${0.5 * u} 0,${3 * u} Z`;
    }
    default:
      throw new Error(`"${text}" is no shape of cases.txt`);
  }
}

/** Inner over outer radius of the five-pointed star whose edges are straight through: (3 − √5)/2. */
const INNER_OF_STAR = (3 - Math.sqrt(5)) / 2;

type Place = readonly [number, number];

function box(width: number, height: number): readonly Place[] {
  const [x, y] = [width / 2, height / 2];
  return [
    [-x, -y],
    [x, -y],
    [x, y],
    [-x, y],
  ];
}

function onCircle(radius: number, deg: number): Place {
  return turned([radius, 0], -deg);
}

/** Counter-clockwise as seen: y runs down. */
function turned([x, y]: Place, deg: number): Place {
  const [cos, sin] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
  return [x * cos + y * sin, y * cos - x * sin];
}

function polygon(points: readonly Place[]): string {
  return `M${points.map((point) => point.join(',')).join(' L')} Z`;
}

function circle(radius: number): string {
  return `M${-radius},0 A${radius},${radius} 0 0 0 ${radius},0 A${radius},${radius} 0 0 0 ${-radius},0 Z`;
}
