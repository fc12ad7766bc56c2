import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import Ajv from 'ajv';
import { describe, expect, it } from 'vitest';
import { speaking } from '../../grammar/index.js';
import { german as germanSentences } from '../entry/german.js';
import { RULE_KEY, ruleSettings } from './settings-schema.js';

const root = path.resolve(import.meta.dirname, '../..');
const manifest = path.join(root, 'package.json');
const english = path.join(root, 'package.nls.json');
const german = path.join(root, 'package.nls.de.json');

interface Manifest {
  readonly contributes: {
    readonly configuration: readonly {
      readonly title: string;
      readonly properties: Record<string, object>;
    }[];
  };
}

const SETTING = 'mahlstick.rules';

function settingOf(text: string) {
  return groupOf(JSON.parse(text) as Manifest)[SETTING];
}

/** The settings beside which that of the rules stands. */
function groupOf({ contributes }: Manifest): Record<string, object> {
  return contributes.configuration.find(({ properties }) => SETTING in properties)?.properties ?? {};
}

function withRules(text: string): string {
  const whole = JSON.parse(text) as Manifest;
  const properties = groupOf(whole);
  properties[SETTING] = { ...properties[SETTING], properties: ruleSettings().schema };
  return written(whole);
}

type Texts = Readonly<Record<string, string>>;

const textsIn = (file: string): Texts => JSON.parse(readFileSync(file, 'utf8')) as Texts;

function ofRules(texts: Texts): Texts {
  return Object.fromEntries(Object.entries(texts).filter(([key]) => key.startsWith(RULE_KEY)));
}

/** With the texts of rules where the first of them stands. */
function withTexts(texts: Texts, ofRulesNow: Texts): string {
  const before = Object.keys(texts).findIndex((key) => key.startsWith(RULE_KEY));
  const others = Object.entries(texts).filter(([key]) => !key.startsWith(RULE_KEY));
  const at = before < 0 ? others.length : before;
  return written(
    Object.fromEntries([...others.slice(0, at), ...Object.entries(ofRulesNow), ...others.slice(at)]),
  );
}

const written = (data: object): string => `${JSON.stringify(data, undefined, 2)}\n`;

describe('the setting mahlstick.rules in the manifest', () => {
  it('has an entry for every rule (UPDATE_REFERENCE=1 writes them anew)', () => {
    if (process.env['UPDATE_REFERENCE']) writeFileSync(manifest, withRules(readFileSync(manifest, 'utf8')));
    const text = readFileSync(manifest, 'utf8');
    expect(settingOf(text)).toHaveProperty('properties', JSON.parse(JSON.stringify(ruleSettings().schema)));
  });

  it.each([
    { file: english, sentences: undefined },
    { file: german, sentences: germanSentences },
  ])('has its texts in $file (UPDATE_REFERENCE=1 writes them anew)', ({ file, sentences }) => {
    const { texts } = speaking(sentences, ruleSettings);
    if (process.env['UPDATE_REFERENCE']) writeFileSync(file, withTexts(textsIn(file), texts));
    expect(ofRules(textsIn(file))).toEqual(texts);
  });

  it('has the same figures in German', () => {
    const figures = (texts: Texts) =>
      Object.entries(ofRules(texts)).map(([key, text]) => [key, ...(text.match(/\d+(?:\.\d+)?/gu) ?? [])]);
    expect(figures(textsIn(german))).toEqual(figures(textsIn(english)));
  });

  it('is one of fewer than twenty, each described, in groups with a title', () => {
    const { configuration } = (JSON.parse(readFileSync(manifest, 'utf8')) as Manifest).contributes;
    const settings = configuration.flatMap(({ properties }) => Object.values(properties));
    expect(settings.length).toBeLessThan(20);
    expect(settings.filter((setting) => !('markdownDescription' in setting))).toEqual([]);
    expect(configuration.map(({ title }) => textsIn(english)[title.slice(1, -1)])).toEqual(
      expect.arrayContaining(['Preview', 'Rules']),
    );
  });

  const isRight = new Ajv({ strict: false }).compile(settingOf(readFileSync(manifest, 'utf8')) ?? false);

  it.each([
    {},
    { 'even count': 'off' },
    { 'bare ground': 'warning', 'one dominant': 'hint' },
    { 'bare ground': { severity: 'warning', limit: 5 } },
    { 'bare ground': { limit: 7.5 } },
  ])('takes %j', (value) => {
    expect(isRight(value)).toBe(true);
  });

  it.each([
    { 'evn count': 'off' },
    { 'even count': 'loud' },
    { 'even count': { limit: 3 } },
    { 'bare ground': { limit: 140 } },
    { 'bare ground': { limit: '5%' } },
    ['even count'],
  ])('refuses %j', (value) => {
    expect(isRight(value)).toBe(false);
  });
});
