import tseslint from 'typescript-eslint';

export default tseslint.config(
  { ignores: ['dist/**', 'node_modules/**', '.hosts/**', 'artefacts/**'] },
  ...tseslint.configs.recommendedTypeChecked,
  {
    languageOptions: { parserOptions: { projectService: { allowDefaultProject: ['*.mjs'] } } },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
      'no-warning-comments': ['error', { terms: ['todo', 'fixme', 'xxx'] }],
      eqeqeq: 'error',
      // The formatter leaves comments as they are; code is its own affair.
      'max-len': [
        'error',
        {
          code: 1000,
          comments: 120,
          ignoreUrls: true,
          ignorePattern: 'eslint-disable',
          ignoreTrailingComments: true,
          ignoreStrings: true,
          ignoreTemplateLiterals: true,
        },
      ],
      // Nothing makes code of text; `tests/shipped` holds the bundles to it.
      'no-eval': 'error',
      'no-implied-eval': 'error',
      'no-new-func': 'error',
    },
  },
  // `expect.closeTo` and its like are typed as any by vitest.
  { files: ['**/*.test.ts'], rules: { '@typescript-eslint/no-unsafe-assignment': 'off' } },
  { files: ['**/*.mjs', '**/*.cjs'], extends: [tseslint.configs.disableTypeChecked] },
);
