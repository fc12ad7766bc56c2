import ts from 'typescript';

/** What a script does that a strict policy for contents would not let it. */
export type Act =
  /** Code is made of text. */
  | 'code of text'
  /** Markup is made of text. */
  | 'markup of text'
  /** A module or script is loaded whose name is not written there. */
  | 'unnamed script'
  /** WebAssembly is compiled. */
  | 'WebAssembly'
  /** A worker is begun. */
  | 'worker'
  /** The network is asked. */
  | 'network';

export interface Found {
  readonly act: Act;
  /** The words that do it, shortened. */
  readonly words: string;
}

const timers = new Set(['setTimeout', 'setInterval', 'setImmediate']);
const networked = new Set([
  'fetch',
  'XMLHttpRequest',
  'WebSocket',
  'EventSource',
  'WebTransport',
  'sendBeacon',
]);
const markup = new Set(['innerHTML', 'outerHTML', 'srcdoc']);

/** All such acts in a script, by its syntax: what a minifier renames or a library hides in a word is found too. */
export function actsOf(script: string): readonly Found[] {
  const source = ts.createSourceFile('script.js', script, ts.ScriptTarget.ES2022, true, ts.ScriptKind.JS);
  const found: Found[] = [];
  const look = (node: ts.Node): void => {
    const act = actOf(node);
    if (act !== undefined) {
      const { pos, end } = node;
      found.push({ act, words: script.slice(pos, Math.min(end, pos + 120)).trim() });
    }
    ts.forEachChild(node, look);
  };
  look(source);
  return found;
}

function actOf(node: ts.Node): Act | undefined {
  if (ts.isIdentifier(node)) return actOfName(node);
  if (ts.isBinaryExpression(node) && isAssignment(node.operatorToken.kind))
    return ts.isPropertyAccessExpression(node.left) && markup.has(node.left.name.text)
      ? 'markup of text'
      : undefined;
  if (!ts.isCallExpression(node) && !ts.isNewExpression(node)) return undefined;
  const [first] = node.arguments ?? [];
  const callee = node.expression;
  if (callee.kind === ts.SyntaxKind.ImportKeyword) return isWritten(first) ? undefined : 'unnamed script';
  const name = nameOf(callee);
  if (name === 'constructor' && isText(first)) return 'code of text';
  if (timers.has(name) && isText(first)) return 'code of text';
  if (name === 'require' && ts.isIdentifier(callee)) return isWritten(first) ? undefined : 'unnamed script';
  if (name === 'importScripts') return 'unnamed script';
  if (name === 'insertAdjacentHTML' || name === 'createContextualFragment') return 'markup of text';
  if (['write', 'writeln'].includes(name) && isDocument(callee)) return 'markup of text';
  if (ts.isNewExpression(node) && /^(?:Shared)?Worker$/u.test(name))
    return node.arguments?.some(asksForEval) ? 'code of text' : 'worker';
  return undefined;
}

function actOfName(node: ts.Identifier): Act | undefined {
  const { parent, text } = node;
  // A property of something else, unless of what stands for the global object.
  const isMember = ts.isPropertyAccessExpression(parent) && parent.name === node;
  if (isMember && !isGlobal(parent.expression) && text !== 'sendBeacon') return undefined;
  if (ts.isPropertyAssignment(parent) && parent.name === node) return undefined;
  if (ts.isMethodDeclaration(parent) || ts.isPropertyDeclaration(parent) || ts.isGetAccessor(parent))
    return undefined;
  const used = isMember ? parent : node;
  if (text === 'eval') return 'code of text';
  const isCalled =
    (ts.isCallExpression(used.parent) || ts.isNewExpression(used.parent)) && used.parent.expression === used;
  if (text === 'Function') return isCalled ? 'code of text' : undefined;
  if (networked.has(text) && isCalled) return 'network';
  const isWasm =
    text === 'WebAssembly' &&
    ts.isPropertyAccessExpression(used.parent) &&
    /^(?:compile|instantiate|Module|Instance)/u.test(used.parent.name.text);
  return isWasm ? 'WebAssembly' : undefined;
}

function isGlobal(node: ts.Expression): boolean {
  return ts.isIdentifier(node) && ['globalThis', 'window', 'self', 'global', 'navigator'].includes(node.text);
}

function isDocument(callee: ts.Expression): boolean {
  return ts.isPropertyAccessExpression(callee) && nameOf(callee.expression) === 'document';
}

function nameOf(node: ts.Expression): string {
  if (ts.isIdentifier(node)) return node.text;
  return ts.isPropertyAccessExpression(node) ? node.name.text : '';
}

function isText(node: ts.Expression | undefined): boolean {
  if (node === undefined) return false;
  if (ts.isStringLiteralLike(node) || ts.isTemplateExpression(node)) return true;
  return ts.isBinaryExpression(node) && (isText(node.left) || isText(node.right));
}

function isWritten(node: ts.Expression | undefined): boolean {
  return node !== undefined && ts.isStringLiteralLike(node);
}

function asksForEval(node: ts.Expression): boolean {
  return (
    ts.isObjectLiteralExpression(node) &&
    node.properties.some((property) => property.name !== undefined && property.name.getText() === 'eval')
  );
}

function isAssignment(kind: ts.SyntaxKind): boolean {
  return kind >= ts.SyntaxKind.FirstAssignment && kind <= ts.SyntaxKind.LastAssignment;
}
