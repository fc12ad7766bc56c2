import * as v from 'valibot';
import { DidChangeConfigurationNotification, type Connection } from 'vscode-languageserver';
import type { RuleSettings } from '../findings/settings.js';
import type { Abilities } from './abilities.js';
import { readRuleSettings } from './rule-settings.js';

/** The section of an editor's settings that is Mahlstick's. */
const SECTION = 'mahlstick';

const sent = v.object({ settings: v.object({ [SECTION]: v.object({ rules: v.unknown() }) }) });
const asked = v.object({ rules: v.unknown() });

/**
 * The settings of the client, however it tells them: with `initialize`, with every change, or when asked. The latest
 * that came count.
 */
export class Configuration {
  readonly #connection: Connection;
  readonly #changed: (rules: RuleSettings) => void;
  readonly #failed: (what: string, error: unknown) => void;
  #rules: RuleSettings = new Map();
  #told = '';
  #asked = 0;

  /** @param changed called with rules that are other than before */
  constructor(
    connection: Connection,
    changed: (rules: RuleSettings) => void,
    failed: (what: string, error: unknown) => void,
  ) {
    this.#connection = connection;
    this.#changed = changed;
    this.#failed = failed;
  }

  /** From `initializationOptions`. */
  begin(options: unknown): void {
    const given = v.safeParse(asked, options);
    if (given.success) this.#take(given.output.rules);
  }

  /** Once the client is ready to be asked. */
  follow({ configuration, configurationNews }: Abilities): void {
    this.#connection.onDidChangeConfiguration((params) => {
      if (configuration) this.#ask();
      else {
        const told = v.safeParse(sent, params);
        if (told.success) this.#take(told.output.settings[SECTION].rules);
      }
    });
    if (configurationNews) {
      this.#connection.client
        .register(DidChangeConfigurationNotification.type, { section: SECTION })
        .catch((error: unknown) => this.#failed('following the settings', error));
    }
    if (configuration) this.#ask();
  }

  #ask(): void {
    const question = ++this.#asked;
    this.#connection.workspace.getConfiguration(SECTION).then(
      (answer: unknown) => {
        const given = v.safeParse(asked, answer);
        if (given.success && question === this.#asked) this.#take(given.output.rules);
      },
      (error: unknown) => this.#failed('asking for the settings', error),
    );
  }

  #take(value: unknown): void {
    const { settings, refused } = readRuleSettings(value);
    const message = `Ignored in the setting mahlstick.rules: ${refused.join('; ')}.`;
    if (refused.length > 0 && message !== this.#told) this.#connection.console.warn(message);
    this.#told = refused.length > 0 ? message : '';
    if (JSON.stringify([...settings]) === JSON.stringify([...this.#rules])) return;
    this.#rules = settings;
    this.#changed(settings);
  }
}
