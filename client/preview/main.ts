import '../page.css';
import './preview.css';
import './toolbar/toolbar.css';
import * as v from 'valibot';
import { t } from '../../grammar/localised.js';
import { type Scene, type View, views } from '../../server/drawing/scene.js';
import { type SceneChange, changedScene } from '../../server/drawing/scene-change.js';
import type { Location } from '../../server/plan/plan.js';
import { DistanceChoice } from './toolbar/distance-choice.js';
import { element } from './elements.js';
import { exampleFor } from './example.js';
import { Hand } from './hand/hand.js';
import { FocusTaken, keepFocus } from './kept-focus.js';
import { FindingsList } from './findings/findings-list.js';
import {
  type FromPage,
  type PageState,
  type ToPage,
  pageState,
  pageStateSchema,
  receiveInPage,
} from './messages.js';
import { speakAsTheEditor } from '../page-language.js';
import { Notices } from './notices.js';
import { withoutFindingsList } from './plate.js';
import { watchRoom } from './room.js';
import { Stage } from './stage.js';
import { SittingChoice } from './toolbar/sitting-choice.js';
import { TakeOut } from './toolbar/take-out.js';
import { Toolbar } from './toolbar/toolbar.js';
import { ViewChoice } from './toolbar/view-choice.js';

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): unknown;
  setState(state: PageState): void;
};

speakAsTheEditor();
const host = acquireVsCodeApi();
const state = firstState();

/** What is on the page now, so that what is older can be told from what is new. */
const now = {
  epoch: 0,
  sceneVersion: -1,
  findingsVersion: -1,
  view: state.view,
  distanceMillimetres: state.distanceMillimetres,
  sitting: state.sitting,
  snaps: state.snaps ?? true,
  refused: 0,
};
let lastScene: Scene | undefined;
/** Nothing is drawn on the picture. */
let isEmpty = true;
/** The cursor's next place is one that was asked for in this page. */
let asked = false;
let mark: { readonly version: number; readonly line: number | null } | undefined;

const drawingPlace = element('div', { class: 'drawing' });
const stage = new Stage(drawingPlace, (location, key) => {
  sittings.chooseSubject(key);
  reveal(now.sceneVersion, location);
});
const findings = new FindingsList({
  reveal: (location) => reveal(now.findingsVersion, location),
  point: (subjects) => stage.point(subjects),
});
const notices = new Notices({
  restart: () => host.postMessage({ type: 'restart' }),
  insertExample: () => host.postMessage({ type: 'example', version: now.sceneVersion }),
});
const choice = new ViewChoice(state.view, (view) => {
  now.view = view;
  keepState();
  host.postMessage({ type: 'view', view });
});
const distance = new DistanceChoice(state.distanceMillimetres, (millimetres) => {
  now.distanceMillimetres = millimetres;
  keepState();
  host.postMessage({ type: 'distance', millimetres: millimetres ?? null });
});

const sittings = new SittingChoice((sitting) => {
  now.sitting = sitting;
  keepState();
  host.postMessage({ type: 'sitting', sitting });
});

const hand = new Hand({
  place: drawingPlace,
  surface: stage,
  post: (message) => host.postMessage(message),
  draw: (scene) => stage.draw(shownOf(scene)),
  snaps: now.snaps,
  keepSnaps: (snaps) => {
    now.snaps = snaps;
    keepState();
  },
  settled: () => toolbar.sketch.corners.settle(),
  toolTaken: (tool) => (drawingPlace.hidden = isEmpty && tool === undefined),
});
const takeOut = new TakeOut((message) => host.postMessage(message));
const toolbar = new Toolbar({
  box: drawingPlace,
  state,
  views: [choice.group, distance.group, sittings.group],
  hand: hand.row,
  takeOut: takeOut.group,
  svg: () => stage.svg,
  keep: () => keepState(),
  redraw: () => {
    if (lastScene !== undefined) draw(lastScene);
  },
  point: (keys) => stage.point(keys),
  focus: (key) => stage.focus(key),
  want: (sitting) => host.postMessage({ type: 'under', sitting }),
  write: (change) => hand.write(change),
});
const { bar } = toolbar;

const drawings = element(
  'main',
  {},
  notices.section,
  toolbar.sketch.told,
  toolbar.sketch.corners.section,
  drawingPlace,
  findings.section,
);

document.body.append(bar, drawings, findings.live);
keepFocus();
const focusTaken = new FocusTaken();
host.setState(state);
watchRoom(drawings, (isNarrow) => {
  document.body.classList.toggle('narrow', isNarrow);
  host.postMessage({ type: 'room', isNarrow });
});
// What has the focus is not to come to lie under the bar, which is higher in a narrow page.
new ResizeObserver(() => {
  document.documentElement.style.scrollPaddingTop = `${bar.offsetHeight + 8}px`;
  document.documentElement.style.setProperty('--bar', `${bar.offsetHeight}px`);
}).observe(bar);
window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  const received = receiveInPage(data);
  if (received.ok) {
    take(received.message);
    return;
  }
  now.refused += 1;
  document.body.dataset['refused'] = String(now.refused);
  notices.broken();
});
host.postMessage({ type: 'ready' });

/** The page is made anew whenever it comes out of hiding: the view chosen meanwhile is in what it kept. */
function firstState(): PageState {
  const given = v.parse(pageStateSchema, JSON.parse(document.body.dataset['state'] ?? 'null'));
  const kept = v.safeParse(pageStateSchema, host.getState());
  return kept.success ? { ...kept.output, uri: given.uri } : given;
}

function take(message: ToPage): void {
  switch (message.type) {
    case 'scene':
      takeScene(message, message.scene);
      return;
    case 'scene change': {
      const scene = changed(message.epoch - 1, message.change);
      if (scene === undefined) host.postMessage({ type: 'again' });
      else takeScene(message, scene);
      return;
    }
    case 'findings':
      now.findingsVersion = message.version;
      findings.show(message.findings);
      return;
    case 'mark':
      mark = message;
      showMark();
      // What was clicked in the page is looked at there: the page stays where it is.
      toolbar.toSight(!asked, stage.markedItem);
      asked = false;
      return;
    case 'view':
      setView(message.view);
      return;
    case 'server':
      notices.server(message.state);
      hand.server(message.state);
      document.body.dataset['server'] = message.state;
      return;
    case 'gone':
      notices.gone();
      return;
    case 'rasterise':
      void takeOut.rasterise(message);
      return;
    case 'copy':
      void takeOut.copy();
      return;
    case 'read only':
      notices.readOnly();
      return;
    case 'come back':
      focusTaken.ask(message.isFirst);
      return;
    case 'sketch':
      toolbar.sketch.received(message.file, message.read);
      return;
    case 'tried change': {
      const { id, version, epoch, change } = message;
      const scene = changed(epoch, change);
      if (scene !== undefined) hand.answer({ type: 'tried', id, version, scene });
      else {
        const reason = t('The text has changed meanwhile. Nothing is written; the drawing follows the text.');
        hand.answer({ type: 'refused', id, reason, isStale: true });
      }
      return;
    }
    case 'tried':
    case 'written':
    case 'refused':
      hand.answer(message);
      return;
  }
}

function takeScene({ epoch, version }: { epoch: number; version: number }, scene: Scene): void {
  if (epoch <= now.epoch) return;
  now.epoch = epoch;
  now.sceneVersion = version;
  draw(scene);
}

/** The scene that a change makes of the one of that epoch, where that is the last. */
function changed(epoch: number, change: SceneChange): Scene | undefined {
  return epoch === now.epoch && lastScene !== undefined ? changedScene(lastScene, change) : undefined;
}

function draw(scene: Scene): void {
  lastScene = scene;
  setView(scene.view);
  isEmpty = isBare(scene);
  drawingPlace.hidden = isEmpty && hand.tool === undefined;
  try {
    stage.draw(shownOf(scene));
  } catch (error) {
    console.error(error);
    notices.broken();
    return;
  }
  findings.connect(shownOf(scene));
  toolbar.drawn(withoutFindingsList(scene));
  distance.connect(scene.viewing);
  sittings.connect(scene.record);
  notices.drawn(isEmpty, exampleFor(scene).text);
  hand.drawn(toolbar.shownOf(scene), now.sceneVersion);
  showMark();
}

/** Nothing of the plan is to be seen in the drawing but its ground. */
function isBare({ view, subjects }: Scene): boolean {
  return !Object.values(subjects).some(
    ({ kind }) =>
      kind === 'object' ||
      kind === 'lead' ||
      (view === 'palette' && kind === 'paint') ||
      (view === 'record' && kind === 'sitting'),
  );
}

function shownOf(scene: Scene): Scene {
  return toolbar.shownOf(withoutFindingsList(scene));
}

/** The cursor's line belongs to a version: it is marked once that version, or a later one, is drawn. */
function showMark(): void {
  if (mark === undefined || mark.version > now.sceneVersion) return;
  stage.markLine(mark.line);
  findings.markLine(mark.line);
  hand.cursorMoved();
}

function setView(view: View): void {
  if (view === now.view || !views.includes(view)) return;
  now.view = view;
  choice.choose(view);
  keepState();
}

function keepState(): void {
  const { view, distanceMillimetres, sitting } = now;
  const snaps = now.snaps ? undefined : false;
  host.setState(pageState(state.uri, { view, distanceMillimetres, sitting, snaps, ...toolbar.kept }));
}

function reveal(version: number, location: Location): void {
  if (version < 0) return;
  asked = true;
  host.postMessage({ type: 'reveal', version, location: { ...location } });
}
