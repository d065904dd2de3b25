import type { CouponRow, JobInput, Shop } from '@pourproof/job';
import type { MaterialsBook } from '@pourproof/materials';
import { InternalError } from '@pourproof/plane';
import { type Miss, SelfCheckError } from '@pourproof/proof';
import { fromBase64, toBase64 } from './base64.ts';
import type { Source } from './source.ts';
import { VERSION } from './version.ts';

/** A source as text: bytes as base64 (RFC 4648). */
export type PackedSource =
  | { readonly kind: 'file'; readonly name: string; readonly bytes: string; readonly font: string | null }
  | { readonly kind: 'lettering'; readonly text: string; readonly font: string | null };

/** All that replays a fault of pourproof, as plain data that JSON holds. The artwork is in it whole, and a font that was given. */
export interface FaultBundle {
  readonly schema: 'pourproof/fault@1';
  readonly versions: { readonly pourproof: string };
  /** What went wrong, in words. */
  readonly what: string;
  /** What does not balance and by how much; empty for a fault of another kind. */
  readonly misses: readonly Miss[];
  /** Seed of the places at which widths were measured again; `null` for a fault of another kind. */
  readonly seed: number | null;
  readonly source: PackedSource;
  readonly job: JobInput;
  /** Materials, shop and coupons of the maker's own, where there were any. */
  readonly materials?: MaterialsBook;
  readonly shop?: Shop;
  readonly coupons?: readonly CouponRow[];
}

/** What was vetted when a fault showed. */
interface Vetting {
  readonly source: Source;
  readonly job: JobInput;
  readonly options: Pick<FaultBundle, 'materials' | 'shop' | 'coupons'>;
}

/** A fault of pourproof that showed while a source was vetted, with all that it takes to see it again. */
export class ProofFault extends InternalError {
  readonly bundle: FaultBundle;

  /** @param thrown what was thrown, whatever it is */
  constructor(thrown: unknown, { source, job, options }: Vetting) {
    super(whatOf(thrown));
    this.name = 'ProofFault';
    this.cause = thrown instanceof InternalError && thrown.cause !== undefined ? thrown.cause : thrown;
    const isMiss = thrown instanceof SelfCheckError;
    const { materials, shop, coupons } = options;
    this.bundle = {
      schema: 'pourproof/fault@1',
      versions: { pourproof: VERSION },
      what: this.what,
      misses: isMiss ? thrown.misses : [],
      seed: isMiss ? thrown.seed : null,
      source: packed(source),
      job,
      ...(materials === undefined ? {} : { materials }),
      ...(shop === undefined ? {} : { shop }),
      ...(coupons === undefined ? {} : { coupons }),
    };
  }
}

function whatOf(thrown: unknown): string {
  if (thrown instanceof InternalError) {
    return thrown.what;
  }
  return thrown instanceof Error ? `${thrown.name}: ${thrown.message}` : String(thrown);
}

function packed(source: Source): PackedSource {
  const font = source.font === undefined || source.font === null ? null : toBase64(source.font);
  return source.kind === 'file'
    ? { kind: 'file', name: source.name, bytes: toBase64(source.bytes), font }
    : { kind: 'lettering', text: source.text, font };
}

/** The source in a bundle, to be vetted again. */
export function unpacked(source: PackedSource): Source {
  const font = source.font === null ? null : fromBase64(source.font);
  return source.kind === 'file'
    ? { kind: 'file', name: source.name, bytes: fromBase64(source.bytes), font }
    : { kind: 'lettering', text: source.text, font };
}
