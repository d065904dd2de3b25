import type { DxfBlock, DxfDocument } from './dxf-document.ts';
import { type DxfRecord, numberOf, textOf } from './dxf-record.ts';
import { dxfRefusal } from './dxf-refusals.ts';
import { plainDxfText } from './dxf-text.ts';

/** Most entities drawn, copies in blocks included: a file that asks for more is damaged or an attack. */
const MAX_ENTITIES = 2_000_000;
/** Deepest nesting of blocks: drawings have a dozen levels (from memory). */
const MAX_BLOCK_DEPTH = 200;

/** A block that is being counted, and how far. */
interface Visit {
  readonly block: DxfBlock;
  next: number;
  entities: number;
  depth: number;
}

/**
 * The INSERTs that would make a block contain itself, which are not to be followed. Counts what all others
 * multiply to before anything is drawn.
 *
 * @throws {ArtworkError} `too-many-copies` above two million entities, `too-deep-blocks` above 200 levels
 */
export function planBlocks(document: DxfDocument): ReadonlySet<DxfRecord> {
  const loops = new Set<DxfRecord>();
  const done = new Map<DxfBlock, { entities: number; depth: number }>();
  const model: DxfBlock = {
    name: 'the model',
    record: { type: 'BLOCK', line: 1, codes: [], values: [], parts: [] },
    entities: document.entities,
  };
  const path: Visit[] = [{ block: model, next: 0, entities: 0, depth: 0 }];
  const open = new Set([model]);
  for (let top = path.at(-1); top !== undefined; top = path.at(-1)) {
    const record = top.block.entities[top.next];
    if (record === undefined) {
      path.pop();
      open.delete(top.block);
      done.set(top.block, { entities: top.entities, depth: top.depth });
      continue;
    }
    const block = record.type === 'INSERT' ? insertedBlock(record, document) : undefined;
    const counted = block ? done.get(block) : undefined;
    if (block && open.has(block)) {
      loops.add(record);
    } else if (block && !counted) {
      path.push({ block, next: 0, entities: 0, depth: 0 });
      open.add(block);
      continue;
    }
    const { columns, rows } = insertCopies(record);
    top.entities += 1 + (counted ? columns * rows * (1 + counted.entities) : 0);
    top.depth = Math.max(top.depth, counted ? counted.depth + 1 : 0);
    top.next++;
    refuseExcess(top, record);
  }
  return loops;
}

/** The block that an INSERT places; names do not mind case. */
export function insertedBlock(record: DxfRecord, document: DxfDocument): DxfBlock | undefined {
  return document.blocks.get(plainDxfText(textOf(record, 2)).toUpperCase());
}

/** Columns and rows of an INSERT, both at least 1. */
export function insertCopies(record: DxfRecord): { columns: number; rows: number } {
  const count = (code: number): number => {
    const n = Math.floor(numberOf(record, code, 1));
    return Number.isFinite(n) ? Math.max(1, n) : 1;
  };
  return { columns: count(70), rows: count(71) };
}

function refuseExcess({ entities, depth }: Visit, { line }: DxfRecord): void {
  if (entities > MAX_ENTITIES) {
    throw dxfRefusal('too-many-copies', { most: MAX_ENTITIES }, { line });
  }
  if (depth > MAX_BLOCK_DEPTH) {
    throw dxfRefusal('too-deep-blocks', { most: MAX_BLOCK_DEPTH }, { line });
  }
}
