import { decode, records } from '../csv/index.ts';
import { isProblem } from '../units/index.ts';

/** Finds a line of a file as it stood there, a record over several lines whole; undefined where it has none. */
export function linesOf(bytes: Uint8Array): (line: number) => string | undefined {
  const decoded = decode(bytes);
  if (isProblem(decoded)) return () => undefined;
  const texts = new Map(records(decoded.text).records.map(({ line, text }) => [line, text]));
  return (line) => texts.get(line);
}
