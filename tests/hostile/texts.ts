/** Words that try to be more than words: script, markup, links, control signs, signs that turn the line round. */
export const hostileWords: readonly string[] = [
  '<script>alert(1)</script>',
  '</text></svg><script>alert(1)</script>',
  '<img src=x onerror=alert(1)>',
  ']]><script>alert(1)</script><![CDATA[',
  '--><script>alert(1)</script><!--',
  '&lt;b&gt; &#x3c;b&#x3e; &xxe;',
  '<!DOCTYPE svg [<!ENTITY xxe SYSTEM "file:///etc/passwd">]>',
  '<?xml-stylesheet href="https://example.org/a.css"?>',
  "'onload='alert(1)",
  'javascript:alert(1)',
  'url(https://example.org/x.svg#a)',
  '![pixel](https://example.org/pixel.png)',
  '[press here](command:workbench.action.terminal.new)',
  '<https://example.org/>',
  '$(rm -rf ~) `id` $((1))',
  '${1:placeholder}$0',
  '`````',
  '\u202Eevil\u202C \u0007\u0000\u001B[31m',
  '\uD800 lone \uDFFF',
  'a\u0300\u0301\u0302\u0303'.repeat(40),
  'W'.repeat(20_000),
];

/** Paths that would lead out of the folder of the plan, or are none. */
export const hostilePaths: readonly string[] = [
  '../secret.svg',
  '..\\\\secret.svg',
  'a/../../secret.svg',
  './../secret.svg',
  '/etc/passwd',
  '//example.org/share/a.svg',
  '\\\\\\\\example.org\\\\share\\\\a.svg',
  'file:///etc/passwd',
  'https://example.org/a.svg',
  'HTTPS://example.org/a.svg',
  'data:image/svg+xml,<svg/>',
  'C:/Windows/win.ini',
  'c:\\\\Windows\\\\win.ini',
  '%2e%2e/secret.svg',
  '..%2Fsecret.svg',
  'vscode-remote://ssh/etc/passwd',
  '~/secret.svg',
  '',
];

const svg = (content: string, head = ''): string =>
  `${head}<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink">${content}</svg>`;

/** Files whose part `a` tries to bring in more than a shape. */
export const hostileFiles: Readonly<Record<string, string>> = {
  'a script': svg('<script id="a">alert(1)</script>'),
  'a page within': svg('<foreignObject id="a"><body onload="alert(1)"/></foreignObject>'),
  'a picture from elsewhere': svg('<image id="a" href="https://example.org/x.png" width="9" height="9"/>'),
  'a shape from elsewhere': svg('<use id="a" href="https://example.org/x.svg#b"/>'),
  'a shape from a file': svg('<use id="a" xlink:href="../secret.svg#b"/>'),
  'a use of itself': svg('<g id="a"><use href="#a"/></g>'),
  'an entity of a file': svg('<g id="a">&x;</g>', '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>'),
  'entities of entities': svg(
    '<g id="a">&c;</g>',
    '<!DOCTYPE svg [<!ENTITY a "ha"><!ENTITY b "&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;">]>',
  ),
  'no SVG at all': 'GIF89a',
  'groups without end': svg(
    `${'<g>'.repeat(5_000)}<rect id="a" width="1" height="1"/>${'</g>'.repeat(5_000)}`,
  ),
  'no numbers': svg('<path id="a" d="M NaN Infinity L 1e999 -1e999"/>'),
};

/** What is harmless beside it: the shape is drawn, and nothing else of it comes along. */
export const passedOver: Readonly<Record<string, string>> = {
  'what would run': svg(
    '<rect id="a" width="9" height="9" onclick="alert(1)" style="fill:url(https://example.org/x.svg#a)"/>',
  ),
  'what animates': svg(
    '<g id="a"><rect width="9" height="9"/><set attributeName="onmouseover" to="alert(1)"/><script>1</script></g>',
  ),
};
