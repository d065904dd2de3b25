import type { Quantity } from '@pourproof/plane';

/** One place of a job, or of a file, whose shape is wrong. */
export interface ShapeIssue {
  readonly code: 'unknown-key' | 'wrong-type' | 'wrong-value' | 'empty-list' | 'missing';
  /** Where in the file or object: `boards`, `coupons, row 2, slot 1`, or `(file)`. */
  readonly place: string;
  /** What is wrong there and what to write instead. */
  readonly words: string;
}

/** Issues of shape, all that were found, in the order of the schema. */
interface ShapeFault {
  /** Name of the file that was read, such as `job.json`; `null` for a job given in code. */
  readonly file: string | null;
  /** What it should be: `pourproof/job@1`. */
  readonly schema: string;
  readonly issues: readonly ShapeIssue[];
}

/** A text or an object that is not of the form that its key takes. */
interface FormFault {
  /** As typed, or as JSON. */
  readonly shown: string;
}

/** Something about one bit; lengths in mm, angles in degrees. */
interface BitFault extends FormFault {
  readonly value: number;
  readonly limit: number;
}

/** What may be wrong with a job, by code: the parameters that its message is made from. */
export interface JobFaults {
  readonly 'unknown-key': ShapeFault;
  readonly 'wrong-type': ShapeFault;
  readonly 'wrong-value': ShapeFault;
  readonly 'empty-list': ShapeFault;
  readonly missing: ShapeFault;

  readonly 'not-a-measure': { readonly quantity: Quantity; readonly reason: string };
  readonly 'out-of-range': {
    /** The value with its unit. */
    readonly shown: string;
    /** What it must be: `above 0`, `a whole number from 0 to 10`. */
    readonly range: string;
    /** Why, or where to look for the slip; `''` where the example says it all. */
    readonly why: string;
    /** How it is typed; `''` where `why` is not. */
    readonly example: string;
  };
  readonly 'unknown-material': {
    readonly id: string;
    readonly known: readonly string[];
    readonly near: readonly string[];
  };
  readonly 'not-a-time': FormFault;
  readonly 'not-an-arc': FormFault;
  readonly 'arc-without-radius': FormFault;
  readonly 'arc-too-wide': FormFault & { readonly limitM: number };
  readonly 'not-an-axis': FormFault;
  readonly 'not-a-place': FormFault;
  readonly 'not-a-reading': FormFault;
  readonly 'not-an-obstacle': FormFault;
  readonly 'not-a-block': FormFault;
  readonly 'block-dive': FormFault;

  readonly 'board-pattern': { readonly pattern: string; readonly known: readonly string[] };
  readonly 'board-size': FormFault;
  readonly 'board-length': { readonly name: string; readonly shown: string };
  readonly 'board-part': { readonly word: string; readonly wood: string };
  readonly 'board-without-wood': FormFault;
  readonly 'board-blocks': { readonly count: number; readonly max: number };
  readonly 'board-stripe-width': { readonly wood: string };
  readonly 'board-stripe-room': { readonly wood: string };
  readonly 'board-needs-length': { readonly name: string; readonly example: string };
  readonly 'board-stray-length': { readonly name: string; readonly pattern: string };
  readonly 'board-stray-wood': { readonly wood: string };
  readonly 'board-and-key': { readonly isThickness: boolean };
  readonly 'needs-board': Record<never, never>;
  readonly 'needs-block': Record<never, never>;
  readonly 'block-without-polygons': Record<never, never>;
  readonly 'deeper-than-board': { readonly depth: string; readonly thickness: string };

  readonly 'bit-without-kind': FormFault & { readonly meant: readonly string[] };
  readonly 'bit-kind': FormFault & { readonly kind: string; readonly kinds: readonly string[] };
  readonly 'bit-incomplete': FormFault;
  readonly 'bit-parts': FormFault;
  readonly 'bit-word': FormFault & { readonly part: string; readonly word: string; readonly example: string };
  readonly 'bit-size': FormFault & { readonly value: number; readonly least: number; readonly most: number };
  readonly 'bit-below-zero': FormFault & { readonly value: number; readonly word: string };
  readonly 'bit-angle': BitFault;
  readonly 'bit-corner': BitFault;
  readonly 'bit-tip': BitFault;
  readonly 'bit-two-tips': FormFault;
  readonly 'bit-tip-radius': BitFault;
  readonly 'bit-taper': BitFault;
  readonly 'bit-length': FormFault & { readonly value: number };
  readonly 'profile-pair': FormFault & { readonly pair: string };
  readonly 'profile-points': FormFault;
  readonly 'profile-falls': FormFault & { readonly diameterMm: number; readonly heightMm: number };
  readonly 'profile-empty': FormFault;
  readonly 'profile-needle': FormFault & { readonly heightMm: number };

  readonly 'not-colour-pairs': FormFault & { readonly known: readonly string[] };
  readonly 'not-rounds': FormFault;
  /** The colour or layer that is named in two rounds. */
  readonly 'round-twice': { readonly name: string };
  readonly 'colour-not-drawn': {
    readonly name: string;
    /** Colours and layers of the drawing. */
    readonly known: readonly string[];
    readonly near: string | null;
  };

  readonly 'two-sizes': { readonly keys: readonly string[] };
  readonly 'two-artworks': { readonly file: string | null };
  readonly 'two-coupons': Record<never, never>;
  readonly 'text-empty': Record<never, never>;
  readonly 'text-for-file': Record<never, never>;
  readonly 'artwork-for-text': Record<never, never>;
  readonly 'lettering-size': { readonly scale: number | null; readonly instead: string | null };
  readonly 'lettering-two-sizes': Record<never, never>;
  readonly 'lettering-without-size': Record<never, never>;
  readonly 'lettering-without-font': Record<never, never>;
  readonly 'font-and-single-line': Record<never, never>;
  readonly 'not-for-drawing': Record<never, never>;

  readonly 'coupon-wood': { readonly row: number };
  readonly 'coupon-hours': { readonly row: number; readonly shown: string };
  readonly 'coupon-reading': { readonly shown: string; readonly classes: readonly string[] };
  readonly 'coupon-none': FormFault;
  readonly 'coupon-zero': Record<never, never>;
  readonly 'coupon-ends': { readonly from: string; readonly to: string };
  readonly 'coupon-rule': FormFault & { readonly maxMm: number };
  readonly 'coupon-length': FormFault & { readonly maxMm: number };

  /** Sizes as they are shown, with their units. */
  readonly 'bit-too-short': { readonly depth: string; readonly bit: string; readonly length: string };
  readonly 'calendar-without-start': Record<never, never>;

  readonly 'unknown-finding': {
    readonly typed: string;
    readonly near: string | null;
  };
  readonly 'not-to-be-seen-to': {
    readonly finding: string;
    /** Settings that its ways out change. */
    readonly settings: readonly string[];
    /** Whether a way out of it is work on the drawing. */
    readonly isDrawn: boolean;
    /** Whether test slots would tell. */
    readonly isTested: boolean;
  };

  readonly 'not-json': { readonly file: string; readonly reason: string };
  readonly 'unknown-file': { readonly file: string };
  readonly 'two-files': { readonly kind: string };
  readonly 'shop-entry': { readonly file: string; readonly reason: string; readonly remedy: string };
  readonly 'materials-entry': { readonly file: string; readonly reason: string; readonly remedy: string };
}

/** What is wrong with a job that cannot be settled. */
export type JobErrorCode = keyof JobFaults;
