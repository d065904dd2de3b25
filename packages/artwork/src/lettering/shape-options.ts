/** How a line is shaped. */
export interface ShapeOptions {
  /** Base direction; `auto` takes that of the first strong character. */
  readonly direction?: 'auto' | 'ltr' | 'rtl';
  /** BCP 47 tag, for letter forms that differ by language. */
  readonly language?: string;
  /** OpenType features as `smcp`, `-liga`, `ss01=1`. */
  readonly features?: readonly string[];
}
