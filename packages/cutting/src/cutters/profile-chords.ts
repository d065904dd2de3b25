import type { Cutter, ProfilePiece } from './cutter.ts';

/** A straight piece of a profile, or a chord of an arc: it has one lean. */
export interface ProfileChord {
  readonly fromHeightMm: number;
  readonly fromRadiusMm: number;
  readonly toHeightMm: number;
  readonly toRadiusMm: number;
  /** Angle of the wall from the vertical; π/2 where it is level. */
  readonly leanRad: number;
}

/**
 * The profile up to a height as chords: straight pieces as they are, each arc in `perArc` chords of equal
 * turn, and an upright one above the profile.
 */
export function profileChords(cutter: Cutter, heightMm: number, perArc: number): readonly ProfileChord[] {
  const chords: ProfileChord[] = [];
  for (const piece of cutter.pieces) {
    if (piece.fromHeightMm < heightMm) {
      chords.push(...chordsOf(piece, heightMm, perArc));
    }
  }
  const { toHeightMm, toRadiusMm } = cutter.pieces[cutter.pieces.length - 1];
  if (heightMm > toHeightMm) {
    chords.push(chord(toHeightMm, toRadiusMm, heightMm, toRadiusMm));
  }
  return chords;
}

function chordsOf(piece: ProfilePiece, top: number, perArc: number): ProfileChord[] {
  const { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, arc } = piece;
  if (arc === undefined) {
    const share = toHeightMm > top ? (top - fromHeightMm) / (toHeightMm - fromHeightMm) : 1;
    const end = fromRadiusMm + share * (toRadiusMm - fromRadiusMm);
    return [chord(fromHeightMm, fromRadiusMm, Math.min(top, toHeightMm), end)];
  }
  const angleAt = (height: number): number =>
    Math.asin(Math.min(1, Math.max(-1, (height - arc.centreHeightMm) / arc.radiusMm)));
  const [from, to] = [angleAt(fromHeightMm), angleAt(Math.min(top, toHeightMm))];
  const at = (k: number): [number, number] => {
    const angle = from + ((to - from) * k) / perArc;
    return [
      arc.centreHeightMm + arc.radiusMm * Math.sin(angle),
      arc.centreRadiusMm + arc.radiusMm * Math.cos(angle),
    ];
  };
  return Array.from({ length: perArc }, (_, k) => chord(...at(k), ...at(k + 1)));
}

function chord(
  fromHeightMm: number,
  fromRadiusMm: number,
  toHeightMm: number,
  toRadiusMm: number,
): ProfileChord {
  const leanRad = Math.atan2(toRadiusMm - fromRadiusMm, toHeightMm - fromHeightMm);
  return { fromHeightMm, fromRadiusMm, toHeightMm, toRadiusMm, leanRad };
}
