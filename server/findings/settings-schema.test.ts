import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import Ajv from 'ajv';
import { describe, expect, it } from 'vitest';
import { ruleSettingsSchema } from './settings-schema.js';

const manifest = path.resolve(import.meta.dirname, '../../package.json');

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
  properties[SETTING] = { ...properties[SETTING], properties: ruleSettingsSchema() };
  return `${JSON.stringify(whole, undefined, 2)}\n`;
}

describe('the setting mahlstick.rules in the manifest', () => {
  it('has an entry for every rule (UPDATE_REFERENCE=1 writes them anew)', () => {
    if (process.env['UPDATE_REFERENCE']) writeFileSync(manifest, withRules(readFileSync(manifest, 'utf8')));
    const text = readFileSync(manifest, 'utf8');
    expect(settingOf(text)).toHaveProperty('properties', JSON.parse(JSON.stringify(ruleSettingsSchema())));
  });

  it('is one of fewer than twenty, each described, in groups with a title', () => {
    const { configuration } = (JSON.parse(readFileSync(manifest, 'utf8')) as Manifest).contributes;
    const settings = configuration.flatMap(({ properties }) => Object.values(properties));
    expect(settings.length).toBeLessThan(20);
    expect(settings.filter((setting) => !('markdownDescription' in setting))).toEqual([]);
    expect(configuration.map(({ title }) => title)).toEqual(expect.arrayContaining(['Preview', 'Rules']));
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
