import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { folder, prompt } from './run.ts'

interface Block { readonly language: string, readonly file: string, readonly text: string }

const blocks = (page: string): readonly Block[] => [...page.matchAll(/^```(\w*) ?(\S*)\n([\s\S]*?)^```$/gm)]
  .map(([, language = '', file = '', text = '']) => ({ language, file, text }))

/** A command line as a shell would part it. */
const words = (line: string): readonly string[] => [...line.matchAll(/(?:[^\s"]|"[^"]*")+/g)].map(([word]) => word.replaceAll('"', ''))

describe.each([['command-line.md'], ['import.md']])('docs/guide/%s', (name) => {
  const page = readFileSync(fileURLToPath(new URL(`../../../docs/guide/${name}`, import.meta.url)), 'utf8')
  const cwd = folder()
  const run = prompt(cwd)

  it('shows commands that run, one after another', async () => {
    let shown = ''
    let ran = 0
    for (const { language, file, text } of blocks(page)) {
      if (language === 'csv') writeFileSync(join(cwd, file), text)
      else if (language === 'sh') {
        for (const line of text.trimEnd().split('\n')) {
          const [program, ...rest] = words(line)
          expect(program).toBe('lodebook')
          const { code, out, err } = await run(rest)
          expect([line, code, err]).toEqual([line, 0, ''])
          shown = out
          ran++
        }
      } else expect(shown).toBe(text)
    }
    expect(ran).toBeGreaterThan(3)
  })

  it('has no line that runs on', () => {
    expect(page.split('\n').filter(line => line.length > 160 && !line.startsWith('lodebook'))).toEqual([])
  })
})
