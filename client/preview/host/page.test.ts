import { describe, expect, it } from 'vitest';
import { contentSecurityPolicy, createNonce, pageHtml } from './page.js';

const parts = {
  cspSource: 'https://*.vscode-cdn.net',
  nonce: 'f00d',
  scriptUri: 'https://file.vscode-cdn.net/dist/preview.js',
  styleUri: 'https://file.vscode-cdn.net/dist/preview.css',
  title: 'A picture',
  language: 'en',
  sentences: undefined,
  state: '{}',
};

describe('the page of a preview', () => {
  it('allows one script by nonce, local style sheets, pictures that it makes, and nothing else', () => {
    const directives = contentSecurityPolicy(parts).split('; ');
    expect(directives).toEqual([
      "default-src 'none'",
      "script-src 'nonce-f00d'",
      'style-src https://*.vscode-cdn.net',
      'img-src blob:',
      "base-uri 'none'",
      "form-action 'none'",
    ]);
  });

  it('states the policy before anything that it governs', () => {
    const html = pageHtml(parts);
    const policy = html.indexOf('Content-Security-Policy');
    expect(policy).toBeGreaterThan(0);
    expect(policy).toBeLessThan(html.indexOf('<link'));
    expect(policy).toBeLessThan(html.indexOf('<script'));
    expect(html).not.toMatch(/unsafe-(inline|eval)/);
    expect(html.match(/<script/g)).toHaveLength(1);
  });

  it('cannot be broken out of by a name in the state', () => {
    const html = pageHtml({
      ...parts,
      state: JSON.stringify({ uri: 'file:///a"><script>alert(1)</script>.mahl' }),
    });
    expect(html).not.toContain('<script>');
    expect(html).toContain('&quot;&gt;&lt;script&gt;');
  });

  it('has the words of another language, which cannot be broken out of either', () => {
    expect(pageHtml(parts)).toContain('<html lang="en">');
    expect(pageHtml(parts)).not.toContain('data-sentences');
    const html = pageHtml({ ...parts, language: 'de', sentences: { 'Zoom in': '"><script>Größer' } });
    expect(html).toContain('<html lang="de">');
    expect(html).toContain(
      'data-sentences="{&quot;Zoom in&quot;:&quot;\\&quot;&gt;&lt;script&gt;Größer&quot;}"',
    );
    expect(html.match(/<script/g)).toHaveLength(1);
  });

  it('is in English, and says so, where there are no words of the language', () => {
    expect(pageHtml({ ...parts, language: 'fr' })).toContain('<html lang="en">');
  });

  it('takes a new nonce of 128 bits each time', () => {
    const nonces = new Set(Array.from({ length: 100 }, createNonce));
    expect(nonces.size).toBe(100);
    for (const nonce of nonces) expect(nonce).toMatch(/^[0-9a-f]{32}$/);
  });
});
