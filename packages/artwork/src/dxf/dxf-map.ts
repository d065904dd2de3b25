import { type DxfRecord, numberOf } from './dxf-record.ts';

/**
 * An affine map of space: images of the x, y and z unit vectors, then of the origin. The drawing is what one
 * sees from above.
 */
export type DxfMap = readonly [
  xx: number,
  xy: number,
  xz: number,
  yx: number,
  yy: number,
  yz: number,
  zx: number,
  zy: number,
  zz: number,
  ox: number,
  oy: number,
  oz: number,
];

/** A map of a flat figure: centre and the images of its x and y unit vectors, seen from above. */
export interface PlaneMap {
  readonly ox: number;
  readonly oy: number;
  readonly xx: number;
  readonly xy: number;
  readonly yx: number;
  readonly yy: number;
}

/** Scales by unit, turns y down and moves: the outermost map of a drawing. */
export function pageMap(mmPerUnit: number, moveX: number, moveY: number): DxfMap {
  return [mmPerUnit, 0, 0, 0, -mmPerUnit, 0, 0, 0, mmPerUnit, moveX, moveY, 0];
}

/** The map that does `inner` first and `outer` after it. */
export function composeMaps(outer: DxfMap, inner: DxfMap): DxfMap {
  const [ax, ay, az] = mapVector(outer, inner[0], inner[1], inner[2]);
  const [bx, by, bz] = mapVector(outer, inner[3], inner[4], inner[5]);
  const [cx, cy, cz] = mapVector(outer, inner[6], inner[7], inner[8]);
  const [ox, oy, oz] = mapVector(outer, inner[9], inner[10], inner[11]);
  return [ax, ay, az, bx, by, bz, cx, cy, cz, ox + outer[9], oy + outer[10], oz + outer[11]];
}

function mapVector(m: DxfMap, x: number, y: number, z: number): [number, number, number] {
  return [m[0] * x + m[3] * y + m[6] * z, m[1] * x + m[4] * y + m[7] * z, m[2] * x + m[5] * y + m[8] * z];
}

/** Where a point of space lands on the drawing. */
export function mapPoint(m: DxfMap, x: number, y: number, z: number): [x: number, y: number] {
  return [m[0] * x + m[3] * y + m[6] * z + m[9], m[1] * x + m[4] * y + m[7] * z + m[10]];
}

/** The map of figures that are drawn in the xy plane at height `elevation`. */
export function planeAt(m: DxfMap, elevation: number): PlaneMap {
  const [ox, oy] = mapPoint(m, 0, 0, elevation);
  return { ox, oy, xx: m[0], xy: m[1], yx: m[3], yy: m[4] };
}

/**
 * The object coordinate system that codes 210, 220, 230 of an entity stand for, by the arbitrary axis rule of
 * the DXF reference ("Arbitrary Axis Algorithm"); `undefined` for the plain world plane.
 */
export function objectMap(record: DxfRecord): DxfMap | undefined {
  let nx = numberOf(record, 210, 0);
  let ny = numberOf(record, 220, 0);
  let nz = numberOf(record, 230, 1);
  const length = Math.hypot(nx, ny, nz);
  if (!(length > 0) || (nx === 0 && ny === 0 && nz > 0)) {
    return undefined;
  }
  nx /= length;
  ny /= length;
  nz /= length;
  // close to the z axis the x axis is y × normal, elsewhere z × normal
  const nearZ = Math.abs(nx) < 1 / 64 && Math.abs(ny) < 1 / 64;
  let [ax, ay, az] = nearZ ? [nz, 0, -nx] : [-ny, nx, 0];
  const l = Math.hypot(ax, ay, az);
  ax /= l;
  ay /= l;
  az /= l;
  return [ax, ay, az, ny * az - nz * ay, nz * ax - nx * az, nx * ay - ny * ax, nx, ny, nz, 0, 0, 0];
}
