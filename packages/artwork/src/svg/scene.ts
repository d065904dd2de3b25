import type { Bounds, DrawnShape, OpenOutline, Region, Transform } from '@pourproof/plane';
import type { NoticeBook } from '../notice-book.ts';
import type { CoordArena } from '../path/coord-arena.ts';
import type { RingWriter } from '../path/ring-writer.ts';
import { cascade, type Declared } from './cascade.ts';
import { ComputedStyle } from './computed-style.ts';
import type { Colour } from './css-colour.ts';
import type { LengthContext } from './css-length.ts';
import type { RuleIndex } from './match-rules.ts';
import type { LengthNotices } from './notice-lengths.ts';
import type { SourceWords } from './source-words.ts';
import type { SvgElement } from './svg-element.ts';
import type { SvgNoticeCode } from './svg-notices.ts';
import type { SettledSvgOptions } from './svg-options.ts';

/** The notices of an SVG file as they are collected. */
export type SvgNotices = NoticeBook<SvgNoticeCode>;

/** One painted area with what later steps need to know of it. */
export interface Painted {
  readonly shape: DrawnShape;
  /** Whether it hides what lies beneath. */
  readonly opaque: boolean;
  /** What it was drawn for. */
  readonly element: SvgElement;
}

/** What all parts of reading a file share. */
export interface Scene {
  readonly root: SvgElement;
  readonly ids: ReadonlyMap<string, SvgElement>;
  readonly rules: RuleIndex;
  readonly notices: SvgNotices;
  /** Tells of lengths, also those of parts that are only tried or measured. */
  readonly lengths: LengthNotices;
  readonly options: SettledSvgOptions;
  readonly rootFontSize: number;
  /** How the size of the page came about, in words. */
  readonly pageSource: string;
  /**
   * `paint` collects painted areas, `clip` bare fills by their clip rule, `box` only the box of the geometry.
   */
  readonly mode: 'paint' | 'clip' | 'box';
  readonly painted: Painted[];
  /** Outlines that are filled though they are open. */
  readonly open: OpenOutline[];
  /** Where regions are put together, and where their arrays come from. */
  readonly writer: RingWriter;
  readonly arena: CoordArena;
  readonly sources: SourceWords;
  /** In `box` mode the boxes of all shapes, through the state's map. */
  readonly boxes: Bounds[];
  readonly declared: Map<SvgElement, Declared>;
  /** Elements drawn through references so far. */
  readonly reuse: { count: number };
  /**
   * Draws an element with its transform, clip and children; here so that the parts of the walk need not
   * import one another.
   */
  readonly draw: (scene: Scene, element: SvgElement, state: DrawState) => void;
  /** Draws what an element holds, its own transform and clip already in the state. */
  readonly drawContent: (scene: Scene, element: SvgElement, state: DrawState) => void;
}

/** What an element inherits from where it stands. */
export interface DrawState {
  readonly style: ComputedStyle;
  /** From user units here to mm. */
  readonly toMm: Transform;
  /** From the outermost viewport's pixels to mm, for strokes that do not scale. */
  readonly hostToMm: Transform;
  readonly viewport: { readonly width: number; readonly height: number };
  readonly layer: string;
  readonly clip?: Region;
  /** Product of the opacities of all groups around. */
  readonly opacity: number;
  /** Elements that are being drawn through references around here. */
  readonly within: readonly SvgElement[];
  /** Paint of the shape that a marker sits on. */
  readonly contextFill?: Colour | undefined;
  readonly contextStroke?: Colour | undefined;
}

/**
 * The winning declarations of an element; worked out once for those that hold others, which are asked again
 * for each.
 */
export function declaredOf(scene: Scene, element: SvgElement): Declared {
  const known = scene.declared.get(element);
  if (known !== undefined) {
    return known;
  }
  const declared = cascade(element, scene.rules, (property, value) => {
    scene.lengths.refused(element, property, value);
  });
  scene.lengths.attributesOf(element);
  if (element.children.length > 0) {
    scene.declared.set(element, declared);
  }
  return declared;
}

/** What lengths of an element are measured against. */
export function lengthsAt(scene: Scene, state: DrawState): LengthContext {
  return {
    viewportWidth: state.viewport.width,
    viewportHeight: state.viewport.height,
    fontSize: state.style.fontSize,
    rootFontSize: scene.rootFontSize,
  };
}

/** The style of an element under that of what is around it; what is used of it and cannot be is told. */
export function styleUnder(scene: Scene, element: SvgElement, around?: ComputedStyle): ComputedStyle {
  return new ComputedStyle(declaredOf(scene, element), around, (property, declared) => {
    scene.lengths.invalid(element, property, declared);
  });
}

/**
 * The style that an element inherits where it stands in the file, for parts that are drawn through
 * references.
 */
export function styleAround(scene: Scene, element: SvgElement): ComputedStyle | undefined {
  const { parent } = element;
  return parent === undefined ? undefined : styleUnder(scene, parent, styleAround(scene, parent));
}
