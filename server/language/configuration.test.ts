import { beforeEach, describe, expect, it } from 'vitest';
import type { Connection, DidChangeConfigurationParams } from 'vscode-languageserver';
import type { RuleSettings } from '../findings/settings.js';
import { everything } from './test-support.js';
import { Configuration } from './configuration.js';
import { readRuleSettings } from './rule-settings.js';

const options = { rules: { 'bare ground': 'off' } };
/** A client that sends its settings without being asked. */
const abilities = { ...everything, configuration: false, configurationNews: false };

let tell: (rules: unknown) => void;
/** What the service has been told, in order. */
let told: string[];
/** The service is begun by the first that asks for it, as that of a connection is. */
let isBegun: boolean;
let begin: () => void;
let failures: string[];

function configure(readRules = readRuleSettings): Configuration {
  const connection = {
    onDidChangeConfiguration: (listener: (params: DidChangeConfigurationParams) => void) => {
      tell = (rules) => listener({ settings: { mahlstick: { rules } } });
    },
    console: { warn: () => undefined },
  } as unknown as Connection;
  const configuration = new Configuration(
    connection,
    {
      rules: (rules: RuleSettings) => {
        begin();
        told.push(JSON.stringify([...rules]));
      },
      hints: () => begin(),
    },
    readRules,
    (what) => failures.push(what),
  );
  begin = () => {
    if (isBegun) return;
    isBegun = true;
    configuration.begin(options);
  };
  configuration.follow(abilities);
  return configuration;
}

beforeEach(() => {
  told = [];
  failures = [];
  isBegun = false;
});

describe('settings that are told before the service is begun', () => {
  it('go before those that came with initialize, which are told when they come again', () => {
    configure();
    tell({ 'even count': 'off' });
    expect(told.at(-1)).toBe('[["even count",{"severity":"off"}]]');
    tell(options.rules);
    expect(told.at(-1)).toBe('[["bare ground",{"severity":"off"}]]');
    expect(failures).toEqual([]);
  });

  it('that could not be read leave those in place that came with initialize', () => {
    let isFirst = true;
    configure((value) => {
      if (isFirst) {
        isFirst = false;
        throw new Error('The features could not be loaded.');
      }
      return readRuleSettings(value);
    });
    tell({ 'even count': 'off' });
    expect(failures).toEqual(['taking in the settings']);
    begin();
    expect(told).toEqual(['[["bare ground",{"severity":"off"}]]']);
  });
});
