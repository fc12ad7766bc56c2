import { beforeAll, describe, expect, it } from 'vitest';
import { builtForRelease } from './built.js';
import { type Act, actsOf, type Found } from './makes-code.js';

let acts: ReadonlyMap<string, readonly Found[]>;

beforeAll(async () => {
  const { scripts } = await builtForRelease();
  acts = new Map([...scripts].map(([name, script]) => [name, actsOf(script)]));
});

/** The bundles that do it, and how often. */
function doers(act: Act): Readonly<Record<string, number>> {
  const counts = [...acts].map(
    ([name, found]) => [name, found.filter((each) => each.act === act).length] as const,
  );
  return Object.fromEntries(counts.filter(([, count]) => count > 0));
}

describe('what strangers are given', () => {
  it('is what is built, each bundle with something in it', async () => {
    const { inExtension } = await builtForRelease();
    expect([...acts.keys()]).toEqual(expect.arrayContaining(['core', 'preview', 'server.web', 'mahlstick']));
    expect(inExtension.has('preview')).toBe(true);
    expect(inExtension.has('mahlstick')).toBe(false);
  });

  it('makes neither code nor markup of text', () => {
    expect(doers('code of text')).toEqual({});
    expect(doers('markup of text')).toEqual({});
  });

  it('loads by a name that is worked out only its own parts, in workers, which no policy of a page is about', () => {
    // The server that the extension names; its features and what writes drawings, which lie beside it.
    expect(doers('unnamed script')).toEqual({ core: 1, 'server.web': 2 });
  });

  it('compiles WebAssembly only where photographs are decoded, in a thread of its own', () => {
    expect(Object.keys(doers('WebAssembly'))).toEqual(['photograph']);
  });

  it('begins a worker for the server in a browser, and one for photographs', () => {
    expect(doers('worker')).toEqual({ 'extension.web': 1, 'server.node': 1, 'server.web': 1, mahlstick: 1 });
  });

  it('asks nothing of a network, but for what decoders would when they were given no bytes', () => {
    expect(Object.keys(doers('network'))).toEqual(['photograph']);
  });
});

describe('the search', () => {
  it.each<[Act, string]>([
    ['code of text', 'eval("1")'],
    ['code of text', '(0, eval)("1")'],
    ['code of text', 'globalThis.eval("1")'],
    ['code of text', 'const run = eval;'],
    ['code of text', 'new Function("return 1")'],
    ['code of text', 'Function("return 1")()'],
    ['code of text', 'window.Function("return 1")'],
    ['code of text', '(() => 1).constructor("return 1")()'],
    ['code of text', 'setTimeout("run()", 1)'],
    ['code of text', 'self.setInterval(`run(${x})`, 1)'],
    ['code of text', 'new Worker(source, { eval: true })'],
    ['markup of text', 'box.innerHTML = text'],
    ['markup of text', 'box.outerHTML += text'],
    ['markup of text', 'frame.srcdoc = text'],
    ['markup of text', 'box.insertAdjacentHTML("beforeend", text)'],
    ['markup of text', 'document.write(text)'],
    ['unnamed script', 'import(name)'],
    ['unnamed script', 'require(name)'],
    ['unnamed script', 'self.importScripts(name)'],
    ['WebAssembly', 'WebAssembly.compile(bytes)'],
    ['worker', 'new Worker(address)'],
    ['network', 'fetch(address)'],
    ['network', 'new self.WebSocket(address)'],
    ['network', 'navigator.sendBeacon(address)'],
  ])('finds %s: %s', (act, script) => {
    expect(actsOf(script).map((found) => found.act)).toEqual([act]);
  });

  it.each([
    'shape.eval(1)',
    'class A { eval() {} }',
    'const kinds = { Function: 1, eval: 2 };',
    'value instanceof Function',
    'Function.prototype.call.bind(f)',
    'setTimeout(() => run(), 1)',
    'import("./known.js")',
    'require("node:fs")',
    'box.textContent = text',
    'files.fetch(path)',
    'document.writeTo(text)',
  ])('takes for harmless: %s', (script) => {
    expect(actsOf(script)).toEqual([]);
  });
});
