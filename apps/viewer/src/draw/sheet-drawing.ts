import type { Bounds, LengthUnit, Rings } from '@pourproof/plane';
import { type G, type Pattern, SVG, type Svg } from '@svgdotjs/svg.js';
import type { SheetPicture } from '../model/sheet-picture.ts';
import { startPaintWorker } from '../start-worker.ts';
import { ArtCanvas } from './art-canvas.ts';
import { drawMargin, type FibreSign } from './draw-margin.ts';
import { type Mark, MarkFlags } from './draw-marks.ts';
import { labelPlace } from './label-place.ts';
import type { Layer } from './layer.ts';
import { artPath, linePath, ringsPath } from './path-data.ts';
import { type SheetSize, seenBounds, toPx, type View } from './view.ts';
import { type WoodTint, woodTints } from './wood-tint.ts';

/** Distance between lines of the grain and of hatches, px. */
const GRAIN_STEP_PX = 9;
const HATCH_STEP_PX = 6;

/** From this dive on, fibres are drawn as end grain (our choice: half way to upright). */
const END_GRAIN_DEG = 45;

/** A block with less room than this on either side of its letter, px, goes without. */
const LETTER_ROOM_PX = 9;

/** A view that has not moved for so long rests (our choice: no hand pauses so briefly). */
const REST_MS = 120;

/** Height of the controls over the top of the sheet, px. */
const CONTROLS_PX = 42;

/**
 * The picture of a proof. Its lines, which may be many, are painted by a worker on a canvas; wood, board, flags and margin are SVG
 * below and above it. On paper, and where no worker paints, the lines are SVG too.
 */
export class SheetDrawing {
  readonly #ground: Svg;
  readonly #svg: Svg;
  #canvas: ArtCanvas | null = null;
  #picture: SheetPicture | null = null;
  #layer: Layer = 'cut';
  #isOnPaper = false;
  /** Whether the lines stand in the SVG. */
  #isInSvg = false;
  readonly #hatch: Pattern;
  readonly #wood: G;
  readonly #art: G;
  readonly #obstacles: G;
  readonly #outline: G;
  readonly #letters: G;
  readonly #margin: G;
  readonly #flags: MarkFlags;
  /** What the flags were chosen for, and the wait for the view to rest. */
  #flagged: { readonly marks: readonly Mark[]; readonly size: SheetSize } | null = null;
  #rest: ReturnType<typeof setTimeout> | undefined;
  /** One pattern of fibres for each direction, and the directions that the margin shows. */
  #grains: readonly { readonly pattern: Pattern; readonly grainDeg: number }[] = [];
  #fibres: FibreSign = 'mixed';
  /** Blocks that bear the letter of their wood. */
  #lettered: readonly { readonly letter: string; readonly outline: Rings }[] = [];

  constructor(host: HTMLElement) {
    this.#ground = SVG().addTo(host).attr({ 'aria-hidden': 'true' });
    this.#wood = this.#ground.group().addClass('wood');
    const worker = startPaintWorker();
    if (worker !== null) {
      this.#canvas = new ArtCanvas(host, worker, () => {
        this.#canvas = null;
        this.#showArt();
      });
    }
    this.#svg = SVG().addTo(host).attr({ 'aria-hidden': 'true' });
    this.#hatch = this.#svg.pattern(HATCH_STEP_PX, HATCH_STEP_PX, (add) => {
      add.rect(HATCH_STEP_PX, HATCH_STEP_PX).addClass('hatch-ground');
      add.path(`M0 ${HATCH_STEP_PX / 2}h${HATCH_STEP_PX}`).addClass('hatch-line');
    });
    this.#art = this.#svg.group().addClass('art');
    this.#obstacles = this.#svg.group().addClass('art');
    this.#outline = this.#svg.group().addClass('art');
    this.#letters = this.#svg.group().addClass('letters');
    this.#margin = this.#svg.group().addClass('margin');
    this.#flags = new MarkFlags(this.#svg.group().addClass('marks'));
  }

  /** Draws the shapes of a proof; `null` clears the sheet. */
  showShapes(picture: SheetPicture | null, layer: Layer): void {
    this.#picture = picture;
    this.#layer = layer;
    this.#outline.clear();
    this.#obstacles.clear();
    this.#showWood(picture?.blocks ?? []);
    this.#showObstacles(picture?.obstacles ?? []);
    this.#canvas?.show(picture, layer);
    this.#showArt();
  }

  /** Ends the worker that paints. */
  end(): void {
    clearTimeout(this.#rest);
    this.#canvas?.end();
    this.#canvas = null;
  }

  /** The lines as SVG where no worker paints them. */
  #showArt(): void {
    const isInSvg = this.#isOnPaper || this.#canvas === null;
    if (isInSvg || this.#isInSvg) {
      this.#art.clear();
    }
    this.#isInSvg = isInSvg;
    if (isInSvg && this.#picture !== null) {
      const { art } = this.#picture;
      for (const shape of art.layers[this.#layer]) {
        const path = this.#art.path(artPath(shape, art.originMm)).addClass(shape.name);
        if (shape.name === 'standing') {
          path.fill(this.#hatch);
        }
      }
    }
  }

  /** Holes, grooves and clamps, over the artwork. */
  #showObstacles(obstacles: SheetPicture['obstacles']): void {
    for (const { kind, outline, isInBack } of obstacles) {
      const form = isInBack ? 'in-back' : kind === 'hole' || kind === 'groove' ? 'through' : 'held';
      this.#obstacles.path(ringsPath(outline)).addClass(`obstacle ${form}`);
    }
  }

  /** The wood behind the artwork: lines along the fibres of each block, rings on end grain. */
  #showWood(blocks: SheetPicture['blocks']): void {
    this.#wood.clear();
    for (const { pattern } of this.#grains) {
      pattern.remove();
    }
    const kinds = new Map<string, { readonly pattern: Pattern; readonly grainDeg: number }>();
    const tints = woodTints(blocks);
    const tintOf = (species: string): WoodTint | undefined => tints.find(({ name }) => name === species);
    for (const { outline, species, grainDeg, diveDeg } of blocks) {
      const isEnd = diveDeg >= END_GRAIN_DEG;
      const key = isEnd ? 'end' : grainDeg.toFixed(3);
      const kind = kinds.get(key) ?? {
        grainDeg,
        pattern: isEnd ? endPattern(this.#ground) : linePattern(this.#ground),
      };
      kinds.set(key, kind);
      if (outline === null) {
        this.#wood.rect('100%', '100%').fill(kind.pattern).addClass('everywhere');
      } else {
        const data = ringsPath(outline);
        this.#wood
          .path(data)
          .addClass('block tint')
          .fill(tintOf(species)?.colour ?? 'none');
        this.#wood.path(data).fill(kind.pattern).addClass('block');
      }
    }
    this.#lettered = blocks.flatMap(({ outline, species }) => {
      const letter = tintOf(species)?.letter;
      return outline === null || letter === undefined ? [] : [{ letter, outline }];
    });
    this.#grains = [...kinds.values()];
    const [only] = this.#grains;
    this.#fibres = only === undefined || kinds.size > 1 ? 'mixed' : kinds.has('end') ? 'end' : only.grainDeg;
  }

  /** Draws the shown part, the margin and the flags. */
  showView(view: View, size: SheetSize, marks: readonly Mark[], unit: LengthUnit, isOnPaper: boolean): void {
    const { widthPx, heightPx } = size;
    if (isOnPaper !== this.#isOnPaper) {
      this.#isOnPaper = isOnPaper;
      this.#showArt();
    }
    this.#canvas?.place(view, size);
    for (const svg of [this.#ground, this.#svg]) {
      svg.attr({ viewBox: `0 0 ${widthPx} ${heightPx}` });
    }
    const [x, y] = view.atMm;
    const shift = `${widthPx / 2 - x * view.pxPerMm} ${heightPx / 2 - y * view.pxPerMm}`;
    const place = `translate(${shift}) scale(${view.pxPerMm})`;
    for (const group of [this.#art, this.#obstacles, this.#outline, ...this.#wood.find('.block')]) {
      group.attr('transform', place);
    }
    // hatches keep their size on screen at any scale
    this.#hatch.attr('patternTransform', `scale(${1 / view.pxPerMm}) rotate(-45)`);
    for (const { pattern, grainDeg } of this.#grains) {
      const isBlock = this.#wood.find('.block').length > 0;
      const own = isBlock ? `scale(${1 / view.pxPerMm})` : `translate(${shift})`;
      pattern.attr('patternTransform', `${own} rotate(${-grainDeg})`);
    }
    this.#showOutline(marks);
    this.#showLetters(view, size);
    drawMargin(this.#margin, view, size, this.#fibres, unit);
    this.#showFlags(marks, view, size);
  }

  /** Flags go with the view while it moves, and are chosen anew when it rests. */
  #showFlags(marks: readonly Mark[], view: View, size: SheetSize): void {
    clearTimeout(this.#rest);
    if (this.#flagged?.marks === marks && this.#flagged.size === size) {
      this.#flags.move(view, size);
      this.#rest = setTimeout(() => this.#flags.draw(marks, view, size), REST_MS);
    } else {
      this.#flags.draw(marks, view, size);
      this.#flagged = { marks, size };
    }
  }

  #showLetters(view: View, size: SheetSize): void {
    this.#letters.clear();
    const [left, top, right, bottom] = seenBounds(view, size);
    const seen: Bounds = [left, top + (CONTROLS_PX * (size.lettersBy ?? 1)) / view.pxPerMm, right, bottom];
    for (const { letter, outline } of this.#lettered) {
      const { atMm, roomMm } = labelPlace(outline, seen);
      if (roomMm * view.pxPerMm >= LETTER_ROOM_PX * (size.lettersBy ?? 1)) {
        const [x, y] = toPx(atMm, view, size);
        this.#letters.plain(letter).attr({ x, y: y + 4.5 * (size.lettersBy ?? 1), 'text-anchor': 'middle' });
      }
    }
  }

  #showOutline(marks: readonly Mark[]): void {
    this.#outline.clear();
    const chosen = marks.find((mark) => mark.rank === 'chosen');
    for (const line of chosen?.place.outline ?? []) {
      const data = linePath(line.flat());
      this.#outline.path(data).addClass('halo');
      this.#outline.path(data).addClass('chosen-outline');
    }
  }
}

/** Wavy lines that tile. */
function linePattern(svg: Svg): Pattern {
  return svg.pattern(240, 2 * GRAIN_STEP_PX, (add) => {
    add.path(`M0 ${GRAIN_STEP_PX / 2}q60 -2 120 0t120 0`).addClass('grain-line');
    add.path(`M0 ${GRAIN_STEP_PX * 1.5}q60 1.6 120 0t120 0`).addClass('grain-line');
  });
}

/** Rings, for end grain. */
function endPattern(svg: Svg): Pattern {
  return svg.pattern(2.6 * GRAIN_STEP_PX, 2.6 * GRAIN_STEP_PX, (add) => {
    add
      .circle(GRAIN_STEP_PX * 0.7)
      .center(GRAIN_STEP_PX, GRAIN_STEP_PX)
      .addClass('grain-line');
  });
}
