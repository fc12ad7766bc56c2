import * as vscode from 'vscode';
import { languageId } from '../server-link.js';
import {
  type CrossingChoice,
  type DivisionChoice,
  canvasChoices,
  crossingChoices,
  divisionsOf,
  hasLongerSide,
  planSnippet,
  readCanvas,
  turned,
} from './plan-text.js';

const title = 'New plan';

const divisionDetails: Readonly<Record<DivisionChoice, string>> = {
  golden: 'The golden section of each side, from each edge.',
  thirds: 'Each side in three equal parts.',
  'two to three': 'Each side at two fifths and three fifths.',
  quarters: 'Each side in four equal parts.',
  rabatment: 'The short side laid along the long one, as a square from each end.',
  diagonals: 'Both diagonals, and the perpendiculars to them from the corners.',
  armature: 'Diagonals and the lines from corners to the middles of sides: fourteen lines.',
};

/**
 * Asks for canvas, division and crossing, and opens an unsaved plan with them: in it the title, the concept and the name of
 * the first object are to be filled in. Nothing is opened when a question is left without an answer.
 *
 * @returns the plan's document, if one was opened
 */
export async function newPlan(): Promise<vscode.TextDocument | undefined> {
  const canvas = await askCanvas();
  if (canvas === undefined) return undefined;
  const division = await askDivision(canvas);
  if (division === undefined) return undefined;
  const crossing = await askCrossing();
  if (crossing === undefined) return undefined;
  const document = await vscode.workspace.openTextDocument({ language: languageId, content: '' });
  const editor = await vscode.window.showTextDocument(document);
  await editor.insertSnippet(new vscode.SnippetString(planSnippet({ canvas, division, crossing })));
  return document;
}

async function askCanvas(): Promise<string | undefined> {
  interface Item extends vscode.QuickPickItem {
    readonly canvas?: string;
  }
  const other: Item = { label: 'Another size…', detail: 'Width and height in cm, mm, m or in.' };
  const items: readonly Item[] = [
    ...canvasChoices.flatMap(({ group, choices }): readonly Item[] => [
      { label: group, kind: vscode.QuickPickItemKind.Separator },
      ...choices.map(({ canvas, sides }) => ({
        label: canvas,
        canvas,
        ...(sides === undefined ? {} : { description: sides }),
      })),
    ]),
    { label: 'Own', kind: vscode.QuickPickItemKind.Separator },
    other,
  ];
  const chosen = await vscode.window.showQuickPick(items, {
    title,
    placeHolder: 'How large is the canvas?',
    matchOnDescription: true,
  });
  if (chosen === undefined) return undefined;
  const canvas = chosen.canvas ?? (await askSize());
  // A size that was typed says by itself which side is up.
  return canvas === undefined || chosen.canvas === undefined || !hasLongerSide(canvas)
    ? canvas
    : askWay(canvas);
}

async function askSize(): Promise<string | undefined> {
  const typed = await vscode.window.showInputBox({
    title,
    prompt: 'Width and height of the canvas.',
    placeHolder: '80 x 50 cm',
    validateInput: (text) => {
      const read = readCanvas(text);
      return 'wrong' in read ? read.wrong : undefined;
    },
  });
  const read = typed === undefined ? undefined : readCanvas(typed);
  return read && 'canvas' in read ? read.canvas : undefined;
}

async function askWay(canvas: string): Promise<string | undefined> {
  const ways = [
    { label: 'Landscape', description: 'lying on its long side', way: 'landscape' as const },
    { label: 'Upright', description: 'standing on its short side', way: 'upright' as const },
  ];
  const chosen = await vscode.window.showQuickPick(ways, { title, placeHolder: 'Which way does it stand?' });
  return chosen && turned(canvas, chosen.way);
}

async function askDivision(canvas: string): Promise<DivisionChoice | undefined> {
  const divisions = divisionsOf(canvas).map((division) => ({
    label: division,
    detail: divisionDetails[division],
    division,
  }));
  const chosen = await vscode.window.showQuickPick(divisions, {
    title,
    placeHolder: 'How is the canvas divided?',
    matchOnDetail: true,
  });
  return chosen?.division;
}

async function askCrossing(): Promise<CrossingChoice | undefined> {
  const crossings = crossingChoices.map((crossing) => ({ label: crossing, crossing }));
  const chosen = await vscode.window.showQuickPick(crossings, {
    title,
    placeHolder: 'On which crossing of the division does the centre of interest lie?',
  });
  return chosen?.crossing;
}
