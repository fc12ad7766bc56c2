import * as vscode from 'vscode';
import { said } from '../../grammar/localised.js';
import { type Choice, askFor, choose } from '../questions.js';
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

const title = vscode.l10n.t('New plan');

const divisionDetails: Readonly<Record<DivisionChoice, string>> = {
  golden: vscode.l10n.t('The golden section of each side, from each edge.'),
  thirds: vscode.l10n.t('Each side in three equal parts.'),
  'two to three': vscode.l10n.t('Each side at two fifths and three fifths.'),
  quarters: vscode.l10n.t('Each side in four equal parts.'),
  rabatment: vscode.l10n.t('The short side laid along the long one, as a square from each end.'),
  diagonals: vscode.l10n.t('Both diagonals, and the perpendiculars to them from the corners.'),
  armature: vscode.l10n.t('Diagonals and the lines from corners to the middles of sides: fourteen lines.'),
};

/**
 * Asks for canvas, division and crossing, and opens an unsaved plan with them: in it the title, the concept and the
 * name of the first object are to be filled in. Nothing is opened when a question is left without an answer.
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
  const items: readonly Choice<string>[] = [
    ...canvasChoices.flatMap(({ group, choices }): readonly Choice<string>[] => [
      { label: said(group), kind: vscode.QuickPickItemKind.Separator },
      ...choices.map(({ canvas, sides }) => ({
        label: canvas,
        ...(sides === undefined ? {} : { description: sides }),
        value: canvas,
      })),
    ]),
    { label: vscode.l10n.t('Own'), kind: vscode.QuickPickItemKind.Separator },
    {
      label: vscode.l10n.t('Another size…'),
      detail: vscode.l10n.t('Width and height in cm, mm, m or in.'),
      value: 'other',
    },
  ];
  const canvas = await choose(items, {
    title,
    placeHolder: vscode.l10n.t('How large is the canvas?'),
    matchOnDescription: true,
  });
  // A size that is typed says by itself which side is up.
  if (canvas === 'other') return askSize();
  return canvas === undefined || !hasLongerSide(canvas) ? canvas : askWay(canvas);
}

async function askSize(): Promise<string | undefined> {
  const typed = await askFor({
    title,
    prompt: vscode.l10n.t('Width and height of the canvas.'),
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
  const way = await choose(
    [
      {
        label: vscode.l10n.t('Landscape'),
        description: vscode.l10n.t('lying on its long side'),
        value: 'landscape' as const,
      },
      {
        label: vscode.l10n.t('Upright'),
        description: vscode.l10n.t('standing on its short side'),
        value: 'upright' as const,
      },
    ],
    { title, placeHolder: vscode.l10n.t('Which way does it stand?') },
  );
  return way && turned(canvas, way);
}

function askDivision(canvas: string): Promise<DivisionChoice | undefined> {
  const divisions = divisionsOf(canvas).map((division) => ({
    label: division,
    detail: divisionDetails[division],
    value: division,
  }));
  return choose(divisions, {
    title,
    placeHolder: vscode.l10n.t('How is the canvas divided?'),
    matchOnDetail: true,
  });
}

function askCrossing(): Promise<CrossingChoice | undefined> {
  return choose(
    crossingChoices.map((crossing) => {
      const told = said(crossing);
      return { label: crossing, description: told === crossing ? '' : told, value: crossing };
    }),
    {
      title,
      placeHolder: vscode.l10n.t('On which crossing of the division does the centre of interest lie?'),
    },
  );
}
