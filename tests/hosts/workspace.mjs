// @ts-check
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { examples } from './paths.mjs';
import { onEnd } from './processes.mjs';

/**
 * Copies a folder of plans to a temporary one, so that tests change nothing in the repository.
 * @param {string} [plans] the examples if left out
 * @returns {string} the copy, which is removed when this process ends
 */
export function copyOfPlans(plans = examples) {
  const parent = mkdtempSync(path.join(tmpdir(), 'mahlstick-plans-'));
  onEnd(() => rmSync(parent, { recursive: true, force: true }));
  const copy = path.join(parent, path.basename(plans));
  cpSync(plans, copy, { recursive: true });
  return copy;
}
