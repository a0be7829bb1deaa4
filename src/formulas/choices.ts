/** `a > b ? c : d` */
import type { Comparison, Condition } from '../deck/computed.ts';
import { notAllowed, type Context, type Typed } from './compile.ts';
import type { MathNode } from './expression-parser.ts';
import { partOf } from './fault.ts';
import { brought, sameKind } from './same-kind.ts';

const comparisons: ReadonlySet<string> = new Set(['<', '<=', '>', '>=', '==', '!=']);

/** Both sides are of one kind, whichever is chosen on the day. */
export function compileChoice(node: MathNode, context: Context): Typed {
  const [yes, no] = [partOf<MathNode>(node, 'trueExpr'), partOf<MathNode>(node, 'falseExpr')];
  const when = compileCondition(partOf(node, 'condition'), context);
  const [then, otherwise] = [context.compile(yes), context.compile(no)];
  sameKind(then, otherwise, [yes, no], 'chosen between');
  return {
    expression: {
      kind: 'choice',
      when,
      then: then.expression,
      otherwise: brought(otherwise, then.unit),
    },
    unit: then.unit,
  };
}

function compileCondition(node: MathNode, context: Context): Condition {
  if (node.type === 'ParenthesisNode') return compileCondition(partOf(node, 'content'), context);
  const is = node.type === 'OperatorNode' ? partOf<string>(node, 'op') : '';
  if (!comparisons.has(is)) throw notAllowed(node, 'Anything but a comparison before “?”');
  const [first, second] = partOf<MathNode[]>(node, 'args') as [MathNode, MathNode];
  const [left, right] = [context.compile(first), context.compile(second)];
  sameKind(left, right, [first, second], 'compared');
  return { is: is as Comparison, left: left.expression, right: brought(right, left.unit) };
}
