import stylistic from '@stylistic/eslint-plugin'
import tseslint from 'typescript-eslint'

// One tool lints and formats. Type-aware rules are on because only they find a promise nobody waits for.
export default tseslint.config(
  { ignores: ['**/dist/**', 'node_modules/**', 'coverage/**', '**/*.d.ts', '**/*.cjs'] },
  ...tseslint.configs.recommendedTypeChecked,
  stylistic.configs.customize({ semi: false, quotes: 'single', indent: 2, commaDangle: 'always-multiline', braceStyle: '1tbs', arrowParens: false, jsx: true }),
  {
    languageOptions: { parserOptions: { project: ['./tsconfig.node.json', './tsconfig.web.json'], tsconfigRootDir: import.meta.dirname } },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true, allowBoolean: true }],
      '@typescript-eslint/no-non-null-assertion': 'off',
      '@stylistic/max-statements-per-line': 'off',
      '@stylistic/max-len': ['error', { code: 160, ignoreUrls: true, ignoreStrings: true, ignoreTemplateLiterals: true, ignoreRegExpLiterals: true }],
      '@stylistic/jsx-one-expression-per-line': 'off',
      '@stylistic/multiline-ternary': 'off',
      '@stylistic/operator-linebreak': 'off',
      '@stylistic/generator-star-spacing': 'off',
      '@stylistic/indent-binary-ops': 'off',
      '@stylistic/quote-props': ['error', 'as-needed'],
      '@stylistic/no-multi-spaces': 'off',
      '@stylistic/no-mixed-operators': 'off',
      '@stylistic/list-style': 'off',
      'max-lines': ['error', { max: 400, skipBlankLines: true, skipComments: true }],
    },
  },
  {
    files: ['**/*.js', '**/*.mjs'],
    ...tseslint.configs.disableTypeChecked,
  },
  {
    files: ['packages/*/src/**'],
    rules: {
      'no-restricted-globals': ['error', 'console', 'process', 'fetch', 'performance', 'setTimeout', 'crypto', 'window', 'document'],
      'no-restricted-properties': ['error',
        { object: 'Math', property: 'random', message: 'take a seed or a source of numbers as an argument' },
        { object: 'Date', property: 'now', message: 'take the time as an argument' }],
      'no-restricted-syntax': ['error', { selector: 'NewExpression[callee.name="Date"][arguments.length=0]', message: 'take the time as an argument' }],
    },
  },
)
