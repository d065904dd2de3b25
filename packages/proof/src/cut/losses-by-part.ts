import { hardlyNarrower, type MedialAxis, medialAxis } from '@pourproof/geometry';
import type { CleanRegion } from '@pourproof/plane';
import type { Measured } from '../measured.ts';
import { partsOf } from '../slivers/beside-wood.ts';
import { leftBy } from './bits-that-fit.ts';
import { graded, type Losses } from './losses.ts';

/** A bit at a size of the artwork. */
export interface BitAtSize {
  readonly diameterMm: number;
  /** How much larger the artwork is. */
  readonly factor: number;
}

/** Whether what a bit leaves of a part will do. */
export type WillDo = (losses: Losses) => boolean;

/**
 * What flat bits leave of an artwork, for searches that ask about many of them: parts of the artwork are looked at by themselves, each
 * when it is needed, and of parts that are equal only one.
 */
export class LossesByPart {
  readonly #measured: Measured;
  /** Those that bound a search last come first. */
  #parts: readonly Part[];
  /** Whether a bit of a width is taken as narrower, see `bitsThatFit`. */
  readonly #isNarrower = new Map<number, boolean>();
  #narrowFor: Part | null = null;
  readonly #losses = new Map<Part, Map<string, Losses>>();

  constructor(measured: Measured) {
    this.#measured = measured;
    this.#parts = partsOfAxis(measured.axis);
  }

  /**
   * What a search finds for all parts together, which asks whether some bit will do at some size. It is made for those parts alone that bind: where
   * what it has found will not do for another one, that one joins them.
   *
   * @param search gives `null` where nothing will do
   */
  found(
    search: (isEnough: (bit: BitAtSize) => boolean) => BitAtSize | null,
    willDo: WillDo,
  ): BitAtSize | null {
    const binding: Part[] = [];
    for (;;) {
      const bit = search((tried) => binding.every((part) => willDo(this.#lossesOf(part, tried))));
      const other = bit === null ? undefined : this.#parts.find((part) => !willDo(this.#lossesOf(part, bit)));
      if (other === undefined || binding.includes(other)) {
        return bit;
      }
      binding.push(other);
      this.#parts = [other, ...this.#parts.filter((part) => part !== other)];
    }
  }

  /** What a bit leaves of each part that differs from others. */
  of(bit: BitAtSize): readonly Losses[] {
    return this.#parts.map((part) => this.#lossesOf(part, bit));
  }

  #lossesOf(part: Part, { diameterMm, factor }: BitAtSize): Losses {
    const { job, drawing, cutArea, stages } = this.#measured;
    const key = `${diameterMm} ${factor}`;
    const known = this.#losses.get(part)?.get(key);
    if (known !== undefined) {
      return known;
    }
    stages.poll();
    // scaling the artwork up is the same as scaling the bit down
    const widthMm = diameterMm / factor;
    const pieces = leftBy(this.#axisOf(part), widthMm, drawing.toleranceMm, this.#isTakenNarrower(widthMm));
    const losses = graded(pieces, { toleranceMm: job.toleranceMm, isAllLost: cutArea === 0, factor });
    this.#losses.set(part, (this.#losses.get(part) ?? new Map<string, Losses>()).set(key, losses));
    return losses;
  }

  /** For all parts, whichever of them it is for; the one that it was for last is asked first. */
  #isTakenNarrower(widthMm: number): boolean {
    const { drawing } = this.#measured;
    const known = this.#isNarrower.get(widthMm);
    if (known !== undefined) {
      return known;
    }
    const isFor = (part: Part): boolean =>
      hardlyNarrower(this.#axisOf(part), widthMm / 2, drawing.toleranceMm).fitsAsDrawn;
    const last = this.#narrowFor;
    const found = last !== null && isFor(last) ? last : this.#parts.find(isFor);
    this.#narrowFor = found ?? last;
    this.#isNarrower.set(widthMm, found !== undefined);
    return found !== undefined;
  }

  #axisOf(part: Part): MedialAxis {
    part.axis ??= medialAxis(part.region);
    return part.axis;
  }
}

/** A part of an artwork, with its axis once it is needed. */
interface Part {
  readonly region: CleanRegion;
  axis: MedialAxis | null;
}

const known = new WeakMap<MedialAxis, readonly Part[]>();
/** Parts whose points differ by less are equal, as a letter that comes again: steps a mm (our choice: a nanometre). */
const EQUAL_STEPS = 1e6;

function partsOfAxis(axis: MedialAxis): readonly Part[] {
  const parts = known.get(axis) ?? unequalParts(axis.region);
  known.set(axis, parts);
  return parts;
}

/** The parts of a region without those that equal another one but for their place. */
function unequalParts(region: CleanRegion): readonly Part[] {
  const byShape = new Map<string, Part>();
  for (const part of partsOf(region)) {
    const [x = 0, y = 0] = part.coords;
    const steps = part.coords.map((at, k) => Math.round((at - (k % 2 === 0 ? x : y)) * EQUAL_STEPS));
    const shape = `${part.ringEnds.join()} ${steps.join()}`;
    if (!byShape.has(shape)) {
      byShape.set(shape, { region: part, axis: null });
    }
  }
  return [...byShape.values()];
}
