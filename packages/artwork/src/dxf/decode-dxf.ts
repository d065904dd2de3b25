import type { Notice } from '@pourproof/plane';
import { decodeBytes } from '../decode-bytes.ts';
import { binaryGroups, isBinaryDxf } from './binary-groups.ts';
import type { DxfGroups } from './dxf-groups.ts';
import { dxfNotice } from './dxf-notices.ts';
import { dxfRefusal } from './dxf-refusals.ts';
import { textGroups } from './text-groups.ts';

/**
 * Encoding Standard labels of the code pages that a DXF header can name; what is missing here no decoder of
 * the platform knows.
 */
const LABEL_OF_CODE_PAGE: Readonly<Record<string, string>> = {
  ANSI_874: 'windows-874',
  ANSI_932: 'shift_jis',
  ANSI_936: 'gbk',
  ANSI_949: 'euc-kr',
  ANSI_950: 'big5',
  ANSI_1250: 'windows-1250',
  ANSI_1251: 'windows-1251',
  ANSI_1252: 'windows-1252',
  ANSI_1253: 'windows-1253',
  ANSI_1254: 'windows-1254',
  ANSI_1255: 'windows-1255',
  ANSI_1256: 'windows-1256',
  ANSI_1257: 'windows-1257',
  ANSI_1258: 'windows-1258',
  DOS866: 'ibm866',
  DOS932: 'shift_jis',
  'ISO8859-1': 'windows-1252',
  'ISO8859-2': 'iso-8859-2',
  'ISO8859-5': 'iso-8859-5',
  'ISO8859-7': 'iso-8859-7',
  MACINTOSH: 'macintosh',
  MAC_ROMAN: 'macintosh',
};

/** Header bytes in which the version and the code page are looked for. */
const HEAD_BYTES = 65_536;

/**
 * Makes group pairs of the bytes or the text of a DXF file, and tells what was doubtful about the encoding.
 *
 * The order of evidence: byte order mark; version AC1021 or later, which is UTF-8 by the DXF reference;
 * `$DWGCODEPAGE`; UTF-8 if it fits, else Western European. Only names and texts depend on it.
 *
 * @throws {ArtworkError} `empty-file`, `not-dxf` for data of another kind
 */
export function decodeDxf(source: Uint8Array | string): { groups: DxfGroups; notices: Notice[] } {
  if (typeof source === 'string') {
    refuseOtherKinds(source);
    return { groups: textGroups(source.replace(/^\ufeff/, '')), notices: [] };
  }
  const notices: Notice[] = [];
  const head = latin1(source.subarray(0, HEAD_BYTES));
  if (isBinaryDxf(source)) {
    const label = labelFrom(head, notices);
    return { groups: binaryGroups(source, (bytes) => decodeText(bytes, label, notices)), notices };
  }
  refuseOtherKinds(head);
  const marked = markedEncoding(source);
  const text = decodeText(source, marked ?? labelFrom(head, notices), notices);
  return { groups: textGroups(text), notices };
}

function refuseOtherKinds(head: string): void {
  const start = head.replace(/^(\ufeff|ï»¿)/, '').trimStart();
  if (start === '') {
    throw dxfRefusal('empty-file', {});
  }
  if (/^AC1\d{3}/.test(start)) {
    throw dxfRefusal('not-dxf', { found: 'dwg' });
  }
}

function markedEncoding(bytes: Uint8Array): string | undefined {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) {
    return 'utf-8';
  }
  if (a === 0xff && b === 0xfe) {
    return 'utf-16le';
  }
  return a === 0xfe && b === 0xff ? 'utf-16be' : undefined;
}

/** The label by version or code page; `undefined` when the file does not say. */
function labelFrom(head: string, notices: Notice[]): string | undefined {
  // in binary files a zero byte ends each value and numbers stand between, hence the loose gaps
  const version = /\$ACADVER[^A-Z]{1,12}AC(\d{4})/.exec(head)?.[1];
  if (version !== undefined && Number(version) >= 1021) {
    return 'utf-8';
  }
  const page = /\$DWGCODEPAGE[^A-Za-z]{1,12}([\w-]+)/.exec(head)?.[1]?.toUpperCase();
  if (page === undefined) {
    return undefined;
  }
  const label = LABEL_OF_CODE_PAGE[page] ?? LABEL_OF_CODE_PAGE[page.replace(/^ANSI(?=\d)/, 'ANSI_')];
  if (label === undefined) {
    notices.push(dxfNotice('unknown-encoding', { codePage: page }));
  }
  return label;
}

function decodeText(bytes: Uint8Array, label: string | undefined, notices: Notice[]): string {
  if (label !== undefined && label !== 'utf-8') {
    return decodeBytes(bytes, label);
  }
  try {
    return decodeBytes(bytes, 'utf-8', true);
  } catch {
    if (label === 'utf-8' && !notices.some((n) => n.code === 'unknown-encoding')) {
      notices.push(dxfNotice('unknown-encoding', { codePage: '' }));
    }
    return decodeBytes(bytes, 'windows-1252');
  }
}

function latin1(bytes: Uint8Array): string {
  return decodeBytes(bytes, 'windows-1252');
}
