/** Distance of the teeth along the wall, mm on paper at the scale of the picture: close enough to read as one edge. */
const STEP_MM = 0.8;

/**
 * A comb along a wall as SVG path data in mm: teeth that leave the wall outwards along the fibres, each as long as colour is
 * likely to travel there.
 *
 * @param wall open line with the pocket on its right as seen with y down
 * @param fibre unit vector of the fibres on the face
 * @param reachMm likely travel from a wall square to the fibres
 */
export function combPath(wall: Float64Array, fibre: readonly [number, number], reachMm: number): string {
  let data = '';
  let ahead = STEP_MM / 2;
  for (let i = 0; i + 3 < wall.length; i += 2) {
    const [x, y, nextX, nextY] = wall.subarray(i, i + 4) as unknown as [number, number, number, number];
    const length = Math.hypot(nextX - x, nextY - y);
    if (length === 0) {
      continue;
    }
    const dx = (nextX - x) / length;
    const dy = (nextY - y) / length;
    // outwards is (dy, -dx): rings of a pocket turn from +x to +y
    const exposure = fibre[0] * dy - fibre[1] * dx;
    const toothX = fibre[0] * reachMm * exposure;
    const toothY = fibre[1] * reachMm * exposure;
    for (; ahead <= length; ahead += STEP_MM) {
      data += `M${fixed(x + dx * ahead)} ${fixed(y + dy * ahead)}l${fixed(toothX)} ${fixed(toothY)}`;
    }
    ahead -= length;
  }
  return data;
}

function fixed(mm: number): string {
  return String(Math.round(mm * 1000) / 1000);
}
