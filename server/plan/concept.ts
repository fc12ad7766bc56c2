import type { Node } from '../../grammar/index.js';
import type { ObjectIndex } from './objects.js';
import type { Plan } from './plan.js';
import { locate, type Problems } from './problems.js';
import { every, sentenceOf, sentencesOf, single } from './select.js';

type Concept = Pick<Plan, 'title' | 'by' | 'concept' | 'mood' | 'cues' | 'avoids' | 'notes'>;

/** What the picture is about: its title, concept, mood, cues and what to avoid. */
export function resolveConcept(nodes: readonly Node[], objects: ObjectIndex, problems: Problems): Concept {
  const plan = single(nodes, 'plan', problems);
  const concept = sentenceOf(single(nodes, 'concept', problems));
  const mood = sentenceOf(single(nodes, 'mood', problems));
  return {
    ...(plan
      ? { title: { value: plan.statement.title.value, location: locate(plan, plan.statement.title) } }
      : {}),
    ...(plan?.statement.by ? { by: plan.statement.by.value } : {}),
    ...(concept ? { concept } : {}),
    ...(mood ? { mood } : {}),
    cues: every(nodes, 'cue').map((node) => ({
      value: node.statement.text.value,
      location: locate(node, node.statement.text),
      carriedBy: objects.findAll(node.statement.carriedBy, node),
    })),
    avoids: sentencesOf(every(nodes, 'avoid')),
    notes: sentencesOf(every(nodes, 'note')),
  };
}
