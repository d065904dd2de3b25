import { isolatedText } from '../bidi-parts.ts';
import { OUTPUT_MARK } from '../output-mark.ts';
import { escapeXml } from './escape-xml.ts';

/** What stands before the body of a page that is printed: it names who made it, and runs and fetches nothing. */
export function htmlHead(title: string, style: string, version: string): readonly string[] {
  return [
    '<!doctype html>',
    '<html lang="en">',
    '<head>',
    '<meta charset="utf-8">',
    `<meta name="generator" content="${OUTPUT_MARK} ${escapeXml(version)}">`,
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escapeXml(isolatedText(title))}</title>`,
    `<style>${style}</style>`,
    '</head>',
  ];
}
