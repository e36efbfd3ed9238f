import type { Step } from './change.ts';
import { changeFromJson, changeToJson } from './change-json.ts';
import { fields, list, whole } from './json-parts.ts';
import type { Notebook } from './notebook.ts';
import { seal, unseal } from './sealed.ts';

/** One act as the journal keeps it: what was done, where in the order, and when. */
export interface Act extends Step {
  /** Its place in the order of all acts of the notebook, from 1. */
  readonly number: number;
  /** When it was done, in milliseconds since 1970. */
  readonly at: number;
  /** The window that did it. */
  readonly by: string;
}

/** An act as bytes that tell by themselves whether they are whole. */
export function actToBytes({ number, at, by, label, changes }: Act): Uint8Array<ArrayBuffer> {
  return seal({ number, at, by, label, changes: changes.map(changeToJson) });
}

/** An act read back, or undefined where a byte of it is missing or wrong. */
export function actFromBytes(bytes: unknown): Act | undefined {
  const parts = fields(unseal(bytes)?.value);
  const changes = whole((aside) => list(parts?.get('changes'), '', aside, changeFromJson));
  const [number, at] = [parts?.get('number'), parts?.get('at')];
  const [by, label] = [parts?.get('by'), parts?.get('label')];
  if (typeof number !== 'number' || typeof at !== 'number' || !changes) return undefined;
  if (typeof by !== 'string' || typeof label !== 'string') return undefined;
  return { number, at, by, label, changes };
}

/** A record of the journal as it lies in the store. */
export interface ActRecord {
  readonly number: number;
  readonly bytes: unknown;
}

/** What replaying came to. */
export interface Replayed {
  /** The acts that were made, in order. */
  readonly acts: readonly Act[];
  /** The number of the last act of all, readable or not. */
  readonly last: number;
  /** What could not be read, in words. */
  readonly setAside: readonly string[];
}

/**
 * Does a journal's acts again, in order, in the notebook as it was after act `from`. A record that is
 * torn, foreign or missing is told and passed over; the acts after it are made as far as they fit.
 */
export function replay(
  notebook: Notebook,
  from: number,
  records: readonly ActRecord[],
  until = Infinity,
): Replayed {
  const setAside: string[] = [];
  const acts: Act[] = [];
  let last = from;
  for (const { number, bytes } of records) {
    if (number <= last) continue;
    if (number > until) break;
    for (let missing = last + 1; missing < number; missing += 1)
      setAside.push(`Act ${String(missing)} of the journal is missing.`);
    last = number;
    const act = actFromBytes(bytes);
    if (act?.number !== number) {
      setAside.push(
        `Act ${String(number)} of the journal can’t be read: it was not written whole.`,
      );
      continue;
    }
    notebook.take(act.changes);
    acts.push(act);
  }
  return { acts, last, setAside };
}
