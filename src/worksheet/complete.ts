import { callAtCaret, functionHelp, wordAtCaret, type WordAtCaret } from '../formula/index.ts';
import { UNITS, dimensionName, kindName } from '../units/index.ts';
import type { Engine } from './engine.ts';
import type { Completion, FormulaCall, FormulaWord } from './own-view.ts';

const MOST = 8;

/** What could be written at the caret of a formula on a sheet, best first, and the call it is in. */
export function completionAt(
  engine: Engine,
  sheet: string,
  text: string,
  caret: number,
): Completion {
  const word = wordAtCaret(text, caret);
  const call = callHelp(text, caret);
  if (!word) return { start: caret, end: caret, words: [], call };
  const offered =
    word.sheet === '' ? bareWords(engine, sheet, word) : columnsOf(engine, word.sheet);
  return { start: word.start, end: word.end, words: fitting(offered, word.begun), call };
}

/** Everything a formula on a sheet may name, for a list to look things up in. */
function everyWord(engine: Engine, sheet: string): readonly FormulaWord[] {
  const own = engine.models.get(sheet)?.definition.columns ?? [];
  return [
    ...columnWords(engine, sheet),
    ...(sheet === 'job'
      ? []
      : columnWords(engine, 'job', (id) => !own.some((one) => one.id === id))),
    ...[...engine.models.values()]
      .filter(({ definition: { id } }) => id !== sheet && id !== 'job')
      .map(({ definition: { id, title } }): FormulaWord => {
        return {
          insert: `${id}.`,
          what: 'sheet',
          meaning: `a column of ${title}`,
          kind: '',
          source: '',
        };
      }),
    ...functionHelp().map((each): FormulaWord => {
      const given = each.parameters.map(({ name, kind }) =>
        kind === '' ? name : `${name}: ${kind}`,
      );
      return {
        insert: `${each.name}(`,
        what: 'function',
        meaning: each.meaning,
        kind: `(${given.join(', ')})${each.result === '' ? '' : ` gives ${each.result}`}`,
        source: each.source,
      };
    }),
    ...unitWords(),
  ];
}

function bareWords(engine: Engine, sheet: string, word: WordAtCaret): readonly FormulaWord[] {
  const all = everyWord(engine, sheet);
  if (!word.afterNumber) return all;
  return [...all].sort((a, b) => Number(b.what === 'unit') - Number(a.what === 'unit'));
}

function unitWords(): readonly FormulaWord[] {
  return UNITS.map(({ symbol, dimension }): FormulaWord => {
    return {
      insert: symbol,
      what: 'unit',
      meaning: 'unit',
      kind: dimensionName(dimension),
      source: '',
    };
  });
}

function columnsOf(engine: Engine, sheet: string): readonly FormulaWord[] {
  return columnWords(engine, sheet);
}

function columnWords(
  engine: Engine,
  sheet: string,
  among: (id: string) => boolean = () => true,
): readonly FormulaWord[] {
  return [...(engine.models.get(sheet)?.bands[0]?.columns.values() ?? [])]
    .filter(({ definition: { id } }) => among(id))
    .map(({ definition, kind }): FormulaWord => {
      const { id, called, label, hint = '', source = '' } = definition;
      return {
        insert: id,
        what: sheet === 'job' ? 'input' : 'column',
        meaning: called ?? (hint === '' ? label : `${label}, ${hint}`),
        kind: kindName(kind),
        source,
      };
    });
}

// What begins as it was typed comes first, then what has it further on, in its name or its label.
function fitting(words: readonly FormulaWord[], begun: string): readonly FormulaWord[] {
  const wanted = begun.toLowerCase();
  const rank = ({ insert, meaning }: FormulaWord): number => {
    const name = insert.toLowerCase();
    if (name.startsWith(wanted)) return 0;
    if (name.includes(`_${wanted}`)) return 1;
    if (wanted.length < 3) return 9;
    return name.includes(wanted) || meaning.toLowerCase().includes(wanted) ? 2 : 9;
  };
  return words
    .map((word, place) => ({ word, place, rank: rank(word) }))
    .filter((each) => each.rank < 9 && each.word.insert !== begun)
    .sort((a, b) => a.rank - b.rank || a.place - b.place)
    .slice(0, MOST)
    .map(({ word }) => word);
}

function callHelp(text: string, caret: number): FormulaCall | undefined {
  const call = callAtCaret(text, caret);
  const help = call && functionHelp().find(({ name }) => name === call.name);
  if (!call || !help) return undefined;
  const { name, parameters, result, meaning, source } = help;
  return { name, parameters, result, meaning, source, argument: call.argument };
}
