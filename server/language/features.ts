/**
 * All of the server that reads plans. The connection asks its host for it when it is first needed, so that a client's
 * hello is answered before the rest of the tool is loaded.
 */
export { cardOf, compareTwo } from './compared-plans.js';
export { readRuleSettings } from './rule-settings.js';
export { createLanguageService } from './service.js';
