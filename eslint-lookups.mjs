/**
 * `table[word]` with any word at all finds `constructor` and `toString` in every plain object, and a file, a setting or a
 * command line may well say `constructor`. So what is looked up by a word nobody has checked stands in a `Map`.
 */
import { ESLintUtils } from '@typescript-eslint/utils';
import ts from 'typescript';

const rule = ESLintUtils.RuleCreator.withoutDocs({
  meta: {
    type: 'problem',
    schema: [],
    messages: { map: 'Any word may come here, `constructor` too: look it up in a Map or a Set.' },
  },
  defaultOptions: [],
  create(context) {
    const services = ESLintUtils.getParserServices(context);
    const checker = services.program.getTypeChecker();
    const isAnyWord = (type) =>
      type.isUnion()
        ? type.types.some(isAnyWord)
        : (type.flags & (ts.TypeFlags.String | ts.TypeFlags.TemplateLiteral)) !== 0;
    return {
      'MemberExpression[computed=true]'(node) {
        if (!isAnyWord(services.getTypeAtLocation(node.property))) return;
        if (!checker.isArrayLikeType(services.getTypeAtLocation(node.object)))
          context.report({ node, messageId: 'map' });
      },
      'BinaryExpression[operator="in"]'(node) {
        if (isAnyWord(services.getTypeAtLocation(node.left))) context.report({ node, messageId: 'map' });
      },
    };
  },
});

export default { rules: { 'by-map': rule } };
