import { OUT_OF_PLUMB } from './slope.ts';

/** What stands beside the number in an entry, and the entry without it. */
export interface Marks {
  readonly rest: string;
  /** `~`, `abt`, `approx`. */
  readonly approximate: boolean;
  /** `E`, `toward street`, `uphill`: the direction as the trade writes it. */
  readonly toward?: string;
  /** `below grade` is -1, `above grade` and `proud` are 1. */
  readonly side?: 1 | -1;
}

/** Takes `~` and `abt` off an entry. */
export function takeApproximate(text: string): Marks {
  const rest = text
    .replace(/^(?:~|≈|(?:abt|about|approx|approximately|circa|ca)(?:\.|\b)) ?/i, '')
    .replace(/ ?(?:~|≈|\+\/-|±| (?:approx|abt|ca)\.?)$/i, '')
    .trim();
  return { rest, approximate: rest !== text };
}

/** Takes direction, side of grade, `oc`, `dia` and the like off a length. */
export function takeLengthMarks(text: string): Marks {
  if (/^[-\d ./'"]*$/.test(text)) return { rest: text, approximate: false };
  let marks = takeApproximate(text);
  for (const take of [takeToward, takeSide, takePlainWords]) {
    marks = { ...marks, ...take(marks.rest) };
  }
  return marks;
}

/** The direction opposite a compass point, `left` or `uphill`; undefined where there is none. */
export function opposite(toward: string): string | undefined {
  const words = PAIRS.find((pair) => pair.includes(toward));
  if (words) return words.find((word) => word !== toward);
  if (!/^[NESW]+$/.test(toward)) return undefined;
  return toward.replace(/[NESW]/g, (point) => 'SWNE'.charAt('NESW'.indexOf(point)));
}

const PAIRS = [
  ['uphill', 'downhill'],
  ['left', 'right'],
];
const POINT =
  '(?:north(?:east|west)?|south(?:east|west)?|east|west|(?:n{1,2}|s{1,2})[ew]|[ew][ns][ew]|[nsew]|uphill|downhill|left|right)';
const LEADING_POINT = new RegExp(`^(${POINT}) (?=[-+~.\\d])`, 'i');
const TRAILING_POINT = new RegExp(
  `(?<![a-z]) ?(?:(?:to|towards?|leans|leaning) )?(?:the )?\\b(${POINT})$`,
  'i',
);
const TOWARD = / (?:towards?|leaning to|leans to) (?:the )?([a-z][a-z ]{0,30})$/i;

function takeToward(text: string): Pick<Marks, 'rest' | 'toward'> {
  const tight =
    /^([ns]?[ew]|[ns])(?=[\d.])/i.exec(text) ?? /(?<=[\d"'%°])([ns]?[ew]|[ns])$/i.exec(text);
  const found = LEADING_POINT.exec(text) ?? tight ?? TRAILING_POINT.exec(text) ?? TOWARD.exec(text);
  if (!found) return { rest: text };
  const rest = (text.slice(0, found.index) + text.slice(found.index + found[0].length)).trim();
  return { rest, toward: directionName(found[1] ?? '') };
}

function directionName(written: string): string {
  const word = written.toLowerCase();
  if (/^(?:north|south|east|west)/.test(word)) {
    return word.replace(/north|south|east|west/g, (point) => point.slice(0, 1).toUpperCase());
  }
  if (/^[nsew]{1,3}$/.test(word)) return word.toUpperCase();
  return PAIRS.flat().includes(word) ? word : `toward ${written}`;
}

const LEVEL = '(?: (?:of |the )?(?:grade|ground|line|string))?';
const SIDE = new RegExp(
  `^(?:(below|under|down)|above|up|proud)${LEVEL} (?=[\\d.~])|` +
    ` (?:(below|under|down)|above|up|proud)${LEVEL}$`,
  'i',
);

function takeSide(text: string): Pick<Marks, 'rest' | 'side'> {
  const found = SIDE.exec(text);
  if (!found) return { rest: text };
  const rest = text.replace(SIDE, '').trim();
  return { rest, side: (found[1] ?? found[2]) === undefined ? 1 : -1 };
}

const PLAIN_WORDS =
  / ?(?<![a-z])(?:o\.?\/?c\.?|c\/c|on centers?|on centres?|ctrs?\.?|centers?|centres?|dia(?:m|meter)?\.?|ø|⌀|tall|high|deep|wide|long|thick)$/i;

function takePlainWords(text: string): Pick<Marks, 'rest'> {
  const rest = text
    .replace(OUT_OF_PLUMB, '')
    .replace(PLAIN_WORDS, '')
    .replace(/^(?:dia(?:m|meter)?\.?|ø|⌀) ?(?=[\d.])/i, '');
  return { rest: rest.trim() };
}
