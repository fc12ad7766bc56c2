import * as v from 'valibot';
import { DidChangeConfigurationNotification, type Connection } from 'vscode-languageserver';
import type { RuleSettings } from '../findings/settings.js';
import type { Abilities } from './abilities.js';
import { readHintSettings, usualHints, type HintSettings } from './hint-settings.js';
import type { readRuleSettings } from './rule-settings.js';

/** The section of an editor's settings that is Mahlstick's. */
const SECTION = 'mahlstick';

const section = v.object({ rules: v.optional(v.unknown()), hints: v.optional(v.unknown()) });
const sent = v.object({ settings: v.object({ [SECTION]: section }) });

type Section = v.InferOutput<typeof section>;

/** Who is told of settings that are other than before. */
export interface Followers {
  readonly rules: (settings: RuleSettings) => void;
  readonly hints: (settings: HintSettings) => void;
}

/**
 * The settings of the client, however it tells them: with `initialize`, with every change, or when asked. The latest
 * that came count.
 */
export class Configuration {
  readonly #connection: Connection;
  readonly #followers: Followers;
  readonly #readRules: typeof readRuleSettings;
  readonly #failed: (what: string, error: unknown) => void;
  #rules: RuleSettings = new Map();
  #hints: HintSettings = usualHints;
  #told = '';
  #asked = 0;
  /** Something has been told, which goes before what came with `initialize`. */
  #isTaken = false;

  constructor(
    connection: Connection,
    followers: Followers,
    readRules: typeof readRuleSettings,
    failed: (what: string, error: unknown) => void,
  ) {
    this.#connection = connection;
    this.#followers = followers;
    this.#readRules = readRules;
    this.#failed = failed;
  }

  /**
   * Whenever a service is begun, which may be after the client has told more than came with `initialize`.
   * @param options the `initializationOptions`
   */
  begin(options: unknown): void {
    if (this.#isTaken) {
      this.#followers.rules(this.#rules);
      this.#followers.hints(this.#hints);
      return;
    }
    const given = v.safeParse(section, options);
    if (given.success) this.#take(given.output);
  }

  /** Once the client is ready to be asked. */
  follow({ configuration, configurationNews }: Abilities): void {
    this.#connection.onDidChangeConfiguration((params) => {
      if (configuration) this.#ask();
      else {
        const told = v.safeParse(sent, params);
        if (told.success) this.#take(told.output.settings[SECTION]);
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
        const given = v.safeParse(section, answer);
        if (given.success && question === this.#asked) this.#take(given.output);
      },
      (error: unknown) => this.#failed('asking for the settings', error),
    );
  }

  #take(given: Section): void {
    try {
      if ('rules' in given) this.#takeRules(given.rules);
      if ('hints' in given) this.#takeHints(given.hints);
    } catch (error) {
      this.#failed('taking in the settings', error);
    }
  }

  #takeHints(value: unknown): void {
    const settings = readHintSettings(value);
    this.#isTaken = true;
    if (JSON.stringify(settings) === JSON.stringify(this.#hints)) return;
    this.#hints = settings;
    this.#followers.hints(settings);
  }

  #takeRules(value: unknown): void {
    const { settings, refused } = this.#readRules(value);
    this.#isTaken = true;
    const message = `Ignored in the setting mahlstick.rules: ${refused.join('; ')}.`;
    if (refused.length > 0 && message !== this.#told) this.#connection.console.warn(message);
    this.#told = refused.length > 0 ? message : '';
    if (JSON.stringify([...settings]) === JSON.stringify([...this.#rules])) return;
    this.#rules = settings;
    this.#followers.rules(settings);
  }
}
