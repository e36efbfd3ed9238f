import { createParse } from 'mathjs/number';
import {
  AccessorNode,
  ArrayNode,
  ConditionalNode,
  ConstantNode,
  FunctionNode,
  IndexNode,
  OperatorNode,
  OtherNode,
  ParenthesisNode,
  RangeNode,
  RelationalNode,
  SymbolNode,
  type MathNode,
} from './tree.ts';

type ReadTree = (text: string) => MathNode;

declare module 'mathjs/number' {
  // The package has it, and its types do not say so.
  export function createParse(parts: Readonly<Record<string, unknown>>): ReadTree;
}

/** Reads text as the parser does, into nodes that can't be evaluated; throws where it can't be read. */
export const readTree = createParse({
  typed: Object.assign((_name: string, ways: { readonly string: ReadTree }) => ways.string, {
    // It would have nodes taken where text is; nothing here does.
    addConversion: () => undefined,
  }),
  numeric: Number,
  config: { number: 'number' },
  AccessorNode,
  ArrayNode,
  AssignmentNode: OtherNode,
  BlockNode: OtherNode,
  ConditionalNode,
  ConstantNode,
  FunctionAssignmentNode: OtherNode,
  FunctionNode,
  IndexNode,
  ObjectNode: OtherNode,
  OperatorNode,
  ParenthesisNode,
  RangeNode,
  RelationalNode,
  SymbolNode,
});
