import type { Declared } from './cascade.ts';
import { type Colour, parseColour } from './css-colour.ts';
import { type LengthContext, parseAlpha, userUnits } from './css-length.ts';
import { isValidValue, PROPERTIES } from './properties.ts';

/** Longest value that `var()` may give: properties that double one another would grow without end. */
const MAX_VALUE_LENGTH = 10_000;

/** Told of each property whose `var()` gives no value that it can have, as declared. */
type InvalidVariable = (property: string, declared: string) => void;

/** The values of an element's properties with inheritance; computed on demand. */
export class ComputedStyle {
  private readonly declared: Declared;
  private readonly parent: ComputedStyle | undefined;
  private readonly onInvalid: InvalidVariable | undefined;
  private readonly known = new Map<string, string>();
  private size: number | undefined;

  constructor(declared: Declared, parent?: ComputedStyle, onInvalid?: InvalidVariable) {
    this.declared = declared;
    this.parent = parent;
    this.onInvalid = onInvalid;
  }

  /** The value of a property as text, with `inherit`, `initial`, `var()` and defaults resolved. */
  get(property: string): string {
    const known = this.known.get(property);
    if (known !== undefined) {
      return known;
    }
    const value = this.workOut(property);
    this.known.set(property, value);
    return value;
  }

  /** Whether the element itself declares a property. */
  declares(property: string): boolean {
    return this.declared.has(property);
  }

  /** Size of the font in user units, which `em` is. */
  get fontSize(): number {
    this.size ??= this.workOutFontSize();
    return this.size;
  }

  /** The colour that `currentColor` stands for. */
  get currentColour(): Colour {
    const value = this.get('color');
    return parseColour(value) ?? this.parent?.currentColour ?? { hex: '#000000', alpha: 1 };
  }

  /** A number 0…1 from a property that takes a number or a percentage. */
  alpha(property: string): number {
    const value = parseAlpha(this.get(property)) ?? 1;
    return Math.max(0, Math.min(1, value));
  }

  private workOut(property: string): string {
    const rule = PROPERTIES.get(property);
    const inherited = rule?.inherited ?? true;
    const initial = rule?.initial ?? '';
    let value = this.declared.get(property);
    if (value !== undefined && /var\(/i.test(value)) {
      const put = this.putVariables(value, 0)?.trim();
      if (put !== undefined && isValidValue(property, put)) {
        value = put;
      } else {
        // invalid at computed-value time (CSS Variables 1 §3.1)
        this.onInvalid?.(property, value);
        value = 'unset';
      }
    }
    const word = value?.toLowerCase();
    if (word === 'initial') {
      return initial;
    }
    const fromParent =
      word === 'inherit' ||
      ((value === undefined || word === 'unset' || word?.startsWith('revert')) && inherited);
    if (fromParent) {
      return this.parent?.get(property) ?? initial;
    }
    return value === undefined || word === 'unset' || word?.startsWith('revert') ? initial : value;
  }

  /** Puts custom properties in place of `var(--name, otherwise)`; `undefined` when one is missing. */
  private putVariables(value: string, depth: number): string | undefined {
    let out = value;
    for (let turn = 0; turn < 20; turn++) {
      const at = out.search(/var\(/i);
      if (at < 0) {
        return out;
      }
      const end = closingBracket(out, at + 3);
      const [, name, otherwise] = /^\s*(--[^\s,)]+)\s*(?:,([\s\S]*))?$/.exec(out.slice(at + 4, end)) ?? [];
      if (name === undefined || depth > 8 || out.length > MAX_VALUE_LENGTH) {
        return undefined;
      }
      const found = this.customProperty(name);
      const put = found === undefined || found === '' ? otherwise : this.putVariables(found, depth + 1);
      if (put === undefined) {
        return undefined;
      }
      out = `${out.slice(0, at)}${put}${out.slice(end + 1)}`;
    }
    return undefined;
  }

  private customProperty(name: string): string | undefined {
    return this.declared.get(name) ?? this.parent?.customProperty(name);
  }

  private workOutFontSize(): number {
    const above = this.parent?.fontSize ?? 16;
    const declared = this.declared.get('font-size');
    if (declared === undefined || /^(?:inherit|unset)$/i.test(declared)) {
      return above;
    }
    const value = this.get('font-size');
    const word = FONT_SIZE_WORDS.get(value.toLowerCase());
    if (word !== undefined) {
      return word;
    }
    if (/^(?:smaller|larger)$/i.test(value)) {
      return above * (value.toLowerCase() === 'larger' ? 1.2 : 1 / 1.2);
    }
    const root = this.rootFontSize(above);
    // percentages are of the size around; there is no viewport here
    const hasPercent = /%/.test(value);
    const context: LengthContext = {
      viewportWidth: hasPercent ? above : 0,
      viewportHeight: hasPercent ? above : 0,
      fontSize: above,
      rootFontSize: root,
    };
    const size = userUnits(value, 'other', context, above);
    return size >= 0 ? size : above;
  }

  private rootFontSize(fallback: number): number {
    let top: ComputedStyle | undefined = this.parent;
    while (top?.parent !== undefined) {
      top = top.parent;
    }
    return top?.fontSize ?? fallback;
  }
}

/** Sizes of the absolute words for a medium of 16 px, by the factors of CSS Fonts 4 §2.5. */
const FONT_SIZE_WORDS: ReadonlyMap<string, number> = new Map([
  ['xx-small', (16 * 3) / 5],
  ['x-small', (16 * 3) / 4],
  ['small', (16 * 8) / 9],
  ['medium', 16],
  ['large', (16 * 6) / 5],
  ['x-large', (16 * 3) / 2],
  ['xx-large', 16 * 2],
  ['xxx-large', 16 * 3],
]);

function closingBracket(text: string, open: number): number {
  let depth = 0;
  for (let i = open; i < text.length; i++) {
    depth += text[i] === '(' ? 1 : text[i] === ')' ? -1 : 0;
    if (depth === 0) {
      return i;
    }
  }
  return text.length;
}
