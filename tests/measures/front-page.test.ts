import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, it } from 'vitest';
import { measureDocument } from '../../server/cli/measure-document.js';
import { measureText } from '../../server/cli/measure-text.js';
import { checked } from '../support/plan.js';

const page = readFileSync(path.resolve(import.meta.dirname, '../../README.md'), 'utf8');
const { plan, measures, findings } = checked(/^```mahl\n([\s\S]*?)^```$/mu.exec(page)?.[1] ?? '');

it('shows figures that are measured on its plan', () => {
  const printed = measureText(measureDocument('oven.mahl', plan, measures, 0), false).split('\n');
  const shown = (/^ {2}```text\n([\s\S]*?)^ {2}```$/mu.exec(page)?.[1] ?? '').trimEnd().split('\n');
  expect(shown.length).toBeGreaterThan(2);
  expect(shown.map((line) => line.slice(2)).filter((line) => !printed.includes(line))).toEqual([]);
});

it('quotes a finding and its advice as they are told', () => {
  const [paragraph = ''] = /^- \*\*finds\*\*.*$/mu.exec(page) ?? [];
  const [message, advice] = [...paragraph.matchAll(/"([A-Z][^"]*\.)"/gu)].map(([, quoted]) => quoted);
  expect(findings.map((finding) => [finding.message, finding.advice])).toContainEqual([message, advice]);
});
