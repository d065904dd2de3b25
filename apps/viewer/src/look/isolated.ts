import { bidiParts } from '@pourproof/wording';
import { html, type TemplateResult } from 'lit';

/** A sentence whose names from right to left leave what stands beside them in its order. */
export function isolated(sentence: string): readonly (string | TemplateResult)[] {
  return bidiParts(sentence).map(({ text, isForeign }) => (isForeign ? html`<bdi>${text}</bdi>` : text));
}
