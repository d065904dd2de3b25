import type { Bounds, Point } from '@pourproof/plane';
import { ArtLines } from './art-lines.ts';
import { ART_LOOKS, type ArtLook, type Ink } from './art-look.ts';
import type { Art } from './art-shapes.ts';
import type { Layer } from './layer.ts';

/** Distance between lines of the hatch, and their width, px. */
const HATCH_STEP_PX = 6;
const HATCH_LINE_PX = 2.4;
/** Half the widest stroke, px: lines this far out of sight still show. */
const REACH_PX = 4;

/** A part of the plane to be painted. */
export interface Frame {
  readonly layer: Layer;
  /** Its middle, and its scale. */
  readonly atMm: Point;
  readonly pxPerMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Device pixels a px. */
  readonly density: number;
}

/** Colour of every ink, as CSS. */
export type InkColours = Readonly<Record<Exclude<Ink, 'white'>, string>>;

/** Paints the lines of a picture on a canvas. */
export class ArtPainter {
  readonly #originMm: Point;
  readonly #layers: Readonly<Record<Layer, readonly ArtLines[]>>;
  readonly #inks: InkColours;

  constructor(art: Art, inks: InkColours) {
    this.#originMm = art.originMm;
    this.#inks = inks;
    const lines = (layer: Layer): ArtLines[] => art.layers[layer].map((shape) => new ArtLines(shape));
    this.#layers = { cut: lines('cut'), levelling: lines('levelling') };
  }

  /** Paints one frame over whatever a canvas of its size holds. */
  paint(to: OffscreenCanvasRenderingContext2D, frame: Frame): void {
    const { pxPerMm, widthPx, heightPx, density } = frame;
    const x0 = widthPx / 2 + (this.#originMm[0] - frame.atMm[0]) * pxPerMm;
    const y0 = heightPx / 2 + (this.#originMm[1] - frame.atMm[1]) * pxPerMm;
    const window: Bounds = [
      (-x0 - REACH_PX) / pxPerMm,
      (-y0 - REACH_PX) / pxPerMm,
      (widthPx - x0 + REACH_PX) / pxPerMm,
      (heightPx - y0 + REACH_PX) / pxPerMm,
    ];
    to.setTransform(density, 0, 0, density, 0, 0);
    to.clearRect(0, 0, widthPx, heightPx);
    to.lineJoin = 'round';
    for (const lines of this.#layers[frame.layer]) {
      to.beginPath();
      lines.inSight(window, pxPerMm * density, (line, isClosed) => {
        to.moveTo(x0 + (line[0] as number) * pxPerMm, y0 + (line[1] as number) * pxPerMm);
        for (let i = 2; i + 1 < line.length; i += 2) {
          to.lineTo(x0 + (line[i] as number) * pxPerMm, y0 + (line[i + 1] as number) * pxPerMm);
        }
        if (isClosed) {
          to.closePath();
        }
      });
      this.#fill(to, ART_LOOKS[lines.shape.name], [x0, y0], density);
      this.#stroke(to, ART_LOOKS[lines.shape.name]);
    }
  }

  #fill(to: OffscreenCanvasRenderingContext2D, look: ArtLook, at: Point, density: number): void {
    if (look.fill !== null) {
      to.fillStyle = look.fill === 'hatch' ? this.#hatch(to, at, density) : this.#colour(look.fill);
      to.globalAlpha = look.fillAlpha ?? 1;
      to.fill(look.isEvenOdd === true ? 'evenodd' : 'nonzero');
      to.globalAlpha = 1;
    }
  }

  #stroke(to: OffscreenCanvasRenderingContext2D, look: ArtLook): void {
    to.strokeStyle = this.#colour(look.stroke);
    to.lineWidth = look.widthPx;
    to.lineCap = look.isRoundEnded === true ? 'round' : 'butt';
    to.setLineDash(look.dashPx?.slice() ?? []);
    to.stroke();
  }

  /** Slanting lines on white that keep their size at any scale and move with the artwork. */
  #hatch(to: OffscreenCanvasRenderingContext2D, [x, y]: Point, density: number): CanvasPattern | string {
    const side = Math.round(HATCH_STEP_PX * density);
    const tile = new OffscreenCanvas(side, side).getContext('2d');
    if (tile === null) {
      return this.#inks.orange;
    }
    tile.fillStyle = '#fff';
    tile.fillRect(0, 0, side, side);
    tile.fillStyle = this.#inks.orange;
    const line = HATCH_LINE_PX * density;
    tile.fillRect(0, (side - line) / 2, side, line);
    const pattern = to.createPattern(tile.canvas, 'repeat');
    pattern?.setTransform(
      new DOMMatrix()
        .translate(x, y)
        .rotate(-45)
        .scale(1 / density),
    );
    return pattern ?? this.#inks.orange;
  }

  #colour(ink: Ink): string {
    return ink === 'white' ? '#fff' : this.#inks[ink];
  }
}
