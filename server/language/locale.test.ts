import { expect, it } from 'vitest';
import { languageFor } from './locale.js';

const german = { 'The focal point.': 'Der Blickpunkt.' };
const languages = { de: () => german };

it.each(['de', 'de-CH', 'de-DE', 'de_AT.UTF-8', 'DE'])('is German for %s', (locale) => {
  expect(languageFor(locale, languages)).toBe(german);
});

it.each(['en', 'fr', 'den', '', 'C', undefined, null, 7, { de: true }])('is English for %j', (locale) => {
  expect(languageFor(locale, languages)).toBeUndefined();
});

it('is English where nothing else is there', () => {
  expect(languageFor('de', undefined)).toBeUndefined();
});
