import type { DxfGroups } from './dxf-groups.ts';
import { type DxfRecord, numberOf, textOf } from './dxf-record.ts';
import { plainDxfText } from './dxf-text.ts';

/** A row of the layer table. */
export interface DxfLayer {
  readonly name: string;
  /** Colour index, always positive; NaN when the row has none. */
  readonly colourIndex: number;
  /** 0xRRGGBB, or -1 when the layer has no true colour. */
  readonly trueColour: number;
  readonly off: boolean;
  readonly frozen: boolean;
  readonly plotted: boolean;
}

/** A block of entities that INSERTs place. */
export interface DxfBlock {
  readonly name: string;
  readonly record: DxfRecord;
  readonly entities: readonly DxfRecord[];
}

/** What a DXF file holds, before any of it is drawn. */
export interface DxfDocument {
  /** Whether there was a HEADER section at all. */
  readonly hasHeader: boolean;
  /** First value of each header variable, by its name with `$`. */
  readonly header: ReadonlyMap<string, string | number>;
  /** Layers by their name in capitals: DXF names do not mind case. */
  readonly layers: ReadonlyMap<string, DxfLayer>;
  /** Blocks by their name in capitals. */
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  /** Entities of the model and of the paper, as the file has them. */
  readonly entities: readonly DxfRecord[];
  /** Whether the EOF pair was found. */
  readonly complete: boolean;
  /** Pairs read. */
  readonly pairs: number;
}

/**
 * Codes of no use here, which need not be kept: subclass marks, owners, plot styles, line types and previews.
 */
const UNUSED_CODES: ReadonlySet<number> = new Set([6, 48, 100, 310, 330, 347, 348, 350, 360, 370, 390]);

/** Shared by all records that cannot have parts. */
const NO_PARTS: DxfRecord[] = [];

/** A record while it is being read. */
interface Unfinished {
  readonly type: string;
  readonly line: number;
  codes: number[];
  values: (string | number)[];
  readonly parts: DxfRecord[];
}

/**
 * Sorts the pairs of a DXF file into header, layers, blocks and entities. Sections may be missing or stand in
 * any order.
 */
export function readDxfDocument(groups: DxfGroups): DxfDocument {
  const sorter = new Sorter();
  while (sorter.take(groups) && groups.next()) {
    // each pair is taken in turn
  }
  return sorter.finish();
}

class Sorter {
  private readonly header = new Map<string, string | number>();
  private readonly layers = new Map<string, DxfLayer>();
  private readonly blocks = new Map<string, DxfBlock>();
  private readonly entities: DxfRecord[] = [];
  private hasHeader = false;
  private complete = false;
  private pairs = 0;
  private section = '';
  private variable = '';
  private record: Unfinished | undefined;
  private block: { record: DxfRecord; entities: DxfRecord[] } | undefined;
  /** The POLYLINE or INSERT that takes the VERTEX and ATTRIB records that follow it. */
  private owner: DxfRecord | undefined;
  /** Inside a `102 {` … `102 }` group of some application, or the embedded object after a 101. */
  private skipping: 'no' | 'group' | 'rest' = 'no';
  /** Each text value and each order of codes is kept once: a million lines have few different ones. */
  private readonly texts = new Map<string, string>();
  private readonly lastCodes = new Map<string, readonly number[]>();

  /** Takes the current pair, if there is one; false after the end of the file. */
  take(groups: DxfGroups): boolean {
    const { code, value } = groups;
    if (code < 0) {
      return true;
    }
    this.pairs++;
    if (code === 0) {
      this.startRecord(String(value).toUpperCase(), groups.line);
      return !this.complete;
    }
    if (code === 999 || code >= 1000) {
      return true;
    }
    if (this.record?.type === 'SECTION') {
      this.startSection(code, value);
    } else if (this.section === 'HEADER') {
      this.takeVariable(code, value);
    } else if (this.record) {
      this.takeValue(this.record, code, value);
    }
    return true;
  }

  finish(): DxfDocument {
    this.endRecord();
    this.endBlock();
    const { hasHeader, header, layers, blocks, entities, complete, pairs } = this;
    return { hasHeader, header, layers, blocks, entities, complete, pairs };
  }

  private startRecord(type: string, line: number): void {
    this.endRecord();
    this.skipping = 'no';
    if (type === 'EOF') {
      this.complete = true;
    } else if (type === 'ENDSEC') {
      this.endBlock();
      this.section = '';
    } else {
      const owns = type === 'POLYLINE' || type === 'INSERT';
      this.record = {
        type: this.once(type),
        line: Math.max(1, line - 1),
        codes: [],
        values: [],
        parts: owns ? [] : NO_PARTS,
      };
    }
  }

  private startSection(code: number, value: string | number): void {
    if (code === 2) {
      this.section = String(value).toUpperCase();
      this.hasHeader ||= this.section === 'HEADER';
      this.record = undefined;
    }
  }

  private takeVariable(code: number, value: string | number): void {
    if (code === 9) {
      this.variable = String(value).toUpperCase();
    } else if (!this.header.has(this.variable)) {
      this.header.set(this.variable, value);
    }
  }

  private takeValue(record: Unfinished, code: number, value: string | number): void {
    if (code === 102) {
      this.skipping = String(value).startsWith('{') ? 'group' : 'no';
    } else if (code === 101) {
      this.skipping = 'rest';
    } else if (this.skipping === 'no' && !UNUSED_CODES.has(code)) {
      record.codes.push(code);
      record.values.push(typeof value === 'string' ? this.once(value) : value);
    }
  }

  private once(text: string): string {
    const known = this.texts.get(text);
    if (known === undefined) {
      this.texts.set(text, text);
    }
    return known ?? text;
  }

  private shareCodes(record: Unfinished): void {
    const last = this.lastCodes.get(record.type);
    if (last?.length === record.codes.length && last.every((code, i) => code === record.codes[i])) {
      record.codes = last as number[];
    } else {
      this.lastCodes.set(record.type, record.codes);
    }
  }

  private endRecord(): void {
    const { record } = this;
    this.record = undefined;
    if (!record) {
      return;
    }
    this.shareCodes(record);
    // growing left room for a dozen more values, which a million lines cannot spare
    record.values = record.values.slice();
    if (this.section === 'TABLES' && record.type === 'LAYER') {
      this.addLayer(record);
    } else if (this.section === 'BLOCKS') {
      this.addToBlock(record);
    } else if (this.section === 'ENTITIES') {
      this.addEntity(this.entities, record);
    }
  }

  private addLayer(record: DxfRecord): void {
    const name = plainDxfText(textOf(record, 2));
    const colour = numberOf(record, 62, Number.NaN);
    this.layers.set(name.toUpperCase(), {
      name,
      colourIndex: Math.abs(colour),
      trueColour: numberOf(record, 420, -1),
      off: colour < 0,
      frozen: (numberOf(record, 70, 0) & 1) !== 0,
      plotted: numberOf(record, 290, 1) !== 0,
    });
  }

  private addToBlock(record: DxfRecord): void {
    if (record.type === 'BLOCK') {
      this.endBlock();
      this.block = { record, entities: [] };
    } else if (record.type === 'ENDBLK') {
      this.endBlock();
    } else if (this.block) {
      this.addEntity(this.block.entities, record);
    }
  }

  private endBlock(): void {
    if (this.block) {
      const name = plainDxfText(textOf(this.block.record, 2));
      this.blocks.set(name.toUpperCase(), { name, ...this.block });
      this.block = undefined;
    }
    this.owner = undefined;
  }

  private addEntity(list: DxfRecord[], record: DxfRecord): void {
    const { owner } = this;
    if (record.type === 'SEQEND') {
      this.owner = undefined;
    } else if (record.type === 'VERTEX' && owner?.type === 'POLYLINE') {
      owner.parts.push(record);
    } else if (record.type === 'ATTRIB' && owner?.type === 'INSERT') {
      owner.parts.push(record);
    } else {
      list.push(record);
      this.owner = record.type === 'POLYLINE' || record.type === 'INSERT' ? record : undefined;
    }
  }
}
