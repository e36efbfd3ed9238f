import { problem, type Problem } from '../units/index.ts';
import { notText } from './not-text.ts';
import { mixedText, oneByteText } from './one-byte.ts';

/** The text of a file, and how its bytes were read. */
export interface Decoded {
  readonly text: string;
  readonly encoding: Encoding;
}

/** The ways a site file's letters come. */
export type Encoding =
  | 'utf-8'
  | 'utf-16le'
  | 'utf-16be'
  | 'windows-1252'
  | 'iso-8859-1'
  /** UTF-8 with some letters of a one-byte code page among them. */
  | 'mixed';

/** The largest file that is read. [byte] */
const LARGEST = 50 * 1024 * 1024;

/** Hears how far something has come, from 0 to 1. */
export type Heard = (share: number) => void;

/** The text of a CSV file, or why its bytes are not one and what to do about it. */
export function decode(bytes: Uint8Array, heard?: Heard): Decoded | Problem {
  if (bytes.length === 0) return EMPTY;
  if (bytes.length > LARGEST) {
    const size = String(Math.ceil(bytes.length / 1024 / 1024));
    return problem(
      '',
      `The file is ${size} MB; the most that is read is 50 MB.`,
      'Split it by run or by job, and bring the parts in one by one.',
    );
  }
  const marked = byteOrderMark(bytes);
  if (marked === 'utf-16le' || marked === 'utf-16be') return decodeAs(marked, bytes);
  const refused = notText(bytes);
  if (refused) return refused;
  const wide = wideWithoutMark(bytes);
  if (wide) return decodeAs(wide, bytes);
  if (bytes.includes(0)) {
    return problem(
      '',
      'The file holds bytes that are not text.',
      'Open it where it was made and save it as CSV.',
    );
  }
  try {
    const text = piecewise(new TextDecoder('utf-8', { fatal: true }), bytes, heard);
    return text === '' ? EMPTY : { text, encoding: 'utf-8' };
  } catch {
    return mixedText(bytes) ?? oneByteText(bytes);
  }
}

const EMPTY = problem('', 'The file is empty.', 'Save the list again, then bring it in.');

/** Decodes piece by piece, so that it can be told how far it has come. */
function piecewise(decoder: TextDecoder, bytes: Uint8Array, heard?: Heard): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += PIECE) {
    text += decoder.decode(bytes.subarray(at, at + PIECE), { stream: true });
    heard?.(Math.min(1, (at + PIECE) / bytes.length));
  }
  return text + decoder.decode();
}

/** As much is decoded at once. [byte] */
const PIECE = 64 * 1024;

function decodeAs(encoding: 'utf-16le' | 'utf-16be', bytes: Uint8Array): Decoded | Problem {
  const text = new TextDecoder(encoding).decode(bytes);
  return text === '' ? EMPTY : { text, encoding };
}

function byteOrderMark(bytes: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' | undefined {
  const [first, second, third] = bytes;
  if (first === 0xef && second === 0xbb && third === 0xbf) return 'utf-8';
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  return undefined;
}

/** Two-byte letters without a mark show as a zero in every other byte. */
function wideWithoutMark(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  const pairs = Math.floor(Math.min(bytes.length, 4096) / 2);
  let even = 0;
  let odd = 0;
  for (let pair = 0; pair < pairs; pair++) {
    if (bytes[2 * pair] === 0) even++;
    if (bytes[2 * pair + 1] === 0) odd++;
  }
  if (odd > pairs * 0.4 && even < pairs * 0.05) return 'utf-16le';
  if (even > pairs * 0.4 && odd < pairs * 0.05) return 'utf-16be';
  return undefined;
}
