import type { Squaring } from '../measure/photograph/photographs.js';

/**
 * Tells one content of a file from every other: SHA-256 in hexadecimal digits. A page that came without encryption has
 * no such thing; there every reading counts as another content.
 */
export async function contentOf(bytes: Uint8Array): Promise<string> {
  const { subtle } = crypto as Partial<Crypto>;
  if (subtle === undefined) return String(crypto.getRandomValues(new Uint32Array(4)));
  const digest = new Uint8Array(await subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** Tells one squared-up picture from every other, whatever its file is called. */
export function idOf(content: string, { corners, grey, proportion }: Squaring): string {
  const places = [...corners, ...(grey ? [grey] : [])].map(({ across, down }) =>
    [across.value, across.in, down.value, down.in].join(' '),
  );
  return [content, proportion, grey ? 'grey' : 'plain', ...places].join('; ');
}
