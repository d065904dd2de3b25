import { type DxfRecord, numberOf } from './dxf-record.ts';

/** One edge of a hatch boundary: the groups that follow its type. */
export interface HatchEdge {
  /** 1 line, 2 circle arc, 3 ellipse arc, 4 spline (code 72). */
  readonly kind: number;
  readonly data: DxfRecord;
}

/** One boundary loop of a HATCH. */
export interface HatchLoop {
  /** Bits of code 92: 1 external, 2 polyline, 8 text box, 16 outermost. */
  readonly flags: number;
  /** `x, y, bulge` per vertex, for a polyline loop. */
  readonly vertices: readonly (readonly [x: number, y: number, bulge: number])[];
  readonly edges: readonly HatchEdge[];
}

/** Codes that end the data of a loop or an edge. */
const LOOP_END: ReadonlySet<number> = new Set([75, 76, 92, 98]);

/**
 * The boundary loops of a HATCH, by the order of its groups (DXF reference, "Boundary path data"). Counts in
 * the file are not relied on.
 */
export function hatchLoops(hatch: DxfRecord): HatchLoop[] {
  const { codes, values } = hatch;
  const loops: HatchLoop[] = [];
  let at = codes.indexOf(91) + 1;
  while (at > 0 && codes[at] === 92) {
    const flags = values[at] as number;
    let end = at + 1;
    while (end < codes.length && !LOOP_END.has(codes[end] as number)) {
      end++;
    }
    const body = part(hatch, at + 1, end);
    loops.push({
      flags,
      vertices: (flags & 2) !== 0 ? loopVertices(body) : [],
      edges: (flags & 2) !== 0 ? [] : loopEdges(body),
    });
    at = end;
  }
  return loops;
}

function part(record: DxfRecord, from: number, to: number): DxfRecord {
  const { type, line } = record;
  return {
    type,
    line,
    codes: record.codes.slice(from, to),
    values: record.values.slice(from, to),
    parts: [],
  };
}

function loopVertices(body: DxfRecord): [number, number, number][] {
  const vertices: [number, number, number][] = [];
  body.codes.forEach((code, i) => {
    const value = body.values[i] as number;
    const last = vertices.at(-1);
    if (code === 10) {
      vertices.push([value, body.codes[i + 1] === 20 ? (body.values[i + 1] as number) : Number.NaN, 0]);
    } else if (code === 42 && last) {
      last[2] = value;
    }
  });
  return vertices;
}

function loopEdges(body: DxfRecord): HatchEdge[] {
  const edges: HatchEdge[] = [];
  let at = body.codes.indexOf(72);
  while (at >= 0) {
    const next = body.codes.indexOf(72, at + 1);
    const data = part(body, at + 1, next < 0 ? body.codes.length : next);
    edges.push({ kind: numberOf(part(body, at, at + 1), 72, 0), data });
    at = next;
  }
  return edges;
}
