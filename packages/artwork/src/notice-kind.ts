import {
  type LengthUnit,
  type Notice,
  type NoticeEffect,
  type NoticeParams,
  type NoticePlace,
  textInUnits,
} from '@pourproof/plane';

/** Severity and wording of one kind of notice; the text is made from the parameters alone, its lengths in `unit`. */
export interface NoticeKind<P extends NoticeParams> {
  readonly severity: Notice['severity'];
  readonly effect?: NoticeEffect;
  readonly text: (params: P, unit: LengthUnit) => string;
}

/** A caution: the result may not be what the maker means. */
export function caution<P extends NoticeParams>(text: NoticeKind<P>['text']): NoticeKind<P> {
  return { severity: 'caution', text };
}

/** Something that is drawn is not in the artwork, and so is not vetted. */
export function leftOut<P extends NoticeParams>(text: NoticeKind<P>['text']): NoticeKind<P> {
  return { severity: 'caution', effect: 'left-out', text };
}

/** The file does not say how large the artwork is, and the reader guessed. */
export function assumed<P extends NoticeParams>(text: NoticeKind<P>['text']): NoticeKind<P> {
  return { severity: 'caution', effect: 'assumed', text };
}

/** Something is in the artwork otherwise than it is drawn. */
export function changed<P extends NoticeParams>(text: NoticeKind<P>['text']): NoticeKind<P> {
  return { severity: 'caution', effect: 'changed', text };
}

/** A note: good to know. */
export function note<P extends NoticeParams>(text: NoticeKind<P>['text']): NoticeKind<P> {
  return { severity: 'note', text };
}

/** The notice of a kind for its parameters. */
export function makeNotice<P extends NoticeParams>(
  code: string,
  { severity, effect, text }: NoticeKind<P>,
  params: P,
  where: readonly NoticePlace[] = [],
): Notice {
  return {
    code,
    params,
    text: textInUnits((unit) => text(params, unit)),
    where,
    severity,
    ...(effect === undefined ? {} : { effect }),
  };
}

/** A count with its noun: `1 shape`, `3 shapes`. */
export function counted(count: number, one: string, many: string = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}
