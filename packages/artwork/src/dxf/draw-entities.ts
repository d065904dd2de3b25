import { aciColour, radians, trueColour } from '@pourproof/plane';
import type { LetteringFont } from '../lettering/lettering-font.ts';
import { drawArc, drawCircle, drawEllipse, drawLine } from './draw-curves.ts';
import { drawHatch } from './draw-hatch.ts';
import { drawLwpolyline, drawPolyline } from './draw-polyline.ts';
import { drawSolid } from './draw-solid.ts';
import { drawSpline } from './draw-spline.ts';
import { drawText } from './draw-text.ts';
import type { DxfBlock, DxfDocument, DxfLayer } from './dxf-document.ts';
import { composeMaps, type DxfMap, objectMap } from './dxf-map.ts';
import type { DxfNotices } from './dxf-notices.ts';
import { DxfPen, type Sheet } from './dxf-pen.ts';
import { type DxfRecord, hasFlag, numberOf, textOf } from './dxf-record.ts';
import { plainDxfText } from './dxf-text.ts';
import { insertCopies, insertedBlock, planBlocks } from './plan-blocks.ts';

/**
 * z of an unit normal below which a plane counts as tilted: 1 − 1e-9 is 0.0026°, which foreshortens a metre
 * by 1 nm. Normals that a file gives with six decimals pass.
 */
const MIN_UPRIGHT = 1 - 1e-9;

/** What an entity inherits from the INSERTs around it. */
interface Placement {
  readonly map: DxfMap;
  /** Layer that entities on layer 0 fall to. */
  readonly layer: string;
  /** Colour of entities whose colour is "by block". */
  readonly colour: string;
  /** Whether this is the model itself and not a block. */
  readonly top: boolean;
}

/** How entities are drawn. */
export interface DrawStyle {
  readonly toleranceMm: number;
  readonly joinToleranceMm: number;
  readonly fonts: readonly LetteringFont[];
}

/**
 * Draws the model of a DXF file through a map, layer by layer and colour by colour. What is hidden, not
 * plotted or on paper is left out with a notice; so is every entity that has no area and bounds none.
 *
 * @throws {ArtworkError} `too-many-copies` or `too-deep-blocks` when blocks within blocks get out of hand
 */
export function drawEntities(document: DxfDocument, map: DxfMap, log: DxfNotices, style: DrawStyle): Sheet[] {
  const artist = new Artist(document, log, style);
  artist.drawAll(document.entities, { map, layer: '0', colour: aciColour(7), top: true });
  return [...artist.sheets.values()];
}

class Artist {
  readonly sheets = new Map<string, Sheet>();
  private readonly count = { numbers: 0 };
  private readonly document: DxfDocument;
  private readonly loops: ReadonlySet<DxfRecord>;
  private readonly log: DxfNotices;
  private readonly style: DrawStyle;

  constructor(document: DxfDocument, log: DxfNotices, style: DrawStyle) {
    this.document = document;
    this.loops = planBlocks(document);
    this.log = log;
    this.style = style;
  }

  drawAll(records: readonly DxfRecord[], placement: Placement): void {
    for (const record of records) {
      this.drawOne(record, placement);
    }
  }

  private drawOne(record: DxfRecord, placement: Placement): void {
    const own = plainDxfText(textOf(record, 8));
    const layerName = own === '' || own === '0' ? placement.layer : own;
    const layer = this.document.layers.get(layerName.toUpperCase());
    if (record.type === 'VIEWPORT' || (record.type === 'ATTDEF' && !placement.top)) {
      // a window onto the model; the form of an attribute, which only its ATTRIBs fill in: neither is drawn
      // by itself
      return;
    }
    if (record.type === 'INSERT') {
      this.drawInsert(record, placement, layerName, layer);
      return;
    }
    if (this.isHidden(record, placement, layerName, layer)) {
      return;
    }
    const sheet = this.sheet(layer?.name ?? layerName, this.colourOf(record, placement, layer));
    const pen = new DxfPen(sheet, this.log, this.style.toleranceMm, record, this.count);
    this.drawShape(record, placement.map, pen);
  }

  /** Whether an entity is not to be drawn; says why. Block contents are never "on paper" by themselves. */
  private isHidden(
    record: DxfRecord,
    placement: Placement,
    name: string,
    layer: DxfLayer | undefined,
  ): boolean {
    const place = { line: record.line, element: `${record.type} on layer ${name}` };
    if (placement.top && numberOf(record, 67, 0) === 1) {
      this.log.add('paper-space', place);
    } else if (numberOf(record, 60, 0) === 1 || (record.type === 'ATTRIB' && hasFlag(record, 1))) {
      this.log.add('invisible-entity', place);
    } else if (layer && (layer.off || layer.frozen)) {
      this.log.add('hidden-layer', place, `layer ${layer.name}`);
    } else if (name.toUpperCase() === 'DEFPOINTS') {
      this.log.add('definition-points', place);
    } else if (layer && !layer.plotted) {
      this.log.add('layer-not-plotted', place, `layer ${name}`);
    } else {
      return false;
    }
    return true;
  }

  private colourOf(record: DxfRecord, placement: Placement, layer: DxfLayer | undefined): string {
    const rgb = numberOf(record, 420, -1);
    if (rgb >= 0) {
      return trueColour(rgb);
    }
    const index = numberOf(record, 62, 256);
    if (index === 0) {
      return placement.colour;
    }
    if (index > 0 && index < 256) {
      return aciColour(index);
    }
    if (layer === undefined) {
      return aciColour(7);
    }
    return layer.trueColour >= 0 ? trueColour(layer.trueColour) : aciColour(layer.colourIndex);
  }

  private sheet(layer: string, colour: string): Sheet {
    const key = `${colour} ${layer}`;
    let sheet = this.sheets.get(key);
    if (!sheet) {
      sheet = { layer, colour, open: [], closed: [], patches: [], areas: [], brokenLoops: [] };
      this.sheets.set(key, sheet);
    }
    return sheet;
  }

  private drawShape(record: DxfRecord, map: DxfMap, pen: DxfPen): void {
    switch (record.type) {
      case 'LINE':
        drawLine(record, map, pen);
        break;
      case 'ELLIPSE':
        drawEllipse(record, map, pen);
        break;
      case 'SPLINE':
        drawSpline(record, map, pen);
        break;
      case 'ARC':
        drawArc(record, this.planeOf(record, map, pen), pen);
        break;
      case 'CIRCLE':
        drawCircle(record, this.planeOf(record, map, pen), pen);
        break;
      case 'LWPOLYLINE':
        drawLwpolyline(record, this.planeOf(record, map, pen), pen);
        break;
      case 'POLYLINE':
        drawPolyline(record, hasFlag(record, 8) ? map : this.planeOf(record, map, pen), map, pen);
        break;
      case 'SOLID':
      case 'TRACE':
        drawSolid(record, this.planeOf(record, map, pen), pen);
        break;
      case 'HATCH':
        drawHatch(record, this.planeOf(record, map, pen), pen, this.style.joinToleranceMm);
        break;
      case 'TEXT':
      case 'ATTRIB':
      case 'MTEXT':
        drawText(record, this.planeOf(record, map, pen), pen, this.style.fonts);
        break;
      default:
        this.refuse(record, pen);
        break;
    }
  }

  /** The map of the object plane of an entity, with a notice when that plane is tilted. */
  private planeOf(record: DxfRecord, map: DxfMap, pen: DxfPen): DxfMap {
    const plane = objectMap(record);
    if (!plane) {
      return map;
    }
    if (Math.abs(plane[8]) < MIN_UPRIGHT) {
      pen.notice('tilted-plane');
    }
    return composeMaps(map, plane);
  }

  private refuse(record: DxfRecord, pen: DxfPen): void {
    const { type } = record;
    if (type === 'RAY' || type === 'XLINE') {
      pen.notice('infinite-line');
    } else if (type === 'POINT') {
      pen.notice('point-without-size');
    } else {
      pen.notice('entity-not-taken', type);
    }
  }

  private drawInsert(
    record: DxfRecord,
    placement: Placement,
    layerName: string,
    layer: DxfLayer | undefined,
  ): void {
    // an INSERT on a layer that is off still shows what lies on other layers; a frozen one shows nothing
    const onlyOff = layer?.off === true && !layer.frozen;
    if (!onlyOff && this.isHidden(record, placement, layerName, layer)) {
      return;
    }
    for (const attribute of record.parts) {
      this.drawOne(attribute, placement);
    }
    const place = { line: record.line, element: 'INSERT' };
    const block = insertedBlock(record, this.document);
    if (!block || isOutside(block)) {
      this.log.add('missing-block', place, `"${plainDxfText(textOf(record, 2))}"`);
      return;
    }
    if (this.loops.has(record)) {
      this.log.add('recursive-block', place, `"${block.name}"`);
      return;
    }
    const colour = this.colourOf(record, placement, layer);
    for (const map of insertMaps(record, block, placement.map)) {
      this.drawAll(block.entities, { map, layer: layerName, colour, top: false });
    }
  }
}

/** Whether a block stands for another file (flag 4) and holds nothing of it. */
function isOutside({ record, entities }: DxfBlock): boolean {
  return hasFlag(record, 4) && entities.length === 0;
}

/**
 * The map of each copy that an INSERT makes: base point to the origin, scale, turn, row and column step,
 * insertion point, object plane. Steps are turned with the block but not scaled.
 */
function* insertMaps(record: DxfRecord, block: DxfBlock, outer: DxfMap): Generator<DxfMap> {
  const plane = objectMap(record);
  const map = plane ? composeMaps(outer, plane) : outer;
  const { columns, rows } = insertCopies(record);
  const angle = radians(numberOf(record, 50, 0));
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const [sx, sy] = [numberOf(record, 41, 1), numberOf(record, 42, 1)];
  const sz = numberOf(record, 43, 1);
  const base = [
    -numberOf(block.record, 10, 0),
    -numberOf(block.record, 20, 0),
    -numberOf(block.record, 30, 0),
  ] as const;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const dx = column * numberOf(record, 44, 0);
      const dy = row * numberOf(record, 45, 0);
      const placed: DxfMap = [
        ...([c * sx, s * sx, 0, -s * sy, c * sy, 0, 0, 0, sz] as const),
        numberOf(record, 10, 0) + c * dx - s * dy,
        numberOf(record, 20, 0) + s * dx + c * dy,
        numberOf(record, 30, 0),
      ];
      yield composeMaps(composeMaps(map, placed), [1, 0, 0, 0, 1, 0, 0, 0, 1, ...base]);
    }
  }
}
