import '../../page.css';
import './side-by-side.css';
import { t } from '../../../grammar/localised.js';
import { type FromPage, readInPage, type ToPage } from '../messages.js';
import { speakAsTheEditor } from '../../page-language.js';
import { element } from '../../preview/elements.js';
import { ComparisonPage } from './comparison-page.js';
import { WallPage } from './wall-page.js';

declare function acquireVsCodeApi(): { postMessage(message: FromPage): void };

speakAsTheEditor();
const host = acquireVsCodeApi();
const post = (message: FromPage): void => host.postMessage(message);
const main = element('main');
const waiting = element('p', { class: 'waiting', role: 'status' }, t('Working out the plans …'));
main.append(waiting);
document.body.append(main);

let comparison: ComparisonPage | undefined;
let wall: WallPage | undefined;

function show(message: ToPage): void {
  waiting.remove();
  switch (message.type) {
    case 'comparison':
      comparison ??= new ComparisonPage(main, post);
      comparison.show(message);
      return;
    case 'wall':
      wall?.remove();
      wall = new WallPage(main, message, post);
      return;
    case 'card':
      wall?.hang(message);
      return;
    case 'unreadable':
      wall?.leaveEmpty(message.index, message.reason);
      return;
    case 'nothing':
      waiting.textContent = message.reason;
      main.replaceChildren(waiting);
      comparison = undefined;
      wall = undefined;
      return;
  }
}

window.addEventListener('message', ({ data }: MessageEvent<unknown>) => {
  const message = readInPage(data);
  if (message !== undefined) show(message);
});
post({ type: 'ready' });
