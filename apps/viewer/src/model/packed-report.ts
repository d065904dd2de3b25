import type { Point } from '@pourproof/plane';
import type { FindingPlace, PlaceKind, Report } from '@pourproof/proof';

/** Places of a finding in arrays that a worker hands over without a copy. A large drawing has thousands, with outlines of many points. */
interface PackedPlaces {
  /** `x0, y0, x1, y1, …`, mm. */
  readonly at: Float64Array;
  readonly what: readonly PlaceKind[];
  /** NaN where a place has none. */
  readonly lengthMm: Float64Array;
  readonly widthMm: Float64Array;
  readonly areaMm2: Float64Array;
  /** Lines before the end of the outline of each place, summed up. */
  readonly lineEnds: Uint32Array;
  /** Points before the end of each line, summed up. */
  readonly pointEnds: Uint32Array;
  /** `x0, y0, x1, y1, …` of the points of all lines, mm. */
  readonly points: Float64Array;
}

/** A report whose places are packed: its findings stand in it without. */
export interface PackedReport {
  readonly report: Report;
  readonly places: readonly PackedPlaces[];
}

/** A report, packed for its way to the page. */
export function packReport(report: Report): PackedReport {
  const places = report.findings.map(({ where }) => packPlaces(where));
  return { report: { ...report, findings: report.findings.map((each) => ({ ...each, where: [] })) }, places };
}

/** The memory behind what is packed, to be handed over with it. */
export function packedBuffers({ places }: PackedReport): ArrayBuffer[] {
  return places.flatMap((each) =>
    Object.values(each).flatMap((part) => (ArrayBuffer.isView(part) ? [part.buffer as ArrayBuffer] : [])),
  );
}

/** The report that was packed. Outlines are made when they are asked for, as a reader looks at one after the other. */
export function unpackReport({ report, places }: PackedReport): Report {
  const findings = report.findings.map((each, k) => {
    const packed = places[k] as PackedPlaces;
    return { ...each, where: packed.what.map((_, at): FindingPlace => new UnpackedPlace(packed, at)) };
  });
  return { ...report, findings };
}

function packPlaces(where: readonly FindingPlace[]): PackedPlaces {
  const lines = where.flatMap(({ outline }) => outline);
  const sized = (size: 'lengthMm' | 'widthMm' | 'areaMm2'): Float64Array =>
    Float64Array.from(where, (place) => place[size] ?? Number.NaN);
  return {
    at: pairs(where.map(({ atMm }) => atMm)),
    what: where.map(({ what }) => what),
    lengthMm: sized('lengthMm'),
    widthMm: sized('widthMm'),
    areaMm2: sized('areaMm2'),
    lineEnds: summedUp(where.map(({ outline }) => outline.length)),
    pointEnds: summedUp(lines.map(({ length }) => length)),
    points: pairs(lines.flat()),
  };
}

function pairs(points: readonly Point[]): Float64Array {
  const flat = new Float64Array(2 * points.length);
  points.forEach(([x, y], k) => {
    flat[2 * k] = x;
    flat[2 * k + 1] = y;
  });
  return flat;
}

function summedUp(counts: readonly number[]): Uint32Array {
  const ends = new Uint32Array(counts.length);
  let sum = 0;
  counts.forEach((count, k) => {
    sum += count;
    ends[k] = sum;
  });
  return ends;
}

/** A place among those that are packed. */
class UnpackedPlace implements FindingPlace {
  readonly #of: PackedPlaces;
  readonly #k: number;

  constructor(of: PackedPlaces, k: number) {
    this.#of = of;
    this.#k = k;
  }

  get atMm(): [x: number, y: number] {
    return pointOf(this.#of.at, this.#k);
  }

  get what(): PlaceKind {
    return this.#of.what[this.#k] as PlaceKind;
  }

  get lengthMm(): number | undefined {
    return known(this.#of.lengthMm[this.#k]);
  }

  get widthMm(): number | undefined {
    return known(this.#of.widthMm[this.#k]);
  }

  get areaMm2(): number | undefined {
    return known(this.#of.areaMm2[this.#k]);
  }

  get outline(): [x: number, y: number][][] {
    const { lineEnds, pointEnds, points } = this.#of;
    return parts(lineEnds, this.#k).map((line) =>
      parts(pointEnds, line).map((point) => pointOf(points, point)),
    );
  }

  /** What a saved report holds of it. */
  toJSON(): FindingPlace {
    const { atMm, outline, what, lengthMm, widthMm, areaMm2 } = this;
    return { atMm, outline, what, lengthMm, widthMm, areaMm2 };
  }
}

/** Indices of the parts of a whole. */
function parts(ends: Uint32Array, whole: number): number[] {
  const start = whole === 0 ? 0 : (ends[whole - 1] as number);
  return Array.from({ length: (ends[whole] as number) - start }, (_, k) => start + k);
}

function pointOf(pairs: Float64Array, k: number): [x: number, y: number] {
  return [pairs[2 * k] as number, pairs[2 * k + 1] as number];
}

function known(size: number | undefined): number | undefined {
  return Number.isNaN(size) ? undefined : size;
}
