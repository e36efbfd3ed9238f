import { unitNamed } from '../units/index.ts';
import { Refused, type Span } from './problem.ts';

/** The smallest pieces of a formula, with their places in the text. */
export interface Token extends Span {
  readonly type: 'number' | 'text' | 'name' | 'sign';
  readonly text: string;
}

const LONGEST = 2000;
const DEEPEST = 40;

const PATTERN =
  /(?<space>[ \t\r\n]+)|(?<number>(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?)|(?<name>[A-Za-z_][A-Za-z0-9_]*)|(?<text>"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*')|(?<sign>==|!=|<=|>=|[-+*/^<>?:(),.[\]])/uy;

/** Words that the parser knows and formulas do not. */
const FOREIGN = new Map([
  ['mod', 'Take remainders with x - floor(x / y) * y.'],
  ['xor', 'Write a != b.'],
  ['null', 'Leave the cell blank; a formula answers for a blank with given(x, otherwise).'],
  ['undefined', 'Leave the cell blank; a formula answers for a blank with given(x, otherwise).'],
  ['NaN', 'Leave the cell blank; a formula answers for a blank with given(x, otherwise).'],
  ['Infinity', 'Write a number.'],
  ['end', 'Give the column another name.'],
]);

/** Signs that the parser knows and formulas do not, with what to write instead. */
const FOREIGN_SIGNS = new Map([
  ['?.', 'Write sheet.column.'],
  ['??', 'A formula answers for a blank with given(x, otherwise).'],
  ['.*', 'Write *.'],
  ['./', 'Write /.'],
  ['.^', 'Write ^.'],
  ['**', 'Write ^ for a power.'],
  ['<<', 'Write a comparison, or * 2.'],
  ['>>', 'Write a comparison, or / 2.'],
  ['<>', 'Write !=.'],
]);

/** What to write instead of a character that formulas do not know. */
const ADVICE = new Map([
  ["'", 'Write tape readings as 5 ft + 3 in.'],
  ['"', 'Close the text with the same mark, or write tape readings as 3 in + 1/2 in.'],
  ['%', 'Write 0.1 for 10%.'],
  ['=', 'Write == to compare; a formula needs no sign before it.'],
  ['!', 'Write not, or != to compare.'],
  ['&', 'Write and.'],
  ['|', 'Write or.'],
  ['#', 'Put notes in the help of the column.'],
  [';', 'Write one formula; separate list items with commas.'],
  ['\u00d7', 'Write *.'],
  ['\u00f7', 'Write /.'],
  ['\u00b7', 'Write *.'],
  ['\u2212', 'Write -.'],
  ['\u2013', 'Write -.'],
  ['\u00b0', 'Write deg, degF or degC.'],
  ['\u2032', 'Write ft.'],
  ['\u2033', 'Write in.'],
  ['\u201c', 'Write straight quotes: "text".'],
  ['\u201d', 'Write straight quotes: "text".'],
  ['\u2019', 'Write ft for feet.'],
  ['\u00bd', 'Write 1/2.'],
  ['\u00bc', 'Write 1/4.'],
  ['\u00be', 'Write 3/4.'],
]);

/** The tokens of a formula; throws Refused at the first character that can't be one. */
export function tokens(text: string): readonly Token[] {
  if (text.length > LONGEST) {
    const span = { start: LONGEST, end: text.length };
    throw new Refused(
      span,
      `A formula has at most ${String(LONGEST)} characters.`,
      'Split it over two columns.',
    );
  }
  const found: Token[] = [];
  const pattern = new RegExp(PATTERN);
  for (let at = 0; at < text.length; at = pattern.lastIndex) {
    pattern.lastIndex = at;
    const match = pattern.exec(text);
    if (!match) throw unknownCharacter(text, at, found.at(-1));
    const { number, name, text: quoted } = match.groups ?? {};
    if (match.groups?.['space'] !== undefined) continue;
    const type =
      number !== undefined
        ? 'number'
        : name !== undefined
          ? 'name'
          : quoted !== undefined
            ? 'text'
            : 'sign';
    found.push({ type, text: match[0], start: at, end: pattern.lastIndex });
  }
  found.forEach((token, at) => {
    refuseForeign(token);
    refuseForeignSign(token, found[at + 1]);
    refuseTapeMarks(token, found[at - 1], found[at + 1]);
    refuseFeetAndInches(found.slice(at, at + 4));
  });
  refuseDepth(found);
  return found;
}

function unknownCharacter(text: string, at: number, before: Token | undefined): Refused {
  const character = String.fromCodePoint(text.codePointAt(at) ?? 0);
  const span = { start: at, end: at + character.length };
  if (before?.type === 'number' && (character === '"' || character === "'")) {
    const unit = character === '"' ? 'in' : 'ft';
    return new Refused(
      span,
      `“${before.text}${character}” is tape notation.`,
      `Write ${before.text} ${unit}.`,
    );
  }
  return new Refused(
    span,
    `“${character}” is not part of a formula.`,
    ADVICE.get(character) ?? 'Take it out.',
  );
}

function refuseForeign(token: Token): void {
  const advice = token.type === 'name' ? FOREIGN.get(token.text) : undefined;
  if (advice !== undefined)
    throw new Refused(token, `“${token.text}” is not part of a formula.`, advice);
  if (token.type === 'number' && !Number.isFinite(Number(token.text))) {
    throw new Refused(token, `“${token.text}” is too large a number.`, 'Write a smaller one.');
  }
}

function refuseForeignSign(token: Token, after: Token | undefined): void {
  if (token.type === 'text') {
    if (isReadable(token.text)) return;
    throw new Refused(
      token,
      `“${token.text}” has a backslash before a character that takes none.`,
      'Write \\\\ for a backslash and \\" for a quote.',
    );
  }
  // A number may end in a point, and the parser takes that point for the sign's.
  const sign = `${token.text.slice(-1)}${after?.text ?? ''}`;
  const advice = FOREIGN_SIGNS.get(sign);
  if (advice === undefined || after?.start !== token.end) return;
  const span = { start: token.end - 1, end: after.end };
  throw new Refused(span, `“${sign}” is not part of a formula.`, advice);
}

function isReadable(quoted: string): boolean {
  return !/\\(?!["'\\/bfnrt]|u[0-9a-fA-F]{4})/.test(quoted.replaceAll('\\\\', ''));
}

// `5' 3"` reads as a number and a text; `3-1/2 in` and `3 1/2 in` as a difference and a product.
function refuseTapeMarks(token: Token, before: Token | undefined, after: Token | undefined): void {
  if (before?.type === 'number' && token.type === 'text') {
    const unit = token.text.startsWith('"') ? 'in' : 'ft';
    const span = { start: before.start, end: token.end };
    throw new Refused(
      span,
      `“${before.text}${token.text.slice(0, 1)}” is tape notation.`,
      `Write ${before.text} ${unit}.`,
    );
  }
  if (before?.type === 'number' && token.type === 'number') {
    const span = { start: before.start, end: token.end };
    throw new Refused(
      span,
      `“${before.text} ${token.text}” is two numbers side by side.`,
      'Write 3 in + 1/2 in for a mixed number.',
    );
  }
  if (
    token.type === 'number' &&
    after?.type === 'name' &&
    after.start === token.end &&
    /^[xXbBoO][0-9a-fA-F]/.test(after.text)
  ) {
    throw new Refused(
      { start: token.start, end: after.end },
      `“${token.text}${after.text}” is not a number.`,
      'Write it in ordinary digits.',
    );
  }
}

// `5 ft 6 in` and `5 ft-6 in` are lengths on a tape, and would read as a product and a difference.
function refuseFeetAndInches([unit, sign, ...rest]: readonly Token[]): void {
  if (unit?.type !== 'name' || !unitNamed(unit.text) || !sign) return;
  const isJoined = sign.text === '-' && sign.start === unit.end && rest[0]?.start === sign.end;
  const number = isJoined ? rest[0] : sign;
  if (number?.type !== 'number') return;
  throw new Refused(
    { start: unit.start, end: number.end },
    `“${unit.text}${isJoined ? '-' : ' '}${number.text}” is tape notation.`,
    `Write ${unit.text} + ${number.text}, as in 5 ft + 6 in${isJoined ? ', or put spaces round - for a difference' : ''}.`,
  );
}

function refuseDepth(found: readonly Token[]): void {
  let depth = 0;
  for (const token of found) {
    if (token.text === '(' || token.text === '[') depth += 1;
    if (token.text === ')' || token.text === ']') depth -= 1;
    if (depth > DEEPEST) {
      throw new Refused(
        token,
        `Brackets stand more than ${String(DEEPEST)} deep.`,
        'Split the formula over two columns.',
      );
    }
  }
}
