import type { ByteReader } from './byte-reader.ts';
import type { GlyfStreams } from './read-glyf.ts';

/** Flags of a point (OpenType, "glyf"). */
const ON_CURVE = 0x01;
const X_SHORT = 0x02;
const Y_SHORT = 0x04;
const X_SAME_OR_POSITIVE = 0x10;
const Y_SAME_OR_POSITIVE = 0x20;
const OVERLAPS = 0x40;

interface Points {
  readonly flags: number[];
  /** Steps from point to point. */
  readonly dx: number[];
  readonly dy: number[];
}

/**
 * A glyph of contours as a font file has it.
 *
 * @param box the box that the file states; `null` where it is that of the points
 * @see W3C WOFF File Format 2.0 (2022) §5.2
 */
export function simpleGlyph(
  { points, flags, glyphs, instructions }: GlyfStreams,
  contours: number,
  box: Uint8Array | null,
  overlaps: boolean,
): Uint8Array {
  const ends: number[] = [];
  let count = 0;
  for (let k = 0; k < contours; k++) {
    count += points.short();
    ends.push(count - 1);
  }
  const drawn: Points = { flags: [], dx: [], dy: [] };
  for (let k = 0; k < count; k++) {
    addPoint(drawn, flags.u8(), glyphs);
  }
  if (overlaps && count > 0) {
    drawn.flags[0] = (drawn.flags[0] as number) | OVERLAPS;
  }
  const hints = instructions.bytes(glyphs.short());
  return Uint8Array.from([
    ...words([contours]),
    ...(box ?? words(boxOf(drawn))),
    ...words(ends),
    ...words([hints.length]),
    ...hints,
    ...packed(drawn),
  ]);
}

function addPoint({ flags, dx, dy }: Points, flag: number, glyphs: ByteReader): void {
  const [x, y] = step(flag & 0x7f, glyphs);
  flags.push((flag & 0x80) === 0 ? ON_CURVE : 0);
  dx.push(x);
  dy.push(y);
}

/** A step of one to four bytes, by the table of triplets. */
function step(flag: number, glyphs: ByteReader): readonly [x: number, y: number] {
  const signed = (sign: number, size: number): number => ((sign & 1) === 0 ? -size : size);
  const first = glyphs.u8();
  if (flag < 10) {
    return [0, signed(flag, ((flag & 14) << 7) + first)];
  }
  if (flag < 20) {
    return [signed(flag, (((flag - 10) & 14) << 7) + first), 0];
  }
  if (flag < 84) {
    const base = flag - 20;
    return [
      signed(flag, 1 + (base & 0x30) + (first >> 4)),
      signed(flag >> 1, 1 + ((base & 0x0c) << 2) + (first & 0x0f)),
    ];
  }
  const second = glyphs.u8();
  if (flag < 120) {
    const base = flag - 84;
    return [
      signed(flag, 1 + (Math.floor(base / 12) << 8) + first),
      signed(flag >> 1, 1 + (((base % 12) >> 2) << 8) + second),
    ];
  }
  const third = glyphs.u8();
  if (flag < 124) {
    return [signed(flag, (first << 4) + (second >> 4)), signed(flag >> 1, ((second & 0x0f) << 8) + third)];
  }
  return [signed(flag, (first << 8) + second), signed(flag >> 1, (third << 8) + glyphs.u8())];
}

function boxOf({ dx, dy }: Points): readonly number[] {
  const [xs, ys] = [dx, dy].map((steps) => {
    let at = 0;
    return steps.map((each) => (at += each));
  }) as [number[], number[]];
  const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));
  const most = (values: readonly number[]): number => values.reduce((a, b) => Math.max(a, b));
  return xs.length === 0 ? [0, 0, 0, 0] : [least(xs), least(ys), most(xs), most(ys)];
}

/** Flags, then all steps in x, then all in y, each as short as it can be. */
function packed({ flags, dx, dy }: Points): readonly number[] {
  const xBytes: number[] = [];
  const yBytes: number[] = [];
  const all = flags.map(
    (flag, k) =>
      flag |
      packStep(dx[k] as number, X_SHORT, X_SAME_OR_POSITIVE, xBytes) |
      packStep(dy[k] as number, Y_SHORT, Y_SAME_OR_POSITIVE, yBytes),
  );
  return [...all, ...xBytes, ...yBytes];
}

function packStep(size: number, short: number, sameOrPositive: number, bytes: number[]): number {
  if (size === 0) {
    return sameOrPositive;
  }
  if (Math.abs(size) < 256) {
    bytes.push(Math.abs(size));
    return size > 0 ? short | sameOrPositive : short;
  }
  bytes.push(...words([size]));
  return 0;
}

/** Numbers of two bytes each, negative ones as their complement. */
function words(values: readonly number[]): readonly number[] {
  return values.flatMap((value) => [(value >> 8) & 0xff, value & 0xff]);
}
