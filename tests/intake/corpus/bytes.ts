import { PLAIN, plain, type CorpusFile } from './file.ts';

const HEADER = ['1 header'];

/** How the bytes of a file come. */
export const BYTES: readonly CorpusFile[] = [
  { is: 'in plain UTF-8', file: PLAIN, rows: plain(2), over: HEADER },
  { is: 'with a byte order mark', file: `\ufeff${PLAIN}`, rows: plain(2), over: HEADER },
  { is: 'in UTF-16, small end first', file: wide(`\ufeff${PLAIN}`), rows: plain(2), over: HEADER },
  {
    is: 'in UTF-16, big end first',
    file: wide(`\ufeff${PLAIN}`, true),
    rows: plain(2),
    over: HEADER,
  },
  { is: 'in UTF-16 without a mark', file: wide(PLAIN), rows: plain(2), over: HEADER },
  {
    is: 'in UTF-16, big end first, without a mark',
    file: wide(PLAIN, true),
    rows: plain(2),
    over: HEADER,
  },
  {
    // Windows-1252: 0x93 and 0x94 are curled quotes, 0xBD is ½, 0x96 the en dash.
    is: 'in Windows-1252',
    file: bytes('Post,Gap,Over,Note\n1,1\xbd\x94,48\x94,caf\xe9 \x96 wall'),
    rows: '2: post=1; gap=38.1; lvl=1219.2; note=café – wall',
    over: HEADER,
    says: 'Windows-1252',
  },
  {
    is: 'in Latin-1',
    file: bytes('Post,Gap in,Level in,Note\n1,1\xbc,48,H\xf6he \xb1'),
    rows: '2: post=1; gap=31.75; lvl=1219.2; note=Höhe ±',
    over: HEADER,
    says: 'Latin-1',
  },
  {
    is: 'in UTF-8 with a letter of Windows-1252 in it',
    file: joined('Post,Gap in,Level in,Note\n1,1½,48,Höhe\n2,1¼,48,', bytes('\x96'), ' end'),
    rows: '2: post=1; gap=38.1; lvl=1219.2; note=Höhe\n3: post=2; gap=31.75; lvl=1219.2; note=– end',
    over: HEADER,
    says: 'some are not',
  },
  {
    is: 'with a byte order mark and a wrong letter after all',
    file: joined('\ufeffPost,Gap in,Level in,Note\n1,1½,48,é', bytes('\xbd')),
    rows: '2: post=1; gap=38.1; lvl=1219.2; note=é½',
    over: HEADER,
    says: 'some are not',
  },
  {
    is: 'with lines ended by CR',
    file: PLAIN.replaceAll('\n', '\r'),
    rows: plain(2),
    over: HEADER,
  },
  {
    is: 'with lines ended by CRLF',
    file: PLAIN.replaceAll('\n', '\r\n'),
    rows: plain(2),
    over: HEADER,
  },
  {
    is: 'with three kinds of line end',
    file: PLAIN.replace('\n', '\r\n').replace(/\n2/, '\r2'),
    rows: plain(2),
    over: HEADER,
  },
  { is: 'with blank lines at its end', file: `${PLAIN}\n\n\r\n\n`, rows: plain(2), over: HEADER },
  {
    is: 'with a letter that an earlier program lost',
    file: 'Post,Gap in,Level in\n1,1\ufffd,48\n2,1/4,48',
    rows: '2: post=1; gap=!1\ufffd; lvl=1219.2\n3: post=2; gap=6.35; lvl=1219.2',
    asks: ['2 lean_gap'],
    over: HEADER,
  },
  {
    is: 'with thin, narrow and no-break spaces',
    file: 'Post,Gap\u00a0in,Level\u202fin,Note\n1,1\u20091/4,\u00a048,a\u00a0b',
    rows: '2: post=1; gap=31.75; lvl=1219.2; note=a\u00a0b',
    over: HEADER,
  },
  { is: 'with zero bytes in it', file: bytes('Post,Gap\n1\0,2\n3\0\0,4'), refused: 'not text' },
  { is: 'that is a workbook', file: bytes('PK\x03\x04\x14\0\x06\0'), refused: 'office workbook' },
  {
    is: 'that is an old workbook',
    file: bytes('\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1'),
    refused: 'old office',
  },
  { is: 'that is gzipped', file: bytes('\x1f\x8b\x08\0\0\0\0\0'), refused: 'gzip' },
  { is: 'that is packed with xz', file: bytes('\xfd7zXZ\0\0\x04'), refused: 'xz archive' },
  {
    is: 'that is packed with zstandard',
    file: bytes('\x28\xb5\x2f\xfd\x04\0'),
    refused: 'zstandard',
  },
  { is: 'that is a PDF', file: '%PDF-1.7\n1 0 obj', refused: 'a PDF' },
  {
    is: 'that is a photo of the list',
    file: bytes('\xff\xd8\xff\xe0\0\x10JFIF'),
    refused: 'picture',
  },
  { is: 'that is a formatted document', file: '{\\rtf1\\ansi Post}', refused: 'formatted text' },
  {
    is: 'that is a web page under the name of a list',
    file: '<html><body><table><tr><td>Post</td></tr></table>',
    refused: 'a web page',
  },
  { is: 'that is XML', file: '<?xml version="1.0"?><Workbook/>', refused: 'an XML document' },
  { is: 'that is a notebook file', file: '{\n "backplumb": "notebook"\n}', refused: 'JSON' },
  { is: 'with nothing in it', file: '', refused: 'empty' },
  { is: 'with a mark and nothing else', file: '\ufeff', refused: 'empty' },
  { is: 'with separators and nothing else', file: '\n;;;\n,,\n', refused: 'no line with anything' },
];

function bytes(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

function wide(text: string, bigEndFirst = false): Uint8Array {
  return Uint8Array.from(
    Array.from(text).flatMap((letter) => {
      const pair = [letter.charCodeAt(0) & 255, letter.charCodeAt(0) >> 8];
      return bigEndFirst ? pair.reverse() : pair;
    }),
  );
}

function joined(...parts: readonly (string | Uint8Array)[]): Uint8Array {
  return Uint8Array.from(
    parts.flatMap((part) => [
      ...(typeof part === 'string' ? new TextEncoder().encode(part) : part),
    ]),
  );
}
