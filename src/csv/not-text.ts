import { problem, type Problem } from '../units/index.ts';

/** Why a file that is recognised by its first bytes is not a CSV, and what to do; undefined where it may be one. */
export function notText(bytes: Uint8Array): Problem | undefined {
  const start = String.fromCharCode(...bytes.subarray(0, 16));
  const known = KNOWN.find(({ at, mark }) => start.startsWith(mark, at)) ?? markup(bytes);
  return known && problem('', `The file is ${known.what}, not a CSV.`, known.fix);
}

/** Files that are text and still no list: some programs save a web page under a list's name. */
function markup(bytes: Uint8Array): Omit<KnownFile, 'at' | 'mark'> | undefined {
  const start = String.fromCharCode(...bytes.subarray(0, 256))
    .replace(/^\xef\xbb\xbf/, '')
    .trimStart();
  if (/^<(?:!doctype\s+html|html|head|body|table|meta)\b/i.test(start))
    return { what: 'a web page', fix: SAVE_AS };
  if (/^<\?xml\b/i.test(start)) return { what: 'an XML document', fix: SAVE_AS };
  if (/^[{[]\s*(?:["{[\]}]|$)/.test(start)) {
    return {
      what: 'JSON',
      fix: 'If it is a notebook saved from here, open it as a notebook file; else save its list as CSV.',
    };
  }
  return undefined;
}

interface KnownFile {
  readonly at: number;
  readonly mark: string;
  readonly what: string;
  readonly fix: string;
}

const SAVE_AS = 'Open it where it was made and save that list as CSV.';
const UNPACK = 'Unpack it, then bring in the CSV that is inside.';
const TYPE_IT = 'A picture can’t be read: type its readings into the posts sheet.';

// First bytes as the formats' own specifications give them.
const KNOWN: readonly KnownFile[] = [
  {
    at: 0,
    mark: 'PK\x03\x04',
    what: 'a zip or an office workbook',
    fix: 'If it is a workbook, open it and save its list as CSV; if it is a zip, unpack it first.',
  },
  { at: 0, mark: 'PK\x05\x06', what: 'an empty zip', fix: SAVE_AS },
  { at: 0, mark: '\xd0\xcf\x11\xe0', what: 'an old office document', fix: SAVE_AS },
  { at: 0, mark: '{\\rtf', what: 'a formatted text document', fix: SAVE_AS },
  {
    at: 0,
    mark: '%PDF',
    what: 'a PDF',
    fix: 'Ask for the list it was printed from, saved as CSV.',
  },
  { at: 0, mark: 'SQLite format 3', what: 'a database', fix: SAVE_AS },
  { at: 0, mark: '\x1f\x8b', what: 'a gzip archive', fix: UNPACK },
  { at: 0, mark: '7z\xbc\xaf', what: 'a 7z archive', fix: UNPACK },
  { at: 0, mark: 'Rar!', what: 'a rar archive', fix: UNPACK },
  { at: 0, mark: 'BZh', what: 'a bzip2 archive', fix: UNPACK },
  { at: 0, mark: '\xfd7zXZ', what: 'an xz archive', fix: UNPACK },
  { at: 0, mark: '\x28\xb5\x2f\xfd', what: 'a zstandard archive', fix: UNPACK },
  { at: 0, mark: '\x89PNG', what: 'a picture (PNG)', fix: TYPE_IT },
  { at: 0, mark: '\xff\xd8\xff', what: 'a picture (JPEG)', fix: TYPE_IT },
  { at: 0, mark: 'GIF8', what: 'a picture (GIF)', fix: TYPE_IT },
  { at: 0, mark: 'II*\x00', what: 'a picture (TIFF)', fix: TYPE_IT },
  { at: 0, mark: 'MM\x00*', what: 'a picture (TIFF)', fix: TYPE_IT },
  { at: 8, mark: 'WEBP', what: 'a picture (WebP)', fix: TYPE_IT },
  { at: 4, mark: 'ftyp', what: 'a picture or a film', fix: TYPE_IT },
];
