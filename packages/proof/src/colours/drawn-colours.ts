import { type Job, JobError, nearestWord, type SettingKey } from '@pourproof/job';
import {
  type Colourant,
  type Lab,
  paintHex,
  paintLab,
  plainColourWord,
  resinColours,
} from '@pourproof/materials';
import type { Drawing, DrawnShape } from '@pourproof/plane';

/** A colour of a drawing as a maker counts them: what is painted in it, or what lies on a layer that the job names. */
export interface DrawnColour {
  /** `#rrggbb`, or the name of the layer. */
  readonly name: string;
  /** Id of the resin colour, or `#rrggbb`; `null` where nobody said. */
  readonly resin: string | null;
  /** Colour of the cured resin; `null` where it is not known. */
  readonly lab: Lab | null;
  readonly colourant: Colourant;
}

/** The colours of a drawing, and which of them each shape has. */
export interface DrawnColours {
  /** In the order in which they are first drawn. */
  readonly all: readonly DrawnColour[];
  readonly of: (shape: DrawnShape) => DrawnColour;
  /**
   * The colour that a name of the job stands for: a layer, a paint, or the one paint that is nearest to that plain word.
   *
   * @throws {JobError} when the drawing has none
   */
  readonly named: (name: string, key: SettingKey) => DrawnColour;
}

/**
 * The colours of a drawing with their resins: as the job pairs them, else the job's one colour, else that of the paint. A drawing in one paint says
 * nothing of its resin: most are drawn in black whatever is poured.
 *
 * @throws {JobError} when the job names a colour or layer that is not drawn
 */
export function drawnColours(drawing: Drawing, job: Job): DrawnColours {
  const asked = [...job.colourOf.map(({ drawn }) => drawn), ...job.rounds.flatMap(({ drawn }) => drawn)];
  const layers = new Map(
    drawing.shapes.flatMap(({ layer }) =>
      asked.some((name) => isSame(name, layer)) ? [[layer.toLowerCase(), layer] as const] : [],
    ),
  );
  const nameOf = ({ layer, colour }: DrawnShape): string => layers.get(layer.toLowerCase()) ?? colour;
  const paints = new Map(drawing.shapes.map((shape) => [nameOf(shape), shape.colour]));
  const named = (name: string, key: SettingKey): string => {
    const found = layers.get(name.toLowerCase()) ?? paintNamed(name, [...paints.keys()]);
    if (found === null) {
      throw new JobError('colour-not-drawn', key, unknownName(name, drawing));
    }
    return found;
  };
  const resins = new Map(job.colourOf.map(({ drawn, resin }) => [named(drawn, 'colourOf'), resin] as const));
  const all = [...paints].map(([name, paint]): DrawnColour => {
    const resin = resins.get(name) ?? job.colour ?? (paints.size > 1 ? paint : null);
    return { name, resin, lab: resin === null ? null : labOf(resin), colourant: job.colourant };
  });
  const byName = new Map(all.map((each) => [each.name, each]));
  const colourOf = (name: string): DrawnColour => byName.get(name) as DrawnColour;
  return {
    all,
    of: (shape) => colourOf(nameOf(shape)),
    named: (name, key) => colourOf(named(name, key)),
  };
}

/**
 * A name that a job may give a colour: the plain word of its paint where no other one of the drawing has it, else the paint; layers by their names.
 *
 * @param all names of all colours of the drawing
 */
export function typedColour(name: string, all: readonly string[]): string {
  const word = isPaint(name) ? plainColourWord(name) : name;
  return isPaint(name) && paintNamed(word, all) !== name ? name : word;
}

function isPaint(name: string): boolean {
  return paintHex(name) === name;
}

/** The colours of a drawing that is part of another. */
export function coloursIn({ shapes }: Drawing, whole: DrawnColours): DrawnColours {
  const here = new Set(shapes.map(whole.of));
  return { ...whole, all: whole.all.filter((colour) => here.has(colour)) };
}

function isSame(name: string, layer: string): boolean {
  return layer !== '' && name.toLowerCase() === layer.toLowerCase();
}

/** The drawn paint of a name: of just that value, or the only one that is nearest to that plain word. */
function paintNamed(name: string, paints: readonly string[]): string | null {
  const hex = paintHex(name);
  if (hex !== null && paints.includes(hex)) {
    return hex;
  }
  const near = paints.filter((paint) => isPaint(paint) && plainColourWord(paint) === name.toLowerCase());
  return near.length === 1 ? (near[0] ?? null) : null;
}

function labOf(resin: string): Lab {
  return resin in resinColours ? resinColours[resin as keyof typeof resinColours].value : paintLab(resin);
}

function unknownName(
  name: string,
  { shapes }: Drawing,
): { readonly name: string; readonly known: readonly string[]; readonly near: string | null } {
  const paints = [...new Set(shapes.map(({ colour }) => colour))];
  const layers = [...new Set(shapes.map(({ layer }) => layer))].filter((layer) => layer !== '');
  const words = paints.map(plainColourWord);
  return {
    name,
    known: [
      ...paints.map((paint) => `${plainColourWord(paint)} (${paint})`),
      ...layers.map((layer) => `layer "${layer}"`),
    ],
    near: nearestWord(name, [...words, ...layers]),
  };
}
