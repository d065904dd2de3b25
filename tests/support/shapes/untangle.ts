/** A simple ring through the points of another: crossings are undone by reversing the stretch between until none is left. */
export function untangle(ring: readonly number[]): number[] {
  const count = ring.length / 2;
  const p = Array.from({ length: count }, (_, i) => [ring[2 * i], ring[2 * i + 1]] as const);
  const turn = (
    a: readonly [number, number],
    b: readonly [number, number],
    c: readonly [number, number],
  ): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  const crosses = (i: number, j: number): boolean => {
    const [a, b, c, d] = [p[i], p[i + 1], p[j], p[(j + 1) % count]];
    return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
  };
  for (let changed = true; changed; ) {
    changed = false;
    for (let i = 0; i < count; i++) {
      for (let j = i + 2; j < count; j++) {
        if (!(i === 0 && j === count - 1) && crosses(i, j)) {
          p.splice(i + 1, j - i, ...p.slice(i + 1, j + 1).reverse());
          changed = true;
        }
      }
    }
  }
  return p.flat();
}
