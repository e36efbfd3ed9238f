/** The fractions that a grid program may have turned into this date, as texts such as `5/8`; undefined where it is no date. */
export function fractionsOfDate(text: string): readonly string[] | undefined {
  const pair = dayAndMonth(text);
  if (!pair) return undefined;
  const [small, large] = [Math.min(...pair), Math.max(...pair)];
  // Day before month or month before day: only one of the two orders is less than 1.
  return small < large ? [`${String(small)}/${String(large)}`] : [];
}

/** The fraction behind a count of days since 1899-12-30, the way grid programs keep a date; undefined outside 2009 to 2064. */
export function fractionsOfDayNumber(text: string): readonly string[] | undefined {
  const days = /^\d{5}$/.test(text) ? Number(text) : 0;
  if (days <= 40000 || days >= 60000) return undefined;
  const date = new Date(Date.UTC(1899, 11, 30) + days * 86_400_000);
  return fractionsOfDate(date.toISOString().slice(0, 10));
}

/** The number of the month from its name or abbreviation, in English or German. */
export function monthNumber(name: string): number | undefined {
  const found = MONTHS.findIndex((names) => names.test(name));
  return found < 0 ? undefined : found + 1;
}

const MONTHS: readonly RegExp[] = [
  /^jan(?:uary|uar)?$/i,
  /^feb(?:ruary|ruar)?$/i,
  /^(?:mar(?:ch)?|märz?|mrz)$/i,
  /^apr(?:il)?$/i,
  /^(?:may|mai)$/i,
  /^(?:june?|juni)$/i,
  /^(?:july?|juli)$/i,
  /^aug(?:ust)?$/i,
  /^sept?(?:ember)?$/i,
  /^o[ck]t(?:ober)?$/i,
  /^nov(?:ember)?$/i,
  /^de[cz](?:ember)?$/i,
];

// Most readings are ruled out by one look: a date has a month's name or two marks between numbers.
const LIKE_A_DATE = /\p{L}{3}|\d[/.-]\d+[/.-]\d/u;
const TIME = / \d{1,2}:\d{2}(?::\d{2})?$/;

function dayAndMonth(entry: string): readonly [number, number] | undefined {
  if (!LIKE_A_DATE.test(entry)) return undefined;
  const text = entry.replace(TIME, '');
  const numbers =
    /^\d{4}-(\d{1,2})-(\d{1,2})$/.exec(text) ??
    /^(\d{1,2})([/.-])(\d{1,2})\2(?:\d{4}|\d{2})$/.exec(text);
  if (numbers) return checked(Number(numbers[1]), Number(numbers[3] ?? numbers[2]));
  const named =
    /^(\d{1,2})[-. ]{0,2}(\p{L}{3,9})\.?(?:[-, ]{0,2}(?:\d{4}|\d{2}))?$/u.exec(text) ??
    /^(\p{L}{3,9})[-. ]{0,2}(\d{1,2})(?:[-, ]{1,2}(?:\d{4}|\d{2}))?$/u.exec(text);
  if (!named) return undefined;
  const [first = '', second = ''] = named.slice(1);
  const month = monthNumber(first) ?? monthNumber(second);
  return month === undefined
    ? undefined
    : checked(month, Number(/^\d/.test(first) ? first : second));
}

function checked(a: number, b: number): readonly [number, number] | undefined {
  const both = a >= 1 && b >= 1 && Math.min(a, b) <= 12 && Math.max(a, b) <= 99;
  return both ? [a, b] : undefined;
}
