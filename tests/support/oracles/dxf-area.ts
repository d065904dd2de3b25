import dxfParser from 'dxf-parser';

/** The parser's class: its types describe the module, Node hands over the class itself. */
const DxfParser = dxfParser as unknown as new () => { parseSync(text: string): { entities: Entity[] } };

/** What an independent reader of DXF sees: closed outlines, or parts of them, as dense points, y up, and their layers. */
export interface ParsedOutline {
  readonly layer: string;
  readonly type: string;
  /** Exact ∫ (x dy − y dx) / 2 along it, from bulges and control points: of all parts of an outline together its area, with the sign of its direction. */
  readonly areaMm2: number;
  /** `[x, y, …]` on the outline. */
  readonly points: readonly number[];
}

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly shape?: boolean;
  readonly closed?: boolean;
  readonly vertices?: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
  readonly controlPoints?: readonly { readonly x: number; readonly y: number }[];
  readonly knotValues?: readonly number[];
}

/** Points between the ends of each side. */
const BETWEEN = 16;

/**
 * Reads LWPOLYLINEs and SPLINEs made of cubic Béziers with dxf-parser, and measures them by their own formulas.
 *
 * @throws where open ones do not close into outlines, each beginning exactly where another one ends
 */
export function parsedOutlines(text: string): readonly ParsedOutline[] {
  const { entities } = new DxfParser().parseSync(text);
  const loose = new Map<string, number>();
  for (const { layer, shape, closed, vertices, controlPoints = [] } of entities) {
    if (shape !== true && closed !== true) {
      const points = vertices ?? controlPoints;
      for (const [point, side] of [
        [points[0], 1],
        [points.at(-1), -1],
      ] as const) {
        const key = `${layer} ${point?.x} ${point?.y}`;
        loose.set(key, (loose.get(key) ?? 0) + side);
      }
    }
  }
  if ([...loose.values()].some((count) => count !== 0)) {
    throw new Error('an outline is open');
  }
  return entities.map((entity) => ({
    layer: entity.layer,
    type: entity.type,
    ...(entity.type === 'SPLINE' ? measuredSpline(entity) : measuredPolyline(entity)),
  }));
}

function measuredPolyline({ vertices = [], shape }: Entity): Pick<ParsedOutline, 'areaMm2' | 'points'> {
  const points: number[] = [];
  let area = 0;
  vertices.slice(0, shape === true ? undefined : -1).forEach(({ x, y, bulge = 0 }, k) => {
    const to = vertices[(k + 1) % vertices.length]!;
    const [dx, dy] = [to.x - x, to.y - y];
    const turn = 4 * Math.atan(bulge);
    area += (x * to.y - y * to.x) / 2;
    if (bulge === 0) {
      for (let p = 0; p < BETWEEN; p++) {
        points.push(x + (dx * p) / BETWEEN, y + (dy * p) / BETWEEN);
      }
      return;
    }
    const radius = Math.hypot(dx, dy) / (2 * Math.sin(Math.abs(turn) / 2));
    area += (Math.sign(turn) * radius * radius * (Math.abs(turn) - Math.sin(Math.abs(turn)))) / 2;
    const up = (1 - bulge * bulge) / (4 * bulge);
    const [cx, cy] = [x + dx / 2 - dy * up, y + dy / 2 + dx * up];
    for (let p = 0; p < 4 * BETWEEN; p++) {
      const t = (turn * p) / (4 * BETWEEN);
      const [ux, uy] = [x - cx, y - cy];
      points.push(cx + ux * Math.cos(t) - uy * Math.sin(t), cy + ux * Math.sin(t) + uy * Math.cos(t));
    }
  });
  return { areaMm2: area, points };
}

/** A spline whose inner knots are threefold is a row of Béziers by its control points, three and one more for each. */
function measuredSpline({
  controlPoints = [],
  knotValues = [],
}: Entity): Pick<ParsedOutline, 'areaMm2' | 'points'> {
  const n = (controlPoints.length - 1) / 3;
  const knots = [0, ...Array.from({ length: n + 1 }, (_, k) => [k, k, k]).flat(), n];
  if (String(knots) !== String(knotValues)) {
    throw new Error('the knots are not those of a row of Béziers');
  }
  const points: number[] = [];
  let area = 0;
  for (let k = 0; k < n; k++) {
    const [a, b, c, d] = controlPoints.slice(3 * k, 3 * k + 4) as { x: number; y: number }[];
    const cross = (p: { x: number; y: number }, q: { x: number; y: number }): number => p.x * q.y - p.y * q.x;
    area +=
      (6 * cross(a!, b!) +
        3 * cross(a!, c!) +
        cross(a!, d!) +
        3 * cross(b!, c!) +
        3 * cross(b!, d!) +
        6 * cross(c!, d!)) /
      20;
    for (let p = 0; p < 2 * BETWEEN; p++) {
      const t = p / (2 * BETWEEN);
      const s = 1 - t;
      const w = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t] as const;
      points.push(
        w[0] * a!.x + w[1] * b!.x + w[2] * c!.x + w[3] * d!.x,
        w[0] * a!.y + w[1] * b!.y + w[2] * c!.y + w[3] * d!.y,
      );
    }
  }
  return { areaMm2: area, points };
}
