import { quoted } from './characters.ts';
import type { Choice, Doubt } from './reading.ts';

/** The answer that leaves the cell blank. */
const NOT_READ: Choice = { label: 'not read', entry: '' };

/**
 * The Doubt behind an entry that says no reading was taken (`?`, `n/a`), that repeats the line
 * above (`"`, `do.`), or that gives a word or a dash for zero (`plumb`, `ok`, `-`); undefined
 * where the entry is none of these.
 */
export function wordForReading(text: string, zeroEntry?: () => string): Doubt | undefined {
  if (NOT_TAKEN.test(text)) {
    const question = `${quoted(text)} says that no reading was taken. Type the reading once you have it.`;
    return { doubt: 'not taken', question, choices: [NOT_READ] };
  }
  if (DITTO.test(text)) {
    const question = `${quoted(text)} is a ditto mark. Is this the same as the line above?`;
    return { doubt: 'ditto', question, choices: [] };
  }
  if (zeroEntry === undefined || !FOR_ZERO.test(text)) return undefined;
  const question = `Does ${quoted(text)} mean 0, or was it not read?`;
  const zero = zeroEntry();
  return { doubt: 'reading', question, choices: [{ label: zero, entry: zero }, NOT_READ] };
}

const NOT_TAKEN =
  /^(?:\?+(?: ?\(.*\))?|(?:n\/a|n\.a\.?|na|tb[acd]|skip(?:ped)?|not (?:taken|read|measured|done)|missing|unknown|no (?:reading|access)|(?:can't|cannot|couldn't|could not) (?:read|reach|see|measure))(?:[ ,:;(-].*)?)$/i;
const DITTO = /^(?:"|'|do\.?|ditto\.?|" *"|same|as above|same as above)$/i;
const FOR_ZERO =
  /^(?:-+|plumb|ok(?:ay)?|good|level|none|nil|flush|at grade|straight|true|zero|no lean)$/i;
