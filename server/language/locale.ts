import type { Sentences } from '../../grammar/index.js';

/** The languages that there are besides English, by what a locale such as `de-CH` begins with. */
export interface Languages {
  readonly de: () => Sentences;
}

/**
 * The sentences of the language that a client names in `initialize`, however it writes it; none where they are English.
 */
export function languageFor(locale: unknown, languages: Languages | undefined): Sentences | undefined {
  if (typeof locale !== 'string') return undefined;
  const [language = ''] = locale.toLowerCase().split(/[-_.]/u);
  return language === 'de' ? languages?.de() : undefined;
}
