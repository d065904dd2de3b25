import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import type { Source } from 'pourproof';
import { fixture } from '../cli/captured-run.ts';

/** A file with its content. */
export interface Held {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** A job to be vetted through every way in: what a maker has on the bench, none of it read yet. */
export interface Trial {
  readonly name: string;
  /** The drawing; `null` for lettering. */
  readonly artwork: Held | null;
  /** The words; `''` for a drawing. */
  readonly text: string;
  readonly font: Held | null;
  /** Keys of the job file but those that name artwork, text and font. */
  readonly job: object;
  /** Content of `materials.json`. */
  readonly materials?: object;
  /** Content of a file of coupons. */
  readonly coupons?: object;
}

/** A file of the fixtures. */
export function held(path: string): Held {
  return { name: basename(path), bytes: new Uint8Array(readFileSync(fixture(path))) };
}

/** A file made up here. */
export function made(name: string, content: string | Uint8Array): Held {
  return { name, bytes: typeof content === 'string' ? new TextEncoder().encode(content) : content };
}

type Extras = Partial<Pick<Trial, 'font' | 'materials' | 'coupons'>>;

/** A drawing and a job. */
export function drawn(name: string, artwork: Held, job: object, extras: Extras = {}): Trial {
  return { name, artwork, text: '', font: null, job, ...extras };
}

/** Words, a font (`null` for none) and a job. */
export function lettered(name: string, text: string, font: Held | null, job: object): Trial {
  return { name, artwork: null, text, font, job };
}

/** The source of a trial. */
export function sourceOf({ artwork, text, font }: Trial): Source {
  return artwork === null
    ? { kind: 'lettering', text, font: font?.bytes ?? null }
    : { kind: 'file', ...artwork, font: font?.bytes ?? null };
}

/** The whole job file of a trial. */
export function jobOf({ artwork, text, font, job }: Trial): object {
  return {
    schema: 'pourproof/job@1',
    ...(artwork === null ? { text } : { artwork: artwork.name }),
    ...(font === null ? {} : { font: font.name }),
    ...job,
  };
}
