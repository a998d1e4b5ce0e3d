/**
 * `ask.numberIf('saddle.angle') ?? 0` turns what nobody said, or said so that it cannot be read, into a number that looks as good
 * as any other. What silence means stands in the catalogue (`taken-as.ts`, read through `taken`); all else is unknown.
 */
const READS = new Set(['number', 'numberIf', 'inMm', 'inMmIf']);

const rule = {
  meta: {
    type: 'problem',
    schema: [],
    messages: {
      standIn: 'A reading that is not there is unknown, and no number: ask with `taken`, or leave out what needs it.',
    },
  },
  create(context) {
    const { sourceCode } = context;
    const isNumber = (node) =>
      (node.type === 'Literal' && typeof node.value === 'number') ||
      (node.type === 'UnaryExpression' && node.operator !== '!' && isNumber(node.argument)) ||
      (node.type === 'BinaryExpression' && isNumber(node.left) && isNumber(node.right)) ||
      (node.type === 'Identifier' && /^[A-Z][A-Z0-9_]+$/.test(node.name));
    /** Whether a number read from a recipe comes out of this, also by way of a `const`. */
    const isReading = (node) => {
      switch (node?.type) {
        case 'CallExpression': {
          const { callee } = node;
          const name = callee.type === 'MemberExpression' ? callee.property.name : callee.name;
          return READS.has(name) || node.arguments.some(isReading);
        }
        case 'ChainExpression':
          return isReading(node.expression);
        case 'MemberExpression':
          return node.property.name === 'si';
        case 'LogicalExpression':
        case 'BinaryExpression':
          return isReading(node.left) || isReading(node.right);
        case 'ConditionalExpression':
          return isReading(node.consequent) || isReading(node.alternate);
        case 'ArrayExpression':
          return node.elements.some(isReading);
        case 'Identifier': {
          const found = sourceCode.getScope(node).references.find(({ identifier }) => identifier === node)?.resolved;
          const [definition] = found?.defs ?? [];
          return definition?.type === 'Variable' && definition.node.init !== node && isReading(definition.node.init);
        }
        default:
          return false;
      }
    };
    return {
      'LogicalExpression[operator=/^(?:\\?\\?|\\|\\|)$/]'(node) {
        // What was reckoned is there; `|| 1` keeps it from being zero.
        const isReckoned = node.left.type === 'BinaryExpression' || node.left.callee?.object?.name === 'Math';
        if (node.operator === '||' && isReckoned) return;
        if (isNumber(node.right) && isReading(node.left)) context.report({ node, messageId: 'standIn' });
      },
      // `x === undefined ? 0 : x`
      ConditionalExpression(node) {
        const { test, consequent, alternate } = node;
        if (test.type !== 'BinaryExpression' || test.right.name !== 'undefined' || !isReading(test.left)) return;
        const [absent, there] = /^!/.test(test.operator) ? [alternate, consequent] : [consequent, alternate];
        const same = sourceCode.getText(there) === sourceCode.getText(test.left);
        if (same && isNumber(absent)) context.report({ node, messageId: 'standIn' });
      },
    };
  },
};

export default { rules: { unknown: rule } };
