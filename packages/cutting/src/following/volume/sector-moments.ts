import type { Cutter, ProfilePiece } from '../../cutters/cutter.ts';
import { adaptiveIntegral } from '../../integrals/adaptive-integral.ts';

/**
 * Integrals over height η of the circles of radius ρ around a cutter's axis, each split at the angle ψ with
 * cos ψ · slope = `sink`, the slope being height per radius; ψ is 0 where the slope is smaller.
 */
export interface SectorMoments {
  /** ∫ 2ρ sin ψ dη, mm². */
  readonly chordMm2: number;
  /** ∫ ψ dρ², mm². */
  readonly turnMm2: number;
  /** ∫ 2ρ dη, mm². */
  readonly widthMm2: number;
  /** ρ² at the top, mm². */
  readonly squareMm2: number;
}

/**
 * Tolerance of the slant around an arc with its centre off the cutter's axis, mm per mm: far below its use.
 */
const RING_SLANT_REL_TOL = 1e-6;
/**
 * Tolerance of the moments of an arc with its centre off the cutter's axis, relative to the square of the
 * radius.
 */
const RING_MOMENT_REL_TOL = 1e-10;

/** Moments up to a height above the tip, in closed form save for arcs with a centre off the axis. */
export function sectorMoments({ pieces }: Cutter, topMm: number, sink: number): SectorMoments {
  let chordMm2 = 0;
  let turnMm2 = 0;
  let widthMm2 = 0;
  let squareMm2 = 0;
  for (const piece of pieces) {
    const { fromHeightMm, fromRadiusMm: a, toHeightMm, toRadiusMm, arc } = piece;
    if (fromHeightMm > topMm) {
      break;
    }
    const height = Math.min(topMm, toHeightMm) - fromHeightMm;
    if (toHeightMm === fromHeightMm) {
      squareMm2 = toRadiusMm * toRadiusMm;
    } else if (arc === undefined && height > 0) {
      const gain = (toRadiusMm - a) / (toHeightMm - fromHeightMm);
      const b = a + gain * height;
      const angle = Math.acos(Math.min(1, sink * gain));
      chordMm2 += (a + b) * height * Math.sin(angle);
      turnMm2 += (b - a) * (b + a) * angle;
      widthMm2 += (a + b) * height;
      squareMm2 = b * b;
    } else if (arc !== undefined && height > 0) {
      const part = onArc(piece, arc, fromHeightMm + height, sink);
      chordMm2 += part.chordMm2;
      turnMm2 += part.turnMm2;
      widthMm2 += part.widthMm2;
      squareMm2 = part.squareMm2;
    }
  }
  const { toHeightMm, toRadiusMm } = pieces[pieces.length - 1];
  const upright = 2 * toRadiusMm * Math.max(0, topMm - toHeightMm);
  return { chordMm2: chordMm2 + upright, turnMm2, widthMm2: widthMm2 + upright, squareMm2 };
}

/**
 * ∫ 2ρ (sin `behindRad` − sin ψ) dσ up to a height, mm², σ the length of the profile per mm of radius: the
 * surface gained by steepening over the points between both angles, per mm that the cutter's axis moves away
 * from them.
 */
export function slantGain({ pieces }: Cutter, topMm: number, sink: number, behindRad: number): number {
  const behind = Math.sin(behindRad);
  let sum = 0;
  // length per mm of radius at the end of the piece before
  let before = 1;
  for (const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } of pieces) {
    if (fromHeightMm >= topMm || toRadiusMm === fromRadiusMm) {
      break;
    }
    if (arc === undefined) {
      const slope = (toHeightMm - fromHeightMm) / (toRadiusMm - fromRadiusMm);
      const after = Math.hypot(1, slope);
      const angle = Math.sin(Math.acos(Math.min(1, sink / slope)));
      sum += slope > 0 ? 2 * fromRadiusMm * (after - before) * Math.max(0, behind - angle) : 0;
      before = after;
      continue;
    }
    const { radiusMm: r, centreHeightMm, centreRadiusMm: c } = arc;
    const slopeAt = (height: number): number => {
      const below = Math.max(0, centreHeightMm - height);
      return Math.sqrt((r - below) * (r + below)) / below;
    };
    const [from, to] = [slopeAt(fromHeightMm), slopeAt(Math.min(topMm, toHeightMm))];
    const split = Math.min(to, Math.max(from, sink));
    const scale = Math.hypot(1, sink);
    const root = (x: number): number => Math.sqrt(Math.max(0, (x - sink) * (x + sink)));
    const ball = (x: number): number => behind * (x - Math.atan(x));
    const left = (x: number): number => root(x) - scale * Math.atan(root(x) / scale);
    sum += 2 * r * (ball(to) - ball(from) - left(to) + left(split));
    if (c > 0) {
      const ring = (x: number): number => (behind * x - (x > sink ? root(x) : 0)) / Math.hypot(1, x);
      const [low, high] = [
        adaptiveIntegral(ring, from, split, RING_SLANT_REL_TOL),
        adaptiveIntegral(ring, split, to, RING_SLANT_REL_TOL),
      ];
      sum += 2 * c * (low.value + high.value);
    }
    before = Math.hypot(1, to);
  }
  return sum;
}

/** Moments of an arc, by the angle at its centre from straight down, whose tangent is the slope. */
function onArc(
  piece: ProfilePiece,
  { radiusMm: r, centreHeightMm, centreRadiusMm: c }: NonNullable<ProfilePiece['arc']>,
  top: number,
  sink: number,
): SectorMoments {
  const angleAt = (height: number): number =>
    Math.acos(Math.min(1, Math.max(-1, (centreHeightMm - height) / r)));
  const [from, to] = [angleAt(piece.fromHeightMm), angleAt(top)];
  const width = (t: number): number => r * (r * (t - Math.sin(t) * Math.cos(t)) - 2 * c * Math.cos(t));
  const outer = c + r * Math.sin(to);
  const widths = { widthMm2: width(to) - width(from), squareMm2: outer * outer };
  const split = Math.max(from, Math.atan(sink));
  if (split >= to) {
    return { chordMm2: 0, turnMm2: 0, ...widths };
  }
  if (c === 0) {
    const [chordTo, turnTo] = onCentredArc(to, sink);
    const [chordFrom, turnFrom] = onCentredArc(split, sink);
    return { chordMm2: r * r * (chordTo - chordFrom), turnMm2: r * r * (turnTo - turnFrom), ...widths };
  }
  const angle = (t: number): number => Math.acos(Math.min(1, sink / Math.tan(t)));
  // ψ starts like a square root where the circles begin to be split
  const sum = (f: (t: number) => number): number =>
    adaptiveIntegral(
      (u) => 2 * u * (to - split) * f(split + (to - split) * u * u),
      0,
      1,
      RING_MOMENT_REL_TOL * outer * outer,
    ).value;
  return {
    chordMm2: sum((t) => 2 * (c + r * Math.sin(t)) * r * Math.sin(t) * Math.sin(angle(t))),
    turnMm2: sum((t) => 2 * (c + r * Math.sin(t)) * r * Math.cos(t) * angle(t)),
    ...widths,
  };
}

/** Antiderivatives of chord and turn on a unit ball over the angle from straight down. */
function onCentredArc(t: number, sink: number): [chord: number, turn: number] {
  const [sin, cos] = [Math.sin(t), Math.cos(t)];
  const scale = Math.sqrt(1 + sink * sink);
  const root = Math.sqrt(Math.max(0, (sin - sink * cos) * (sin + sink * cos)));
  const lag = Math.atan2(scale * cos, root) / scale;
  return [-(cos * root + lag), sin * sin * Math.atan2(root, sink * cos) + sink * lag];
}
