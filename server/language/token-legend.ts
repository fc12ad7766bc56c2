import {
  SemanticTokenModifiers,
  SemanticTokenTypes,
  type SemanticTokensLegend,
} from 'vscode-languageserver-types';

/**
 * The kinds of words, told in the standard's own terms so that any theme colours them. They agree with the scopes of
 * the TextMate grammar, by which a plan is coloured before the server answers; what they add is what a word stands for
 * in its statement: a name that is also a word of the language is a name here, and is told where it is given.
 */
export const legend: SemanticTokensLegend = {
  tokenTypes: [
    SemanticTokenTypes.keyword,
    SemanticTokenTypes.string,
    SemanticTokenTypes.number,
    SemanticTokenTypes.comment,
    SemanticTokenTypes.type,
    SemanticTokenTypes.variable,
    SemanticTokenTypes.enumMember,
    SemanticTokenTypes.operator,
  ],
  tokenModifiers: [SemanticTokenModifiers.declaration, SemanticTokenModifiers.readonly],
};
