import { readFileSync } from 'node:fs';
import path from 'node:path';
import type { View } from '../../server/drawing/scene.js';

export const measureFolder = path.resolve(import.meta.dirname, '../../server/measure');
export const pageFile = path.join(measureFolder, 'README.md');

/**
 * A block of the page that is made from a plan: the plan's text, a section of what `mahlstick measure`, `schedule` or
 * `mix` prints of it, or a part of what that prints with `--json`. Its first line says which: ` ```text balance:
 * Balance `.
 */
export interface Block {
  readonly language: 'mahl' | 'text' | 'json';
  readonly plan: string;
  /** The heading of a section, or the path of a part; empty for a plan. */
  readonly of: string;
  readonly body: string;
}

/** A drawing of a plan, with the marks of its findings where the image says so. */
export interface Drawing {
  readonly plan: string;
  readonly view: View;
  readonly marked: boolean;
}

/** What stands under one heading of the third level. */
export interface Section {
  readonly heading: string;
  readonly text: string;
  readonly blocks: readonly Block[];
  readonly drawings: readonly Drawing[];
  /** Paths into the JSON that are said to hold the measure. */
  readonly jsonPaths: readonly string[];
  /** Keywords whose hover is said to show it. */
  readonly hovers: readonly string[];
}

const FENCE = /^```(mahl|text|json) ([a-z0-9-]+)(?:: (.+))?\n([\s\S]*?)^```$/gmu;
const IMAGE = /!\[[^\]]+\]\(drawings\/([a-z0-9-]+)\.svg "view ([a-z]+)( with findings)?"\)/gu;

export function readPage(): string {
  return readFileSync(pageFile, 'utf8');
}

/** The text of a plan of the page. */
export function planText(name: string): string {
  return readFileSync(path.join(measureFolder, 'plans', `${name}.mahl`), 'utf8');
}

export function sectionsOf(page: string): readonly Section[] {
  return page
    .split(/^(?=#{2,3} )/mu)
    .filter((part) => part.startsWith('### '))
    .map(sectionOf);
}

function sectionOf(text: string): Section {
  return {
    heading: /^### (.*)$/mu.exec(text)?.[1] ?? '',
    text,
    blocks: blocksOf(text),
    drawings: [...text.matchAll(IMAGE)].map(([, plan = '', view = '', marked]) => ({
      plan,
      view: view as View,
      marked: marked !== undefined,
    })),
    jsonPaths: quotedIn(text, /^- In `[a-z]+ --json`: (.*(?:\n {2}.*)*)/mu),
    hovers: quotedIn(text, /hover of (`[^;.\n]*)/u),
  };
}

function quotedIn(text: string, line: RegExp): readonly string[] {
  return [...(line.exec(text)?.[1] ?? '').matchAll(/`([^`]+)`/gu)].map(([, quoted = '']) => quoted);
}

export function blocksOf(text: string): readonly Block[] {
  return [...text.matchAll(FENCE)].map(([, language, plan = '', of = '', body = '']) => ({
    language: language as Block['language'],
    plan,
    of,
    body,
  }));
}

/** The page with the body of every block as `bodyOf` gives it. */
export function withBodies(page: string, bodyOf: (block: Block) => string): string {
  return page.replace(
    FENCE,
    (_, language: Block['language'], plan: string, of: string | undefined, body: string) => {
      const name = of === undefined ? plan : `${plan}: ${of}`;
      return `\`\`\`${language} ${name}\n${bodyOf({ language, plan, of: of ?? '', body })}\`\`\``;
    },
  );
}

/** The figures told in the paragraphs that begin with `Here`, as they are written. */
export function figuresTold(text: string): readonly string[] {
  return text
    .split(/\n{2,}/u)
    .filter((paragraph) => paragraph.startsWith('Here'))
    .flatMap((paragraph) =>
      [...paragraph.replace(/\]\([^)]*\)/gu, ']').matchAll(NUMBER)].map(([figure]) => figure),
    );
}

/** Whether a figure told, `8.3` say, is one of the figures of a text to its own decimals, or a hundred times one. */
export function holdsFigure(text: string, told: string): boolean {
  const half = 0.5 * 10 ** -(told.split('.')[1]?.length ?? 0) + 1e-9;
  return [...text.matchAll(NUMBER)].some(([written]) => {
    const figure = Math.abs(Number(written));
    return [figure, 100 * figure].some((candidate) => Math.abs(candidate - Number(told)) <= half);
  });
}

const NUMBER = /(?<![\w#.])\d+(?:\.\d+)?(?![\w-])/gu;
