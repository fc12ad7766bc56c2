import { productionsOn, type Expression } from './production.js';

/**
 * The grammar written out, from the parser itself, for a page of the reference: the rule of one statement,
 * or those of all `shared` parts. `"word"` is written as it stands, `[ ]` may be left out, `{ }` may come any
 * number of times, `|` separates alternatives.
 */
export function notation(page: string): string {
  return productionsOn(page)
    .map(({ name, body }) => `${name} = ${written(body)}`)
    .join('\n');
}

function written(expression: Expression): string {
  switch (expression.kind) {
    case 'literal':
      return `"${expression.text}"`;
    case 'sign':
      return expression.text;
    case 'part':
      return expression.name;
    case 'sequence':
      return expression.items.map(grouped).join(' ');
    case 'choice':
      return expression.items.map(written).join(' | ');
    case 'optional':
      return `[ ${written(expression.item)} ]`;
    case 'repeated':
      return `{ ${written(expression.item)} }`;
    case 'list': {
      const item = grouped(expression.item);
      const separator = expression.separator ? `${written(expression.separator)} ` : '';
      return `${item} { ${separator}${item} }`;
    }
  }
}

/** With brackets where the expression would not hold together otherwise. */
function grouped(expression: Expression): string {
  const text = written(expression);
  return expression.kind === 'choice' ? `( ${text} )` : text;
}
