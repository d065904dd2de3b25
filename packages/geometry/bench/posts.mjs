import { packRings } from '@pourproof/plane';
import { dice } from './dice.mjs';

/**
 * Places of posts 1 apart in rows √3/2 apart, every other one set between: straight, or bent through a share of a full turn; each off its
 * place by up to half of `jitter`.
 */
export function postPlaces({ count, rows, turn = 0, jitter = 0 }) {
  const random = dice();
  const columns = Math.max(3, Math.ceil(count / rows));
  const radius = columns / (2 * Math.PI * Math.max(turn, 1e-9));
  return Array.from({ length: columns * rows }, (_, k) => {
    const row = Math.floor(k / columns);
    const x = (k % columns) + (row % 2) / 2 + jitter * (random() - 0.5);
    const y = (row * Math.sqrt(3)) / 2 + jitter * (random() - 0.5);
    return turn > 0 ? [(radius + y) * Math.cos(x / radius), (radius + y) * Math.sin(x / radius)] : [x, y];
  });
}

/** A plate with posts at some places, each a square on its corner, and so much room around them, mm. */
export function plateWithPosts(places, size, room) {
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of places) {
    [left, top] = [Math.min(left, x - room), Math.min(top, y - room)];
    [right, bottom] = [Math.max(right, x + room), Math.max(bottom, y + room)];
  }
  return packRings([
    [left, top, right, top, right, bottom, left, bottom],
    ...places.map(([x, y]) => [x + size, y, x, y - size, x - size, y, x, y + size]),
  ]);
}
