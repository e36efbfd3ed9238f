/** A number as somebody wrote it, without sign or unit: every way it can be taken. */
export interface WrittenNumber {
  readonly ways: readonly NumberWay[];
  /** One way only, and nothing odd about it. */
  readonly sure: boolean;
  /** Written as a fraction or a whole and a fraction. */
  readonly fraction: boolean;
}

/** One way to take a number, and a text that can be taken in that way only. */
export interface NumberWay {
  readonly number: number;
  readonly text: string;
}

/**
 * Reads a whole, a decimal, a fraction or a whole and a fraction (`1 1/4`, `1-1/4`, `1 1 / 4`).
 * Undefined where the text is not a number. A fraction at or over 1 (`11/4`) is never sure, and
 * neither is `1,200` while the decimal mark is unknown.
 */
export function readNumber(text: string, decimal?: '.' | ','): WrittenNumber | undefined {
  const mixed = /^(\d+)[ -](\d+) ?\/ ?(\d+)$/.exec(text);
  if (mixed) return fraction(text, mixed[1] ?? '', mixed[2] ?? '', mixed[3] ?? '');
  const simple = /^(\d+) ?\/ ?(\d+)$/.exec(text);
  if (simple) return fraction(text, '', simple[1] ?? '', simple[2] ?? '');
  const numbers = decimals(text, decimal).filter((number) => Number.isFinite(number));
  const [only, ...others] = numbers;
  if (only === undefined) return undefined;
  if (others.length === 0) return { ways: [{ number: only, text }], sure: true, fraction: false };
  const ways = numbers.map((number) => ({ number, text: String(number) }));
  return { ways, sure: false, fraction: false };
}

/** Takes the sign off the front of an entry: 1 or -1, and the rest. */
export function splitSign(text: string): { readonly sign: 1 | -1; readonly rest: string } {
  const sign = text.startsWith('-') ? -1 : 1;
  return { sign, rest: /^[+-]/.test(text) ? text.slice(1).trim() : text };
}

function fraction(
  text: string,
  whole: string,
  numerator: string,
  denominator: string,
): WrittenNumber | undefined {
  const over = Number(denominator);
  const parts = Number(numerator);
  const number = (Number(whole) * over + parts) / over;
  if (!Number.isFinite(number)) return undefined;
  if (parts < over) return { ways: [{ number, text }], sure: true, fraction: true };
  if (parts > LARGEST || number > LARGEST) return undefined;
  const ways = [way(Math.floor(number), (Number(whole) * over + parts) % over, over)];
  // The gap between the whole and its fraction may have been left out: 11/4 for 1 1/4.
  for (let cut = 1; whole === '' && cut < numerator.length; cut += 1) {
    const rest = Number(numerator.slice(cut));
    if (rest > 0 && rest < over && numerator[cut] !== '0') {
      ways.push(way(Number(numerator.slice(0, cut)), rest, over));
    }
  }
  return { ways, sure: false, fraction: true };
}

// Beyond this a double no longer holds every whole number, so the text of a way would not read back.
const LARGEST = 1e15;

function way(whole: number, parts: number, over: number): NumberWay {
  const text = parts === 0 ? String(whole) : `${String(whole)} ${String(parts)}/${String(over)}`;
  return { number: (whole * over + parts) / over, text };
}

function decimals(text: string, decimal: '.' | ',' | undefined): number[] {
  if (/^\d+$/.test(text)) return [Number(text)];
  if (/^\d{1,3}(?: \d{3})+$/.test(text)) return [Number(text.replaceAll(' ', ''))];
  if (/^\d{1,3}(?:,\d{3}){2,}$/.test(text)) return [Number(text.replaceAll(',', ''))];
  if (/^\d{1,3}(?:\.\d{3}){2,}$/.test(text)) return [Number(text.replaceAll('.', ''))];
  if (/^\d{1,3}(?:,\d{3})+\.\d+$/.test(text)) return [Number(text.replaceAll(',', ''))];
  if (/^\d{1,3}(?:\.\d{3})+,\d+$/.test(text)) return [pointed(text.replaceAll('.', ''))];
  const grouped = /^[1-9]\d{0,2}([.,])\d{3}$/.exec(text);
  if (grouped) {
    if (decimal !== undefined && grouped[1] !== decimal) return [Number(text.replace(/[.,]/, ''))];
    if (decimal !== undefined || grouped[1] === '.') return [pointed(text)];
    return [Number(text.replace(',', '')), pointed(text)];
  }
  return /^\d*[.,]\d+$/.test(text) ? [pointed(text)] : [];
}

function pointed(text: string): number {
  return Number(text.replace(',', '.'));
}
