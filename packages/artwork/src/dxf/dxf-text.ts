/**
 * The characters that a DXF text value stands for: `\U+XXXX` is a character by its code point and `%%c`,
 * `%%d`, `%%p`, `%%%` are diameter, degree, plus-minus and percent signs (DXF reference, TEXT).
 */
export function plainDxfText(raw: string): string {
  return raw
    .replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/%%([cdp%])/gi, (_, sign: string) => SIGNS[sign.toLowerCase()] ?? sign)
    .replace(/%%(\d{3})/g, (_, code: string) => String.fromCharCode(Number(code)))
    .replace(/%%[ouk]/gi, '');
}

const SIGNS: Readonly<Record<string, string>> = { c: 'Ø', d: '°', p: '±', '%': '%' };

/** The lines of an MTEXT value without its formatting codes; paragraphs and columns begin new lines. */
export function mtextLines(raw: string): string[] {
  return raw
    .replace(/\\[ACFHQTWfpc][^;]*;/g, '')
    .replace(/\\S([^;]*);/g, (_, stack: string) => stack.replace(/[#^]/, '/'))
    .replace(/\\~/g, ' ')
    .replace(/\\[LlOoKk]/g, '')
    .split(/\\[PNX]/)
    .map((line) =>
      plainDxfText(line.replace(/\\([\\{}])|[{}]/g, (_, kept: string | undefined) => kept ?? '')),
    );
}
