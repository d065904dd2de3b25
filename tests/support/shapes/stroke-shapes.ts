/** Points of an arc as chords within a tolerance, both ends included; from one angle to the other, radians. */
export function arc(
  cx: number,
  cy: number,
  r: number,
  from: number,
  to: number,
  tolerance: number,
): number[] {
  const parts = Math.max(1, Math.ceil(Math.abs(to - from) / (2 * Math.acos(1 - tolerance / r))));
  return Array.from({ length: parts + 1 }, (_, k) => from + ((to - from) * k) / parts).flatMap((t) => [
    cx + r * Math.cos(t),
    cy + r * Math.sin(t),
  ]);
}

/** A bar of the given width with round ends. */
export function stadium(length: number, width: number, tolerance: number): number[] {
  return [
    ...arc(length, 0, width / 2, -Math.PI / 2, Math.PI / 2, tolerance),
    ...arc(0, 0, width / 2, Math.PI / 2, (3 * Math.PI) / 2, tolerance),
  ];
}

/** A wedge of the given angle and length with its point at the origin. */
export function wedge(deg: number, length: number): number[] {
  const half = length * Math.tan((deg * Math.PI) / 360);
  return [0, 0, length, -half, length, half];
}

/** A wedge of the given angle whose tip is rounded with radius r around the origin, `far` mm long. */
export function roundWedge(deg: number, r: number, far: number, tolerance: number): number[] {
  const half = (deg * Math.PI) / 360;
  const side = r / Math.cos(half) + far * Math.tan(half);
  const tip = arc(0, 0, r, Math.PI / 2 + half, (3 * Math.PI) / 2 - half, tolerance);
  return [...tip, far, -side, far, side];
}

/** Two bars of one width whose outer edges meet in a point at the given angle. */
export function vee(deg: number, length: number, width: number): number[] {
  const half = (deg * Math.PI) / 360;
  const along = [Math.cos(half), Math.sin(half)];
  const out = [-Math.sin(half), Math.cos(half)];
  const inner = width / Math.sin(half);
  return [
    0,
    0,
    length * along[0],
    -length * along[1],
    length * along[0] - width * out[0],
    -length * along[1] + width * out[1],
    inner,
    0,
    length * along[0] - width * out[0],
    length * along[1] - width * out[1],
    length * along[0],
    length * along[1],
  ];
}

/**
 * A stroke along x from 0 to `length` whose half width at x is given, in so many steps that a smooth one stays within the tolerance where it
 * bends no more than 1/mm; its middle line is bent by `rise`.
 */
export function swelling(
  length: number,
  halfWidth: (x: number) => number,
  tolerance: number,
  rise: (x: number) => number = () => 0,
): number[] {
  const parts = Math.ceil(length / Math.sqrt(8 * tolerance));
  const xs = Array.from({ length: parts + 1 }, (_, k) => (length * k) / parts);
  return [
    ...xs.flatMap((x) => [x, rise(x) - halfWidth(x)]),
    ...xs.toReversed().flatMap((x) => (halfWidth(x) > 0 ? [x, rise(x) + halfWidth(x)] : [])),
  ];
}

/** A stem 2 mm wide and 12 mm high around x = 0, whose foot at y = 0 is the right half given from its outer end up to the stem, mirrored. */
export function footed(rightHalf: readonly number[]): number[] {
  const left: number[] = [];
  for (let i = rightHalf.length - 2; i >= 0; i -= 2) {
    left.push(-rightHalf[i], rightHalf[i + 1]);
  }
  return [...rightHalf, 1, -12, -1, -12, ...left];
}
