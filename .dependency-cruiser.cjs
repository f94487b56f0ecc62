// Arrows point one way: reckon <- book <- answers <- apps. Type imports count. An upward or sideways import fails the check.
const inside = path => ({ path })
const rule = (name, from, to, comment) => ({ name, severity: 'error', comment, from: inside(from), to: inside(to) })

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    rule('reckon-knows-nothing-above', '^packages/reckon/', '^(packages/(?!reckon)|apps/|demo/|bench/|checks/.*\\.ts)', 'The core computes; it never knows a book or a screen.'),
    rule('book-knows-only-reckon', '^packages/book/', '^(packages/(?!reckon|book)|apps/|demo/|bench/)', 'A book knows units and nothing above itself.'),
    rule('paper-knows-no-app', '^packages/paper/src/', '^(apps/|demo/|bench/)', 'Sheets for printing are made from answers, for any app.'),
    rule('answers-know-nothing-above', '^packages/answers/src/', '^packages/paper/', 'Answers are put on paper, never the other way round.'),
    rule('answers-know-no-app', '^packages/answers/src/', '^(apps/|demo/|bench/)', 'Answers are drawn by apps, never the other way round.'),
    rule('apps-do-not-lean-on-each-other', '^apps/web/src/', '^apps/(?!web)', 'The app talks to the hub over the wire.'),
    rule('hub-stands-alone', '^apps/hub/src/', '^apps/(?!hub)', 'The hub serves any app.'),
    rule('nothing-ships-the-checks', '^(packages|apps)/[^/]+/src/', '^checks/', 'Outside check values are for tests only.'),
    rule('core-is-pure', '^packages/[^/]+/src/', '^(node:|fs$|path$|crypto$|os$|child_process$|worker_threads$)', 'No input or output in the packages.'),
    { name: 'no-circle', severity: 'error', comment: 'Files that need each other are one file.', from: { path: '^(packages|apps)/[^/]+/src/' }, to: { circular: true } },
    { name: 'no-unresolved', severity: 'error', comment: 'Every import must resolve.', from: { path: '^(packages|apps|demo|bench)/' }, to: { couldNotResolve: true, pathNot: '^virtual:' } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '(^|/)(dist|coverage)/' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.node.json' },
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'default'], extensions: ['.ts', '.tsx', '.js', '.mjs'] },
  },
}
