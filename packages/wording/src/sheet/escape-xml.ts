const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/**
 * Text made safe for SVG and HTML, in content and in quoted attributes; control characters that XML 1.0 bars
 * become `�`.
 */
export function escapeXml(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that XML 1.0 §2.2 bars
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/gu, '\ufffd')
      .replace(/[&<>"']/gu, (char) => ESCAPES[char] ?? char)
  );
}
