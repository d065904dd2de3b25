import type { MedialAxis } from '@pourproof/geometry';
import type { Job } from '@pourproof/job';
import { limits } from '@pourproof/materials';
import type { Point } from '@pourproof/plane';
import type { FaceHeights } from '../board/face-heights.ts';
import type { ColourCut } from '../colours/colour-cuts.ts';
import { opacityAt } from '../colours/opacity-at.ts';
import type { CutShape } from '../cut/cut-shape.ts';
import { linesOf, partsOf } from '../cut/of-axis.ts';
import { type CutMargins, cutMargins, type MarginSetting } from './cut-margins.ts';
import { type LevellingMap, levellingMap } from './levelling-map.ts';
import type { DepthNeeds } from './stroke-margin.ts';

/** What the levelling map of a cut is made from; lengths in mm. */
export interface CutToLevel {
  readonly axis: MedialAxis;
  readonly job: Job;
  readonly shape: CutShape;
  readonly colourCuts: readonly ColourCut[];
  /** Seal film on walls and floor. */
  readonly filmMm: number;
  readonly heights: FaceHeights | null;
}

/**
 * Grades the strokes and parts of a cut by how much levelling they stand: between upright walls they keep their width
 * and lose depth, between sloping ones they lose both. A V shows its walls along the edges whatever its
 * depth, so that in its middle only the least depth of its colour is asked for.
 */
export function cutLevellingMap(cut: CutToLevel, margins: CutMargins): LevellingMap {
  const { axis, job } = cut;
  const setting = { ...marginSetting(cut), planMm: job.levelMm, needsAt: needsAt(cut) };
  return levellingMap(linesOf(axis), partsOf(axis), setting, margins);
}

/** What strokes and parts of a cut keep, whatever their colour and however much is levelled. */
export function marginsOfCut(cut: CutToLevel): CutMargins {
  return cutMargins(linesOf(cut.axis), partsOf(cut.axis), marginSetting(cut));
}

function marginSetting({ job, shape, filmMm, heights }: CutToLevel): MarginSetting {
  const isVee = shape.includedRad !== null;
  return {
    sectionAt: (widthMm) => shape.sectionAt(cutWidth(widthMm, shape, job.toleranceMm)),
    shop: { filmMm, shrinkagePct: job.rows.resin.shrinkagePct.value },
    shallowAt: (at) => Math.max(0, -(heights?.heightAt(at) ?? 0)),
    keeps: {
      narrowestMm: (isVee ? limits.narrowestStrokeVee : limits.narrowestStrokeFlat).value,
      faintWidthMm: limits.faintWidth.value,
    },
  };
}

/** A stroke or dot as wide as the bit is cut, even if flattening made it narrower by the tolerance. */
function cutWidth(widthMm: number, { entersMm, includedRad }: CutShape, toleranceMm: number): number {
  return includedRad === null && widthMm < entersMm && widthMm + toleranceMm >= entersMm ? entersMm : widthMm;
}

function needsAt({ shape, colourCuts }: CutToLevel): (at: Point) => DepthNeeds {
  const isVee = shape.includedRad !== null;
  const opacity = opacityAt(colourCuts);
  return (at) => {
    const { opaque, faint } = opacity(at);
    return { shallowestMm: (isVee ? faint : opaque).value, faintMm: faint.value };
  };
}
