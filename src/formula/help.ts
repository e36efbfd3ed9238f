import { CATALOG } from '../trade/index.ts';
import { kindName } from '../units/index.ts';
import { AGGREGATES, GENERAL } from './general.ts';

/** What a person is told of a function while they write a formula. */
export interface FunctionHelp {
  readonly name: string;
  readonly parameters: readonly {
    readonly name: string;
    /** The kind in words; blank where the function takes several. */
    readonly kind: string;
  }[];
  /** The kind of the result in words; blank where it follows the arguments. */
  readonly result: string;
  readonly meaning: string;
  /** Publication, edition and clause; blank where the function belongs to no trade. */
  readonly source: string;
  readonly standing: string;
}

/** Every function a formula may call, trade rules first. */
export function functionHelp(): readonly FunctionHelp[] {
  const rules = [...CATALOG.values()].map(
    ({ name, parameters, result, meaning, source, standing }): FunctionHelp => ({
      name,
      parameters: parameters.map((each) => ({ name: each.name, kind: kindName(each.kind) })),
      result: kindName(result),
      meaning,
      source,
      standing,
    }),
  );
  const general = [...GENERAL.values()].map((each) =>
    plain(each.name, each.parameters, each.meaning),
  );
  const aggregates = [...AGGREGATES.values()].map((each) =>
    plain(each.name, each.parameters, each.meaning),
  );
  return [...rules, ...general, ...aggregates, ...NEIGHBORS];
}

const NEIGHBORS: readonly FunctionHelp[] = [
  plain('previous', ['column'], 'the value one row above'),
  plain('next', ['column'], 'the value one row below'),
  plain('row_number', [], 'the place of the row on its sheet, from 1'),
];

function plain(name: string, parameters: readonly string[], meaning: string): FunctionHelp {
  return {
    name,
    parameters: parameters.map((parameter) => ({ name: parameter, kind: '' })),
    result: '',
    meaning,
    source: '',
    standing: '',
  };
}
