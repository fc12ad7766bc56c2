import type { Diagnostic, Position, SemanticTokens, SemanticTokensDelta } from 'vscode-languageserver-types';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { parse, speaking, type SyntaxTree } from '../../grammar/index.js';
import { compose } from '../drawing/compose.js';
import type { RuleSettings } from '../findings/settings.js';
import { Memory } from '../measure/memory.js';
import { Mixer, MixingStore } from '../measure/mixing/mixer.js';
import { standing } from '../findings/check.js';
import type { Finding } from '../findings/finding.js';
import { OutlineCache } from '../plan/outline-cache.js';
import { readAside } from './aside.js';
import { codeActions } from './code-actions.js';
import { colourPresentations, documentColours } from './colours.js';
import { completions } from './completion.js';
import { definition, highlights } from './definition.js';
import { findingDiagnostics, inTellingOrder, planDiagnostics, syntaxDiagnostics } from './diagnostics.js';
import { PlanFiles } from './files.js';
import { foldingRanges } from './folding.js';
import { formattingEdits } from './formatting.js';
import { tryChange, writeChange } from './hand/hand.js';
import { usualHints } from './hint-settings.js';
import { hover } from './hover.js';
import { inlayHints } from './inlay-hints.js';
import { Library } from './library.js';
import { documentLinks } from './links.js';
import { editsForMoves } from './moved-files.js';
import { onTypeEdits } from './on-type.js';
import { usualSpelling } from './paths.js';
import { PlanPhotographs } from './photographs.js';
import { references } from './references.js';
import { renamableAt, rename } from './rename.js';
import { outOfReach } from './rename-reach.js';
import { selectionRanges } from './selection.js';
import { workspaceSymbols } from './workspace-symbols.js';
import { semanticTokens } from './semantic-tokens.js';
import { TokenHistory } from './token-history.js';
import { takeSnapshot, type Snapshot, type SnapshotSource } from './snapshot.js';
import { flatSymbols, nestedSymbols } from './symbols.js';
import { clampPosition } from './text.js';
import type { LanguageService, ServiceHost } from './language-service.js';

/** What one version of a document leaves to the next. */
type Kept = Pick<SnapshotSource, 'outlines' | 'memory' | 'mixer'>;

interface OpenPlan {
  readonly document: TextDocument;
  readonly kept: Kept;
  snapshot: Snapshot;
  /** The findings whose remedies are still to be read, of which snapshot. */
  unread?: { readonly of: Snapshot; readonly findings: Finding[] };
  /** The latest tree that was parsed; the next parse takes from it what did not change. */
  tree?: SyntaxTree;
}

/** A service without documents, which knows of the world what the host tells it. */
export function createLanguageService(host: ServiceHost): LanguageService {
  const { abilities } = host;
  /** By the usual spelling of their URIs. */
  const plans = new Map<string, OpenPlan>();
  const tokens = new TokenHistory();
  /** Plans of the same paints share what is known of them. */
  const mixings = new MixingStore();
  let hintSettings = usualHints;
  let ruleSettings: RuleSettings | undefined;
  const planAt = (uri: string): OpenPlan | undefined => plans.get(usualSpelling(uri));

  const files = new PlanFiles({
    fetch: host.fetchFile,
    folders: host.folders,
    openText: (uri) => planAt(uri)?.snapshot.text,
    changed: (planUris) => planUris.forEach(refresh),
  });

  const photographs =
    host.photographs &&
    new PlanPhotographs({
      ...host.photographs,
      folders: host.folders,
      changed: (planUris) => planUris.forEach(refresh),
      isTold: abilities.fileWatching,
    });

  const library = new Library({
    fetch: host.fetchFile,
    list: () => host.listPlans?.() ?? Promise.resolve([]),
    folders: host.folders,
    openPlans: () => [...plans.values()].map(({ snapshot }) => snapshot),
    isTold: abilities.fileWatching,
  });

  const takeFor = (document: TextDocument, kept: Kept, parseTree: () => SyntaxTree): Snapshot =>
    takeSnapshot({
      uri: document.uri,
      version: document.version,
      text: document.getText(),
      parse: parseTree,
      reader: () => files.readerFor(document.uri),
      ...kept,
      ...(photographs ? { photographs: photographs.photographsFor(document.uri) } : {}),
      ...(ruleSettings ? { ruleSettings } : {}),
      ...(abilities.language ? { language: abilities.language } : {}),
    });

  const parser = (document: TextDocument, text: string) => (): SyntaxTree => {
    const plan = planAt(document.uri);
    const tree = parse(text, plan?.tree);
    if (plan?.document === document) plan.tree = tree;
    return tree;
  };

  /** Computes a plan anew over the same text, because a file that it names or a setting has changed. */
  function refresh(uri: string): void {
    const plan = planAt(uri);
    if (plan === undefined) return;
    const stale = plan.snapshot;
    plan.snapshot = takeFor(plan.document, plan.kept, () => stale.tree);
    host.planChanged(plan.document.uri);
    host.answersChanged?.();
  }

  const at = <T>(uri: string, answer: (snapshot: Snapshot) => T, none: T): T => {
    const snapshot = planAt(uri)?.snapshot;
    return snapshot === undefined ? none : answer(snapshot);
  };
  const within = <T>(
    uri: string,
    position: Position,
    answer: (snapshot: Snapshot, position: Position) => T,
    none: T,
  ): T => at(uri, (snapshot) => answer(snapshot, clampPosition(snapshot.lines, position)), none);

  const part = (what: string, diagnose: () => readonly Diagnostic[]): readonly Diagnostic[] => {
    try {
      return diagnose();
    } catch (error) {
      host.failed(what, error);
      return [];
    }
  };

  return {
    open(uri, version, text) {
      const document = TextDocument.create(uri, 'mahlstick', version, text);
      const kept: Kept = {
        outlines: new OutlineCache(),
        memory: new Memory(),
        mixer: Mixer.patient(mixings),
      };
      plans.set(usualSpelling(uri), {
        document,
        kept,
        snapshot: takeFor(document, kept, parser(document, text)),
      });
      files.edited(uri);
      photographs?.edited(document.uri);
      host.planChanged(uri);
    },
    change(uri, version, changes) {
      const plan = planAt(uri);
      if (plan === undefined) return;
      TextDocument.update(plan.document, [...changes], version);
      const { document, kept } = plan;
      plan.snapshot = takeFor(document, kept, parser(document, document.getText()));
      files.edited(uri);
      photographs?.edited(document.uri);
      host.planChanged(document.uri);
    },
    close(uri) {
      const plan = planAt(uri);
      if (plan === undefined) return;
      plans.delete(usualSpelling(uri));
      tokens.forget(usualSpelling(uri));
      files.forget(plan.document.uri);
      photographs?.forget(plan.document.uri);
      files.closed(uri, plan.snapshot.text);
    },
    filesChanged: (uris) => {
      library.changed(uris);
      files.reread(uris.filter((uri) => planAt(uri) === undefined));
      photographs?.reread(uris);
    },
    foldersChanged: () => {
      library.changed([]);
      [...plans.keys()].forEach(refresh);
    },
    rulesChanged: (settings) => {
      ruleSettings = settings;
      [...plans.keys()].forEach(refresh);
    },
    hintsChanged: (settings) => {
      hintSettings = settings;
      host.answersChanged?.();
    },
    rereadFiles: (uri) => {
      files.rereadFor(uri);
      photographs?.rereadFor(planAt(uri)?.document.uri ?? uri);
    },

    readAside: (plan, goOn) =>
      readAside(
        plan,
        {
          fetch: host.fetchFile,
          openText: (uri) => planAt(uri)?.snapshot.text,
          folders: host.folders,
          ruleSettings: () => ruleSettings,
          store: mixings,
        },
        goOn,
      ),
    snapshot: (uri) => planAt(uri)?.snapshot,
    scene: (uri, view, options) =>
      at(
        uri,
        ({ plan, measures, findings }) =>
          compose(plan, measures, findings, view, {
            ...options,
            language: abilities.language,
            memory: planAt(uri)?.kept.memory,
          }),
        undefined,
      ),
    tryChange: (params) => at(params.textDocument.uri, (snapshot) => tryChange(snapshot, params), null),
    writeChange: (params) => at(params.textDocument.uri, (snapshot) => writeChange(snapshot, params), null),

    prepareDiagnostics(uri) {
      const plan = planAt(uri);
      if (plan === undefined) return false;
      const { snapshot } = plan;
      let more = false;
      part('findings', () => {
        if (plan.unread?.of !== snapshot)
          plan.unread = { of: snapshot, findings: [...standing(snapshot.findings)] };
        else void plan.unread.findings.shift()?.advice;
        more = plan.unread.findings.length > 0;
        return [];
      });
      return more;
    },
    mixFurther(uri) {
      const plan = planAt(uri);
      if (plan === undefined) return false;
      const { kept, snapshot } = plan;
      let more = false;
      part('mixtures', () => {
        // Measuring notes what is still to be found, and is not asked for where there is nothing to mix.
        if (snapshot.plan.palette === undefined) return [];
        if (snapshot.measures.palette === undefined || !kept.mixer.hasWork) return [];
        more = kept.mixer.step();
        if (!more) refresh(uri);
        return [];
      });
      return more;
    },
    diagnostics: (uri) =>
      at(
        uri,
        (snapshot) =>
          inTellingOrder(
            [
              ...part('syntax', () => syntaxDiagnostics(snapshot, abilities)),
              ...part('plan', () => planDiagnostics(snapshot, abilities)),
            ],
            part('findings', () => findingDiagnostics(snapshot, abilities)),
          ),
        [],
      ),
    completions: (uri, position) =>
      within(uri, position, (snapshot, place) => completions(snapshot, place, abilities), []),
    hover: (uri, position) =>
      within(uri, position, (snapshot, place) => hover(snapshot, place, abilities), undefined),
    surroundings: () => library.gather(),
    definition: (uri, position, around = library.known()) =>
      within(uri, position, (snapshot, place) => definition(snapshot, place, around), undefined),
    references: (uri, position, withDefinition, around = library.known()) =>
      within(uri, position, (snapshot, place) => references(snapshot, place, around, withDefinition), []),
    renamable: (uri, position, around = library.known()) =>
      within(
        uri,
        position,
        (snapshot, place) => speaking(abilities.language, () => renamableAt(snapshot, place, around)),
        undefined,
      ),
    rename: (uri, position, newName, around = library.known()) =>
      within(
        uri,
        position,
        (snapshot, place) =>
          speaking(abilities.language, () => rename(snapshot, place, newName, around, abilities)),
        undefined,
      ),
    outOfReach: (uri, position, around) =>
      within(
        uri,
        position,
        (snapshot, place) =>
          speaking(abilities.language, () => outOfReach(snapshot, place, around, host.folders())),
        undefined,
      ),
    highlights: (uri, position) =>
      within(uri, position, (snapshot, place) => highlights(snapshot, place, library.known()), []),
    symbols: (uri) =>
      speaking(abilities.language, () =>
        abilities.nestedSymbols ? at(uri, nestedSymbols, []) : at(uri, flatSymbols, []),
      ),
    foldingRanges: (uri) => at(uri, foldingRanges, []),
    selectionRanges: (uri, positions) =>
      at(
        uri,
        (snapshot) =>
          selectionRanges(
            snapshot,
            positions.map((position) => clampPosition(snapshot.lines, position)),
          ),
        [],
      ),
    links: (uri) => at(uri, (snapshot) => documentLinks(snapshot, host.folders(), abilities), []),
    workspaceSymbols: (query, around = library.known()) => workspaceSymbols(query, around),
    editsForMoves: (moves, around = library.known()) => editsForMoves(moves, around, abilities),
    onTypeEdits: (uri, position, indenting) =>
      within(uri, position, (snapshot, place) => onTypeEdits(snapshot, place, indenting), []),
    inlayHints: (uri, range) =>
      at(uri, (snapshot) => inlayHints(snapshot, range, hintSettings, abilities), []),
    semanticTokens: (uri) =>
      at(uri, (snapshot) => tokens.whole(usualSpelling(uri), semanticTokens(snapshot)), { data: [] }),
    semanticTokensIn: (uri, range) => ({
      data: [...at(uri, (snapshot) => semanticTokens(snapshot, range), [])],
    }),
    semanticTokensDelta: (uri, previous) =>
      at<SemanticTokens | SemanticTokensDelta>(
        uri,
        (snapshot) => tokens.since(usualSpelling(uri), previous, semanticTokens(snapshot)),
        { data: [] },
      ),
    colours: (uri) => at(uri, documentColours, []),
    colourPresentations: (uri, range, colour) =>
      at(uri, (snapshot) => colourPresentations(snapshot, range, colour), []),
    format: (uri, range) => at(uri, (snapshot) => formattingEdits(snapshot, range), []),
    codeActions: (uri, range, only) =>
      at(uri, (snapshot) => codeActions(snapshot, range, abilities, only), []),
  };
}
