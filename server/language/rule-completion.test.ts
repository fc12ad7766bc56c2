import type { CompletionItem } from 'vscode-languageserver-types';
import { describe, expect, test } from 'vitest';
import { rules } from '../findings/rules.js';
import { everything, nothing, openPlan } from './test-support.js';

function complete(marked: string, abilities = everything): readonly CompletionItem[] {
  const { service, uri, position, failures } = openPlan(marked, abilities);
  const items = service.completions(uri, position);
  expect(failures).toEqual([]);
  return items;
}

const labels = (marked: string): readonly string[] => complete(marked).map(({ label }) => label);

describe.each(['allow', 'rule'])('behind `%s`', (keyword) => {
  test('every rule is named, with how grave it is and its limit', () => {
    const items = complete(`${keyword} |`);
    expect(items.map(({ label }) => label)).toEqual(rules.map(({ id }) => id));
    expect(items).toContainEqual(
      expect.objectContaining({ label: 'off balance', detail: 'hint, limit 12%' }),
    );
    expect(items).toContainEqual(expect.objectContaining({ label: 'value budget', detail: 'warning' }));
  });

  test('each rule says what it is about, why, and where that is told in full', () => {
    const offBalance = (abilities = everything) =>
      complete(`${keyword} |`, abilities).find(({ label }) => label === 'off balance')?.documentation;
    expect(offBalance()).toMatchObject({
      kind: 'markdown',
      value: expect.stringMatching(
        /centre of visual weight.*Usually a hint, with the limit 12 % of the width[^]*From: [^]*\[Reference\]\(.*#off\\?-balance\)/u,
      ) as unknown,
    });
    expect(offBalance(nothing)).toMatchObject({ kind: 'plaintext' });
  });

  test('a caution says that no setting turns it off', () => {
    const dust = complete(`${keyword} |`, nothing).find(({ label }) => label === 'dust')?.documentation;
    expect(dust).toMatchObject({
      value: expect.stringMatching(/a plan sets it aside with a reason, a setting does not\./) as unknown,
    });
  });
});

describe('behind the name of a rule', () => {
  test('that has a limit', () => {
    expect(labels('rule off balance |')).toEqual(expect.arrayContaining(['warning', 'hint', 'limit']));
    expect(labels('rule off balance, |')).toEqual(['warning', 'hint', 'limit']);
    expect(labels('rule off balance warning |')).toEqual(['limit']);
  });

  test('that has none, no limit', () => {
    expect(labels('rule value budget |')).toEqual(expect.arrayContaining(['warning', 'hint']));
    expect(labels('rule value budget |')).not.toContain('limit');
    expect(labels('rule value budget hint |')).toEqual([]);
  });
});

describe('behind `limit`', () => {
  test.each([
    ['rule off balance limit |', '12%', /^usually 12 % of the /u],
    ['rule complement off opposite hint limit |', '30 degrees', /^usually 30 degrees between /u],
    ['rule dominant outweighed limit |', '1.2', /^usually 1.2 times /u],
  ])('%s: the usual one, which shows its unit', (marked, label, detail) => {
    expect(complete(marked)).toMatchObject([{ label, detail: expect.stringMatching(detail) as unknown }]);
  });

  test('each limit that is offered reads, in the unit that the rule has', () => {
    const limited = rules.filter(({ limit }) => limit !== undefined);
    expect(limited.length).toBeGreaterThan(10);
    for (const { id } of limited) {
      const [offered] = complete(`rule ${id} limit |`);
      const { service, uri } = openPlan(`canvas 40 x 30 cm\nrule ${id} limit ${offered?.label ?? ''}\n`);
      const about = service.diagnostics(uri).filter(({ range }) => range.start.line === 1);
      expect(about, id).toEqual([]);
    }
  });

  test('a number that is typed does not bring it up', () => {
    expect(labels('rule complement off opposite limit 4|')).toEqual([]);
    expect(complete('rule complement off opposite limit |')).toMatchObject([{ filterText: 'usual' }]);
  });

  test('degrees are offered for an angle, and nothing behind a share', () => {
    expect(labels('rule complement off opposite limit 40 |')).toEqual(['degrees']);
    expect(labels('rule off balance limit 40 |')).toEqual([]);
  });

  test('nothing for a rule that there is not, or that has no limit', () => {
    expect(labels('rule off ballance limit |')).toEqual([]);
    expect(labels('rule value budget limit |')).toEqual([]);
  });
});

describe('behind `for`', () => {
  const plan = 'canvas 40 x 30 cm\nobject jug\nlead rail from left edge to focus\ncue "the \\"old\\" bell"\n';
  const offered = (line: string): readonly string[] => labels(`${plan}${line}`);

  test('stand the names of what the rule is about', () => {
    expect(offered('allow hidden object for |')).toEqual(['jug']);
    expect(offered('allow lead past focus for |')).toEqual(['rail']);
    expect(offered('allow way out for |')).toEqual(['jug']);
    expect(offered('allow lead past focus for rail |')).toEqual(['because']);
  });

  test('stand cues, in quotes or within those that are written', () => {
    expect(offered('allow cue not carried for |')).toEqual(['jug', '"the \\"old\\" bell"']);
    expect(offered('allow cue not carried for "|')).toEqual(['the \\"old\\" bell']);
    expect(offered('allow cue not carried for "the" because "|')).toEqual([]);
  });

  test('nothing stands where the rule is about the whole picture', () => {
    expect(offered('allow bare ground |')).not.toContain('for');
    expect(offered('allow bare ground for |')).toEqual([]);
  });
});
